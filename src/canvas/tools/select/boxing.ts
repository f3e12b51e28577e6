import { boundsOn } from '../../../drawing/box-faces.ts';
import { dimensionShape } from '../../../drawing/dimension-lines.ts';
import { type Bounds, boundsOf, overlaps } from '../../../drawing/viewport.ts';
import { schemeOf } from '../../../graph/infer.ts';
import type { SheetId, SheetPoint } from '../../../graph/sheet.ts';
import { boxSelect, spatialIndex } from '../../../graph/spatial.ts';
import { type BoardState, nothing, type Selection } from '../../board.ts';
import { isEmpty, joined, selectionOf } from '../../selection.ts';
import { dragged, type Phase, type PointerInput, type ToolContext } from '../tool.ts';
import { countedSelection } from './choice.ts';
import { selectIdle } from './idle.ts';

/** A press on empty paper: a box that selects what it encloses; drawn to the left, what it touches. */
export function boxing(context: ToolContext, press: PointerInput): Phase {
  const { board } = context;
  const before = board.getState().selection;
  const base = press.modifiers.shift ? before : nothing;
  let open = false;

  const take = (at: PointerInput) => {
    const crossing = at.point.u < press.point.u;
    const held = heldIn(board.getState(), press.sheet, press.point, at.point, crossing);
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
      if (at.sheet === press.sheet && (open || dragged(press, at))) {
        take(at);
        const { selection } = board.getState();
        if (!isEmpty(selection)) context.announce(countedSelection(selection));
      } else if (!open) board.set({ selection: base });
      return selectIdle(context);
    },
    cancel() {
      board.set({ selection: before });
      return selectIdle(context);
    },
  };
}

/** What a box of a sheet holds: what lies wholly in it or, with `touching`, what it meets at all. */
function heldIn(
  { job, schemeId }: BoardState,
  sheet: SheetId,
  corner: SheetPoint,
  opposite: SheetPoint,
  touching: boolean,
): Selection {
  const scheme = schemeOf(job, schemeId);
  const run = boxSelect(spatialIndex(scheme, sheet), corner, opposite, { touching });
  const area = boundsOf([corner, opposite]) as Bounds;
  const holds = (thing: Bounds | null) =>
    thing !== null &&
    overlaps(area, thing) &&
    (touching ||
      (thing.minU >= area.minU &&
        thing.maxU <= area.maxU &&
        thing.minV >= area.minV &&
        thing.maxV <= area.maxV));
  const idsIn = <T extends { readonly id: string }>(all: readonly T[], bounds: (thing: T) => Bounds | null) =>
    all.filter((thing) => holds(bounds(thing))).map(({ id }) => id);
  return selectionOf((kind) => {
    switch (kind) {
      case 'node':
        return run.nodes;
      case 'segment':
        return run.segments;
      case 'block':
        return idsIn(job.blocks, (block) => boundsOn(block, sheet));
      case 'exit':
        return idsIn(job.exits, (exit) => boundsOn(exit, sheet));
      case 'note':
        return idsIn(job.sheetNotes ?? [], ({ sheet: on, at: [u, v] }) =>
          on === sheet ? boundsOf([{ u, v }]) : null,
        );
      case 'dimension':
        return idsIn(scheme.dimensions ?? [], (dimension) => {
          const shape = dimension.sheet === sheet ? dimensionShape(dimension, scheme, job) : null;
          return shape && boundsOf([...shape.ends, ...shape.line]);
        });
      case 'part':
        return [];
    }
  });
}
