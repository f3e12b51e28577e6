import { has, joined, only, toggled } from '../../selection.ts';
import type { Under } from '../pick.ts';
import { DRAG_SLOP, dragged, type Phase, type PointerInput, type ToolContext } from '../tool.ts';
import { choseOf } from './choice.ts';
import { selectIdle } from './idle.ts';
import { moving } from './moving.ts';
import { wordsFor } from './names.ts';
import { pulling } from './pulling.ts';
import { sliding } from './sliding.ts';

/**
 * A press on something that may still be a click: it selects, or becomes a move. Of things that lie over
 * each other, what is selected already is what a drag takes, and each further click takes the next.
 */
export function pressing(context: ToolContext, press: PointerInput, hits: readonly Under[]): Phase {
  const { board } = context;
  const before = board.getState().selection;
  const adds = press.modifiers.shift;
  const last = context.lastClick;
  const again =
    last?.sheet === press.sheet &&
    Math.hypot(last.screen.x - press.screen.x, last.screen.y - press.screen.y) <= DRAG_SLOP;
  const held = again ? hits.findIndex((hit) => has(before, hit)) : -1;
  const picked = hits[Math.max(0, held)] as Under;
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
      if (picked.kind === 'part') return sliding(context, press, picked, before, at);
      if (picked.kind === 'dimension') return pulling(context, press, picked, before, at);
      return moving(context, { sheet: press.sheet, picked, before, press, first: at });
    },
    up() {
      const next = held >= 0 && press.clicks !== 2 && !adds ? (held + 1) % hits.length : Math.max(0, held);
      context.lastClick = press;
      const taken = hits[next] ?? picked;
      board.set({ selection: adds ? toggled(before, picked) : only(taken) });
      if (hits.length > 1) context.announce(choseOf(wordsFor(taken, board.getState()), next, hits.length));
      return selectIdle(context);
    },
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}
