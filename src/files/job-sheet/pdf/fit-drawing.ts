import type { DrawnSheet, LayerId, Mark, SheetDrawing } from '../../../drawing/marks.ts';
import { placeOnSheet, sheetDrawing } from '../../../drawing/sheet-drawing.ts';
import { fittingScale } from '../../../drawing/standard-scale.ts';
import { pointsOf } from '../../../drawing/stroke.ts';
import { type Bounds, boundsOf } from '../../../drawing/viewport.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { labelMeasure } from './draw-marks.ts';
import type { Drawn } from './drawn.ts';
import type { Area, Type } from './look.ts';

/** Paper left free round a drawing, mm. */
const edge = 2.5;
/** The view from an angle may be this much smaller than its frame has room for, so that the room is seen whole. */
const smallestShare = 0.55;

/** A drawing that fits its area, with the point of its sheet that stands in the middle. */
export interface Fitted {
  readonly drawing: SheetDrawing;
  readonly middle: SheetPoint;
}

/**
 * The drawing at the largest standard scale at which the duct and all that is said of it fits an area; the room
 * around it may run to the edge of the paper. A view from an angle has no standard scale, and shows the room too
 * where it can.
 */
export function fitDrawing(sheet: DrawnSheet, { job, route }: Drawn, area: Area, type: Type): Fitted {
  const measure = labelMeasure(type);
  const made = new Map<number, SheetDrawing>();
  const at = (scale: number): SheetDrawing => {
    const drawing = made.get(scale) ?? sheetDrawing({ job, route, sheet, scale, measure });
    made.set(scale, drawing);
    return drawing;
  };
  const needed = ({ minU, maxU, minV, maxV }: Bounds) =>
    Math.max((maxU - minU) / (area.width - 2 * edge), (maxV - minV) / (area.height - 2 * edge)) * 1000;
  const nodes = boundsOf([...route.nodes.values()].map((node) => placeOnSheet(node.at, sheet)));
  const scale = fittingScale(
    job.units,
    (one) => (!nodes || needed(nodes) <= one) && needed(boundsOfRoute(at(one))) <= one,
  );
  const flat = at(scale);
  if (sheet !== 'isometric') return { drawing: flat, middle: middleOf(flat, boundsOfRoute(flat), area) };
  const [whole, least] = [needed(flat.bounds), needed(boundsOfRoute(flat)) / smallestShare];
  const drawing = at(Math.min(whole, least));
  const shown = whole <= least ? drawing.bounds : boundsOfRoute(drawing);
  return { drawing, middle: middleOf(drawing, shown, area) };
}

/** The middle of the whole drawing, or as near to it as leaves what must be seen on the paper. */
function middleOf({ bounds: whole, scale }: SheetDrawing, seen: Bounds, area: Area): SheetPoint {
  const along = (low: 'minU' | 'minV', high: 'maxU' | 'maxV', paper: number) => {
    const half = ((paper / 2 - edge) * scale) / 1000;
    const [least, most] = [seen[high] - half, seen[low] + half];
    return least > most
      ? (least + most) / 2
      : Math.min(most, Math.max(least, (whole[low] + whole[high]) / 2));
  };
  return { u: along('minU', 'maxU', area.width), v: along('minV', 'maxV', area.height) };
}

const roomLayers = new Set<LayerId>(['exits', 'blocks', 'hatch', 'room', 'names']);

/** What the duct and all that is said of it covers, m; the whole drawing where there is no duct. */
function boundsOfRoute({ layers, scale, bounds }: SheetDrawing): Bounds {
  const marks = layers.flatMap(({ id, marks: own }) => (roomLayers.has(id) ? [] : own));
  return boundsOf(marks.flatMap((mark) => cornersOf(mark, scale))) ?? bounds;
}

function cornersOf(mark: Mark, scale: number): readonly SheetPoint[] {
  if (mark.kind === 'line') return mark.strokes.flatMap(pointsOf);
  if (mark.kind === 'fill') return mark.outline.flatMap(pointsOf);
  if (mark.kind === 'dimension') return [...mark.line, ...cornersOf(mark.text, scale)];
  const [w, h] = [(mark.width * scale) / 2000, (mark.height * scale) / 2000];
  const { u, v } = mark.at;
  return [
    { u: u - w, v: v - h },
    { u: u + w, v: v + h },
  ];
}
