import { detailOf, labelledLegs } from '../drawing/detail.ts';
import { arrowOf } from '../drawing/flow-arrow.ts';
import { RULER } from '../drawing/grid.ts';
import { lineHeight, type Measure } from '../drawing/label-box.ts';
import { type Box, grown, leftOut, movedBy, type Placed, placeLabels } from '../drawing/label-place.ts';
import { labelsOf } from '../drawing/labels.ts';
import { busyPlaces, namesOn } from '../drawing/names.ts';
import type { Outline, SheetLeg } from '../drawing/outline.ts';
import {
  boundsOf,
  overlaps,
  type Size,
  toScreen,
  type Viewport,
  visibleBounds,
} from '../drawing/viewport.ts';
import { schemeOf } from '../graph/infer.ts';
import type { SheetId } from '../graph/sheet.ts';
import { words } from '../words/index.ts';
import { type BoardState, nothing } from './board.ts';
import { coloursOf } from './colouring.ts';
import { planeOf, standingsOf } from './cut.ts';
import { inView } from './draw-ducts.ts';
import { frameBoxes } from './draw-frame.ts';
import { handleBoxes, handlesOf } from './draw-marks.ts';

/** Legs in view from which on labels are placed beyond the edges too, and go along while the sheet is panned. */
const crowded = 60;
/** How far beyond the edges, px: so far a crowded sheet is panned before its labels are placed anew. */
const stock = 240;

/** A sheet's labels, and how many figures found no room. */
export interface Labels {
  readonly placed: readonly Placed[];
  /** Lengths, rises and values of duct in view that zooming in would show. */
  readonly more: number;
}

/** Says where a sheet's labels stand; `fixed` are boxes that they keep clear of besides those of the sheet itself. */
type Placement = (
  state: BoardState,
  view: Viewport,
  size: Size,
  measure: Measure,
  fixed: readonly Box[],
) => Labels;

/**
 * Labels placed only when what they depend on has changed: pointing at something places none, and panning
 * a crowded sheet places new ones only once it has gone as far as those that are in stock.
 */
export function createPlacement(sheet: SheetId, outline: (state: BoardState) => Outline): Placement {
  let known: {
    readonly from: readonly unknown[];
    readonly view: Viewport;
    readonly beyond: number;
    readonly labels: Labels;
  } | null = null;
  return (state, view, size, measure, fixed) => {
    const made = outline(state);
    const { selection, units, colourBy, live, workingHeight } = state;
    const now = [
      ...[made, coloursOf(state).values, state.solution.findings],
      ...[selection, units, colourBy, live.blocks, live.exits, live.hoods],
      ...[workingHeight, planeOf(state, sheet), view.scale, size.width, size.height],
      ...[live.sheetNotes, schemeOf(live, state.schemeId).dimensions, live.kitchen.ceilingHeight],
    ];
    if (known && now.every((each, i) => each === known?.from[i])) {
      const [dx, dy] = [view.panX - known.view.panX, view.panY - known.view.panY];
      if (dx === 0 && dy === 0) return known.labels;
      if (Math.abs(dx) <= known.beyond && Math.abs(dy) <= known.beyond)
        return { ...known.labels, placed: movedBy(known.labels.placed, dx, dy) };
    }
    const crowd = made.legs.length > crowded;
    const beyond = crowd ? stock : 0;
    const labels = place(state, made, view, size, measure, fixed, beyond);
    known = { from: now, view, beyond, labels };
    return labels;
  };

  function place(
    state: BoardState,
    { drawables, legs }: Outline,
    view: Viewport,
    size: Size,
    measure: Measure,
    fixed: readonly Box[],
    beyond: number,
  ): Labels {
    const { route } = state.solution;
    const plane = planeOf(state, sheet);
    const stands = plane === null ? null : standingsOf(route, sheet, plane);
    const near = legs.filter(
      (leg) => isNear(leg, view, size, beyond) && stands?.leg(leg.segment.id) !== 'before',
    );
    const labelled = labelledLegs(near, state.selection.segments, view);
    const wanted = labelsOf({
      sheet,
      route,
      legs: labelled,
      values: coloursOf(state).values,
      by: state.colourBy,
      units: state.units,
      selection: state.selection,
      names: namesOn(state.live, state.schemeId, sheet, drawables),
      view,
      measure,
    });
    const inner: Box = { minX: RULER + 4, minY: RULER + 4, maxX: size.width - 4, maxY: size.height - 4 };
    const full = detailOf(legs, view) === 'full';
    const handles = handlesOf(route, sheet, state.selection, nothing, view, size);
    const kept = [
      ...(beyond > 0 ? [] : frameBoxes(size)),
      ...(beyond > 0 ? [] : levelBoxes(state, sheet, view, size, measure)),
      ...handleBoxes(handles),
      ...fixed,
      ...(full ? near.flatMap((leg) => arrowOf(leg, view)?.box ?? []) : []),
    ];
    const wide = { width: size.width + 2 * beyond, height: size.height + 2 * beyond };
    const shifted = { ...view, panX: view.panX + beyond, panY: view.panY + beyond };
    const busy = busyPlaces(state.live, inView(drawables, shifted, wide), sheet, view);
    const placed = placeLabels(wanted, grown(inner, beyond), kept, busy);
    const figures = leftOut(wanted, placed, ['dimension', 'riser', 'value'], inner);
    const unlabelled = near.filter((leg) => !labelled.includes(leg) && isIn(leg, view, inner)).length;
    return { placed, more: figures + unlabelled };
  }
}

/** Where a section says its working height, its ceiling and its floor, px. */
function levelBoxes(
  { workingHeight, live }: BoardState,
  sheet: SheetId,
  view: Viewport,
  size: Size,
  measure: Measure,
): Box[] {
  if (sheet === 'floor') return [];
  const { ceiling, floor } = words.sheets.levels;
  const height = toScreen({ u: 0, v: workingHeight }, view).y;
  const named = [
    { text: ceiling, v: live.kitchen.ceilingHeight },
    { text: floor, v: 0 },
  ].map(({ text, v }) => {
    const { y } = toScreen({ u: 0, v }, view);
    return { minX: size.width - 12 - measure(text), minY: y - lineHeight - 3, maxX: size.width, maxY: y + 1 };
  });
  return [{ minX: RULER, minY: height - 10, maxX: RULER + 76, maxY: height + 10 }, ...named];
}

/** A leg whose middle is in view. */
function isIn(leg: SheetLeg, view: Viewport, { minX, minY, maxX, maxY }: Box): boolean {
  const { x, y } = toScreen({ u: (leg.from.u + leg.to.u) / 2, v: (leg.from.v + leg.to.v) / 2 }, view);
  return x >= minX && y >= minY && x <= maxX && y <= maxY;
}

/** A leg that a label in view could belong to. */
function isNear(leg: SheetLeg, view: Viewport, size: Size, beyond: number): boolean {
  const bounds = boundsOf([leg.from, leg.to], leg.half);
  return bounds !== null && overlaps(bounds, visibleBounds(view, size, 80 + beyond));
}
