import type { Underlay } from '../../../graph/document.ts';
import { changeUnderlay } from '../../../graph/edits/index.ts';
import { formatLength } from '../../../units/index.ts';
import { words } from '../../../words/index.ts';
import type { Recipe } from '../../board.ts';
import { type Action, actionOf } from '../keys.ts';
import { nudgeStep } from '../select/keyboard.ts';
import { dragged, type KeyInput, type Phase, type PointerInput, putAway, type ToolContext } from '../tool.ts';
import { edgeOf, nameOf, underlayAt } from './pick.ts';

const says = words.tools.underlay;

const arrows: Partial<Record<Action, readonly [number, number]>> = {
  'nudge.left': [-1, 0],
  'nudge.right': [1, 0],
  'nudge.up': [0, 1],
  'nudge.down': [0, -1],
  'nudge.far.left': [-10, 0],
  'nudge.far.right': [10, 0],
  'nudge.far.up': [0, 10],
  'nudge.far.down': [0, -10],
};

/** The tool that moves underlays: a press on an unlocked one takes hold of it; arrow keys nudge it. */
export function underlayReady(context: ToolContext): Phase {
  const { board } = context;
  let over: Underlay | undefined;
  const clear = () => context.draw(null, []);
  const tellLocked = (underlay: Underlay) => context.announce(says.unlockFirst(nameOf(underlay)));

  const nudged = (input: KeyInput): boolean => {
    const arrow = arrows[actionOf(input, 'select') ?? 'cancel'];
    if (!arrow) return false;
    const { job, underlay: chosen, units } = board.getState();
    const here = job.underlays.filter(({ sheet }) => sheet === input.sheet);
    const target = here.find(({ id }) => id === (chosen ?? over?.id)) ?? here.at(-1);
    if (!target) return false;
    if (target.locked) tellLocked(target);
    else {
      const by = nudgeStep[units];
      board.dispatch(words.edits.underlay.nudge, movedBy(target, arrow[0] * by, arrow[1] * by));
    }
    return true;
  };

  const self: Phase = {
    name: 'underlay/ready',
    cursor: 'move',
    leave: clear,
    out: clear,
    move(at) {
      over = underlayAt(context, at);
      const text = over?.locked ? says.locked(nameOf(over)) : over ? says.move(nameOf(over)) : says.none;
      context.draw(at.sheet, [...(over ? edgeOf(over) : []), { kind: 'note', at: at.point, text }]);
      return undefined;
    },
    down(at) {
      const underlay = at.button === 0 ? underlayAt(context, at) : undefined;
      if (!underlay) return undefined;
      if (!underlay.locked) return moving(context, underlay, at);
      tellLocked(underlay);
      return undefined;
    },
    key(input) {
      if (nudged(input)) return true;
      if (actionOf(input, 'sheets') !== 'cancel') return false;
      board.set({ tool: 'select', underlay: null });
      return true;
    },
    cancel: () => self,
  };
  return self;
}

/** The underlay follows the pointer, with Shift level or plumb; letting go commits, Escape puts it back. */
function moving(context: ToolContext, underlay: Underlay, press: PointerInput): Phase {
  const { board } = context;
  let recipe: Recipe | null = null;
  let way = 0;

  const follow = (at: PointerInput) => {
    if (at.sheet !== press.sheet || (recipe === null && !dragged(press, at))) return;
    let [du, dv] = [at.point.u - press.point.u, at.point.v - press.point.v];
    if (at.modifiers.shift) [du, dv] = Math.abs(du) >= Math.abs(dv) ? [du, 0] : [0, dv];
    way = Math.hypot(du, dv);
    recipe = movedBy(underlay, du, dv);
    board.preview(recipe);
    const text = formatLength(way, board.getState().units);
    context.draw(press.sheet, [{ kind: 'note', at: at.point, text }]);
  };
  const back = () => underlayReady(context);

  return {
    name: 'underlay/moving',
    cursor: 'grabbing',
    pressed: true,
    leave: () => putAway(context),
    move(at) {
      follow(at);
      return undefined;
    },
    up(at) {
      follow(at);
      if (recipe && way > 0) {
        board.dispatch(words.edits.underlay.move, recipe);
        context.announce(says.moved(nameOf(underlay), formatLength(way, board.getState().units)));
      }
      return back();
    },
    key: (input) => (actionOf(input, 'sheets') === 'cancel' ? back() : false),
    changed: back,
    cancel: back,
  };
}

function movedBy({ id, at: [u, v] }: Underlay, du: number, dv: number): Recipe {
  return (draft) => {
    changeUnderlay(draft, id, { at: [u + du, v + dv] });
  };
}
