import type { Pick } from '../pick.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from '../tool.ts';
import { has, joined, only, toggled } from './choice.ts';
import { selectIdle } from './idle.ts';
import { moving } from './moving.ts';

/** A press on a node or a leg that may still be a click: it selects, or becomes a move. */
export function pressing(context: ToolContext, press: PointerInput, picked: Pick): Phase {
  const { board } = context;
  const before = board.getState().selection;
  const adds = press.modifiers.shift;
  return {
    name: 'select/pressing',
    cursor: 'pointer',
    pressed: true,
    enter() {
      if (!adds && !has(before, picked)) board.set({ selection: only(picked) });
    },
    move(at) {
      if (!dragged(press, at)) return undefined;
      if (adds) board.set({ selection: joined(before, only(picked)) });
      return moving(context, press, picked, before, at);
    },
    up() {
      board.set({ selection: adds ? toggled(before, picked) : only(picked) });
      return selectIdle(context);
    },
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}
