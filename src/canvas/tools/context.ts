import { schemeOf } from '../../graph/infer.ts';
import { depthOf, type SheetId, type SheetPoint, unproject } from '../../graph/sheet.ts';
import { snap } from '../../graph/snap.ts';
import { spatialIndex } from '../../graph/spatial.ts';
import type { Board } from '../board.ts';
import { sameSelection } from '../selection.ts';
import type { FieldAsk, MenuAsk } from './ask.ts';
import { restingDepth } from './depth.ts';
import { pick } from './pick.ts';
import { snapStep } from './snap-step.ts';
import type { PointerInput, PointerKind, Surface, ToolContext } from './tool.ts';
import { under } from './under.ts';

/** Pixels within which things attract: a finger is wider than a point. */
const reach: Readonly<Record<PointerKind, number>> = { mouse: 8, pen: 10, touch: 20 };

/** Pixels a metre where no sheet says. */
const PLAIN_SCALE = 100;

/** Ways out of the tools to the person. */
export interface Voice {
  readonly announce: (text: string) => void;
  readonly ask: (field: FieldAsk | null) => void;
  readonly menu: (menu: MenuAsk) => void;
}

/** What the phases share over one board. */
export function createContext(
  board: Board,
  surfaces: ReadonlyMap<SheetId, Surface>,
  voice: Voice,
): ToolContext {
  let shown: SheetId | null = null;
  const scaleOf = (sheet: SheetId) => surfaces.get(sheet)?.viewport().scale ?? PLAIN_SCALE;
  const toleranceAt = (at: PointerInput) => reach[at.pointerType] / scaleOf(at.sheet);

  return {
    board,
    ...voice,
    lastClick: null,
    toleranceAt,
    surface: (sheet) => surfaces.get(sheet),
    pickAt(at, options) {
      const { job, schemeId } = board.getState();
      const scheme = schemeOf(job, schemeId);
      return pick(scheme, spatialIndex(scheme, at.sheet), at.point, toleranceAt(at), options);
    },
    underAt: (at) =>
      under(board.getState(), {
        sheet: at.sheet,
        point: at.point,
        tolerance: toleranceAt(at),
        scale: scaleOf(at.sheet),
      }),
    snapAt(at, { from, previous, anchors, square, depth, exclude } = {}) {
      const state = board.getState();
      const { job, schemeId, units } = state;
      const workingDepth = depth ?? (from ? depthOf(from, at.sheet) : restingDepth(state, at.sheet));
      const point = square ? onAxis(square, at.point) : at.point;
      const bare = { at: unproject(point, at.sheet, workingDepth), point, reason: '', guides: [] };
      if (at.modifiers.alt) return bare;
      const snapped = snap({
        index: spatialIndex(schemeOf(job, schemeId), at.sheet),
        point,
        tolerance: toleranceAt(at),
        workingDepth,
        from,
        previous,
        anchors,
        exclude,
        gridStep: snapStep(scaleOf(at.sheet), units),
        blocks: job.blocks.filter(({ id }) => !exclude?.has(id)),
        exits: job.exits.filter(({ id }) => !exclude?.has(id)),
        units,
      });
      const kept = square ? along(square, point, snapped.point) : snapped.point;
      if (Math.hypot(kept.u - snapped.point.u, kept.v - snapped.point.v) < 1e-9) return snapped;
      return { ...bare, at: unproject(kept, at.sheet, workingDepth), point: kept };
    },
    hover(over) {
      if (!sameSelection(board.getState().hover, over)) board.set({ hover: over });
    },
    draw(sheet, shapes) {
      if (shown !== null && shown !== sheet) surfaces.get(shown)?.drawActive([]);
      if (sheet !== null) surfaces.get(sheet)?.drawActive(shapes);
      shown = shapes.length > 0 ? sheet : null;
    },
  };
}

/** The nearer of the two directions of the sheet. */
export function onAxis(from: SheetPoint, to: SheetPoint): SheetPoint {
  return Math.abs(to.u - from.u) >= Math.abs(to.v - from.v) ? { u: to.u, v: from.v } : { u: from.u, v: to.v };
}

/** A place moved onto the direction of the sheet that another one is in. */
function along(from: SheetPoint, held: SheetPoint, to: SheetPoint): SheetPoint {
  return held.v === from.v ? { u: to.u, v: from.v } : { u: from.u, v: to.v };
}
