import { schemeOf } from '../../../graph/infer.ts';
import { project } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { nothing } from '../../board.ts';
import { only } from '../../selection.ts';
import { actionOf } from '../keys.ts';
import type { Phase, PointerInput, ToolContext } from '../tool.ts';
import { joinSecond } from './second.ts';

const says = words.tools.join;

/** The node under the pointer that a run ends at; the nearest of them where several lie behind each other. */
export function endAt(context: ToolContext, at: PointerInput, except?: string): string | null {
  const { job, schemeId } = context.board.getState();
  const { segments } = schemeOf(job, schemeId);
  const legs = (id: string) => segments.filter(({ from, to }) => from === id || to === id).length;
  const nodes = context.underAt(at).filter(({ kind, id }) => kind === 'node' && id !== except);
  return (nodes.find(({ id }) => legs(id) < 2) ?? (except === undefined ? undefined : nodes[0]))?.id ?? null;
}

/** The join tool before its first click. */
export function joinReady(context: ToolContext): Phase {
  const { board } = context;
  const clear = () => {
    context.hover(nothing);
    context.draw(null, []);
  };
  const self: Phase = {
    name: 'join/ready',
    cursor: 'cell',
    leave: clear,
    out: clear,
    move(at) {
      const id = endAt(context, at);
      const node = id && board.getState().solution.route.nodes.get(id);
      context.hover(id ? only({ kind: 'node', id }) : nothing);
      context.draw(
        at.sheet,
        node ? [{ kind: 'snap', at: project(node.at, at.sheet), reason: says.fromHere }] : [],
      );
      return undefined;
    },
    down(at) {
      if (at.button !== 0) return undefined;
      const id = endAt(context, at);
      if (id) return joinSecond(context, id, at);
      context.announce(says.openEnd);
      return undefined;
    },
    key(input) {
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      board.set({ tool: 'select' });
      return true;
    },
    cancel: () => self,
  };
  return self;
}
