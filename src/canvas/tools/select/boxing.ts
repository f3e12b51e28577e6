import { schemeOf } from '../../../graph/infer.ts';
import { boxSelect, spatialIndex } from '../../../graph/spatial.ts';
import { nothing } from '../../board.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from '../tool.ts';
import { joined } from './choice.ts';
import { selectIdle } from './idle.ts';

/** A press on empty paper: a box that selects what it encloses; drawn to the left, what it touches. */
export function boxing(context: ToolContext, press: PointerInput): Phase {
  const { board } = context;
  const before = board.getState().selection;
  const base = press.modifiers.shift ? before : nothing;
  let open = false;

  const take = (at: PointerInput) => {
    const crossing = at.point.u < press.point.u;
    const { job, schemeId } = board.getState();
    const index = spatialIndex(schemeOf(job, schemeId), press.sheet);
    const held = boxSelect(index, press.point, at.point, { touching: crossing });
    board.set({ selection: joined(base, held) });
    context.draw(press.sheet, [{ kind: 'box', from: press.point, to: at.point, crossing }]);
  };

  return {
    name: 'select/boxing',
    cursor: 'crosshair',
    pressed: true,
    leave: () => context.draw(null, []),
    move(at) {
      if (at.sheet !== press.sheet) return undefined;
      open ||= dragged(press, at);
      if (open) take(at);
      return undefined;
    },
    up(at) {
      if (at.sheet === press.sheet && (open || dragged(press, at))) take(at);
      else if (!open) board.set({ selection: base });
      return selectIdle(context);
    },
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}
