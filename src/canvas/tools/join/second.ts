import { joinNodes } from '../../../graph/edits/index.ts';
import { project } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { nothing } from '../../board.ts';
import { only } from '../../selection.ts';
import { actionOf } from '../keys.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from '../tool.ts';
import { endAt, joinReady } from './ready.ts';

const says = words.tools.join;

/** An end in hand: the leg to what is under the pointer is shown in the document itself, and a click joins. */
export function joinSecond(context: ToolContext, first: string, press: PointerInput): Phase {
  const { board } = context;
  const { schemeId } = board.getState();
  let pressed: PointerInput | null = press;

  const show = (at: PointerInput) => {
    const start = board.getState().solution.route.nodes.get(first);
    const id = endAt(context, at, first);
    context.hover(id ? only({ kind: 'node', id }) : nothing);
    board.preview(id ? (job) => void joinNodes(job, schemeId, first, id) : null);
    if (!start) return;
    const from = project(start.at, at.sheet);
    context.draw(at.sheet, [
      { kind: 'node', at: from },
      ...(id
        ? [{ kind: 'snap', at: at.point, reason: words.tools.draw.joins } as const]
        : [{ kind: 'guide', from, to: at.point } as const]),
    ]);
  };

  const commit = (at: PointerInput): Phase | undefined => {
    const id = endAt(context, at, first);
    if (!id) {
      context.announce(says.second);
      return undefined;
    }
    let made: ReturnType<typeof joinNodes> = null;
    board.dispatch(words.edits.route.joinEnds, (job) => {
      made = joinNodes(job, schemeId, first, id);
    });
    context.announce(made ? words.commands.run.join.done : says.refused);
    return joinReady(context);
  };

  return {
    name: 'join/second',
    cursor: 'cell',
    get pressed() {
      return pressed !== null;
    },
    enter: () => show(press),
    leave() {
      board.preview(null);
      context.hover(nothing);
      context.draw(null, []);
    },
    move(at) {
      show(at);
      return undefined;
    },
    down(at) {
      if (at.button === 0) pressed = at;
      return undefined;
    },
    up(at) {
      const from = pressed;
      pressed = null;
      return from && (from !== press || dragged(press, at)) ? commit(at) : undefined;
    },
    key: (input) => (actionOf(input, 'sheets') === 'cancel' ? joinReady(context) : false),
    changed: () => joinReady(context),
    cancel: () => joinReady(context),
  };
}
