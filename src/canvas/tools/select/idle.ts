import { gripsOf } from '../../../drawing/box-faces.ts';
import { insertNode } from '../../../graph/edits/index.ts';
import { words } from '../../../words/index.ts';
import { bendGrip } from '../../bend-grip.ts';
import { nothing } from '../../board.ts';
import { only, single } from '../../selection.ts';
import { actionOf } from '../keys.ts';
import type { Under } from '../pick.ts';
import type { Cursor, Phase, PointerInput, ToolContext } from '../tool.ts';
import { bending } from './bending.ts';
import { boxing } from './boxing.ts';
import { choseOf, oneOfSeveral } from './choice.ts';
import { editItem } from './editing.ts';
import { editByKey } from './keyboard.ts';
import { wordsFor } from './names.ts';
import { pressing } from './pressing.ts';
import { boxOf, resizing } from './resizing.ts';

/** A grip of what is selected, with what a press on it starts. */
interface Grip {
  readonly cursor: Cursor;
  readonly press: (at: PointerInput) => Phase;
}

/** The select tool at rest: shows what is under the pointer. */
export function selectIdle(context: ToolContext): Phase {
  const { board } = context;
  let cursor: Cursor = 'default';
  /** What lies under the pointer, and which of it Tab has come to; -1 before the first. */
  let stack: readonly Under[] = [];
  let turn = -1;

  const gripAt = (at: PointerInput): Grip | null => {
    const state = board.getState();
    const near = (point: { u: number; v: number }) =>
      Math.hypot(point.u - at.point.u, point.v - at.point.v) <= context.toleranceAt(at);
    const scale = context.surface(at.sheet)?.viewport().scale ?? 100;
    const bend = bendGrip(state.solution.route, state.selection, at.sheet, scale);
    if (bend && near(bend.at))
      return { cursor: 'move', press: (press) => bending(context, bend, press.sheet, press) };
    const item = single(state.selection);
    const box = item && boxOf(item, state.job);
    const grip = box && gripsOf(box, at.sheet).find((each) => near(each.at));
    if (!item || !grip) return null;
    const diagonal = grip.u * grip.v > 0 ? 'nesw-resize' : 'nwse-resize';
    return {
      cursor: grip.u === 0 ? 'ns-resize' : grip.v === 0 ? 'ew-resize' : diagonal,
      press: (press) => resizing(context, item, grip, press),
    };
  };

  const hover = (at: PointerInput) => {
    const grip = gripAt(at);
    stack = grip ? [] : context.underAt(at);
    turn = -1;
    const [first] = stack;
    cursor = grip?.cursor ?? (first ? 'pointer' : 'default');
    context.hover(first ? only(first) : nothing);
    const drawn = stack.filter(({ kind }) => kind !== 'block' && kind !== 'exit');
    const words = first && drawn.length > 1 ? wordsFor(first, board.getState()) : null;
    context.draw(
      at.sheet,
      words ? [{ kind: 'snap', at: at.point, reason: oneOfSeveral(words, 0, drawn.length), bare: true }] : [],
    );
  };

  /** The next thing under the pointer; after the last, Tab is the page's own again. */
  const cycle = (back: boolean): boolean => {
    const next = turn < 0 ? (back ? stack.length - 1 : 0) : turn + (back ? -1 : 1);
    const item = stack.length > 1 ? stack[next] : undefined;
    turn = item ? next : -1;
    if (!item) return false;
    board.set({ selection: only(item) });
    context.announce(choseOf(wordsFor(item, board.getState()), next, stack.length));
    return true;
  };

  const clear = () => {
    cursor = 'default';
    stack = [];
    context.hover(nothing);
    context.draw(null, []);
  };

  const self: Phase = {
    name: 'select/idle',
    get cursor() {
      return cursor;
    },
    leave: () => context.draw(null, []),
    move(at) {
      hover(at);
      return undefined;
    },
    out: clear,
    down(at) {
      if (at.button !== 0) return undefined;
      const grip = gripAt(at);
      if (grip) return grip.press(at);
      const label = at.clicks === 2 ? context.surface(at.sheet)?.labelAt(at.screen) : null;
      const figure = label?.kind === 'dimension' || label?.kind === 'riser';
      if (label && figure && editItem(context, { kind: 'segment', id: label.id }, at.sheet)) return undefined;
      const hits = context.underAt(at);
      const [picked] = hits;
      if (!picked) return boxing(context, at);
      if (at.clicks !== 2) return pressing(context, at, hits);
      const held = single(board.getState().selection);
      if (picked.kind === 'node' || picked.kind === 'part') return pressing(context, at, hits);
      if (picked.kind !== 'segment') {
        editItem(context, held && hits.some(({ id }) => id === held.id) ? held : picked, at.sheet);
        return undefined;
      }
      const { schemeId } = board.getState();
      let node: string | null = null;
      board.dispatch(words.edits.route.insertNode, (job) => {
        node = insertNode(job, schemeId, picked.id, picked.at).node;
      });
      if (node !== null) board.set({ selection: only({ kind: 'node', id: node }) });
      return undefined;
    },
    key(input) {
      const action = actionOf(input, 'select');
      if (action === 'cycle' || action === 'cycle.back') return cycle(action === 'cycle.back');
      return editByKey(context, input);
    },
    cancel: () => self,
  };
  return self;
}
