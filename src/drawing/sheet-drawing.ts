import type { Job } from '../graph/document.ts';
import { memoise } from '../graph/memo.ts';
import type { Route } from '../graph/route.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import type { SpeedResult } from '../graph/solution.ts';
import { type ColourBy, colourAt, colourScale, valuesOf } from './colour.ts';
import { inCrossingOrder } from './crossing-order.ts';
import { annotationMarks } from './drawing-annotations.ts';
import { ductMarks } from './drawing-ducts.ts';
import { labelMarks } from './drawing-labels.ts';
import { roomInSpace, roomOnSheet } from './drawing-room.ts';
import type { Measure } from './label-box.ts';
import type { Box } from './label-place.ts';
import {
  type DrawnSheet,
  type Layer,
  type LayerId,
  layerIds,
  type Mark,
  PX,
  type SheetDrawing,
} from './marks.ts';
import { screenBox } from './names.ts';
import { roughWidth } from './note-box.ts';
import { type Outline, outlineIn } from './outline.ts';
import { MIN_TEXT } from './palette.ts';
import { pointsOf } from './stroke.ts';
import { seen } from './tube.ts';
import { isometric, turnedView } from './turned.ts';
import { type View, views } from './view.ts';
import { type Bounds, boundsOf, type Viewport } from './viewport.ts';

export interface SheetQuery {
  readonly job: Job;
  readonly route: Route;
  readonly sheet: DrawnSheet;
  /** n of 1 : n. */
  readonly scale: number;
  /** The speed whose values fill and label the duct; it stays without where absent or unsolved. */
  readonly speed?: SpeedResult | undefined;
  /** What the values are; velocity where absent. */
  readonly colourBy?: ColourBy;
  /** Widths of texts in CSS px at the labels' size, where a font is at hand; else a good guess. */
  readonly measure?: Measure;
  /** Draws blocks and exits whole instead of ending them a little beyond the route. */
  readonly wholeRoom?: boolean;
}

/** What the makers of marks share. */
export interface Setting extends Required<Pick<SheetQuery, 'job' | 'route' | 'measure' | 'colourBy'>> {
  readonly scale: number;
  readonly view: View;
  readonly outline: Outline;
  /** The sheet at its scale in CSS px of paper: places and sizes of labels are found in these. */
  readonly paper: Viewport;
  /** By segment id: SI values, and their colours. */
  readonly values: ReadonlyMap<string, number>;
  readonly fills: ReadonlyMap<string, string>;
}

/** A mark with the layer that it stands on. */
export type Layered = readonly [LayerId, Mark];

/** How far round the route the room is drawn, m. */
const surroundings = 0.8;
/** Paper left free round a drawing, mm. */
const margin = 4;

/**
 * One sheet as marks on layers by trade meaning, true to scale: what SVG, PDF and DXF are written from. Lines
 * that nearer things hide are cut away, so that layers may be drawn one after another.
 */
export function sheetDrawing(query: SheetQuery): SheetDrawing {
  const { job, route, sheet, scale } = query;
  const view = sheet === 'isometric' ? turnedView(isometric) : views[sheet];
  const values = valuesOf(query.speed, query.colourBy ?? 'velocity');
  const colourBy = query.colourBy ?? 'velocity';
  const colours = colourScale(values.values(), colourBy, job.units);
  const setting: Setting = {
    job,
    route,
    scale,
    view,
    colourBy,
    measure: query.measure ?? ((text) => roughWidth(text, MIN_TEXT)),
    outline: outlineFor(route, job, view),
    paper: { scale: 1000 / scale / PX, panX: 0, panY: 0 },
    values,
    fills: new Map([...values].map(([id, value]) => [id, colourAt(colours, value)])),
  };
  const core = coreOf(setting, sheet);
  const around = query.wholeRoom ? null : grownBy(core, surroundings);
  const ducts = ductMarks(setting);
  const flat = sheet === 'isometric' ? null : sheet;
  const room = flat ? roomOnSheet(setting, flat, around, core) : roomInSpace(setting, ducts.hidden);
  const annotations = flat ? annotationMarks(setting, flat) : [];
  const said = [...room, ...annotations].flatMap(([, mark]) => textBoxes(mark, setting));
  const marks = [...room, ...ducts.marks, ...labelMarks(setting, flat, core, said), ...annotations];
  const drawn = boundsOf(marks.flatMap(([, mark]) => extentOf(mark, scale)));
  const bounds = grownBy(drawn ?? core, (margin * scale) / 1000);
  return {
    sheet,
    scale,
    bounds,
    width: ((bounds.maxU - bounds.minU) * 1000) / scale,
    height: ((bounds.maxV - bounds.minV) * 1000) / scale,
    layers: layered(marks),
  };
}

const outlineFor = memoise((route: Route, job: Job, view: View): Outline => {
  const outline = outlineIn(route, job, view);
  if (!view.solid) return outline;
  return { ...outline, drawables: inCrossingOrder(outline.drawables, outline.legs, view) };
});

/** What the route covers, with floor and ceiling on a section, m. */
function coreOf({ outline, route, job, view }: Setting, sheet: DrawnSheet): Bounds {
  const places = [...route.nodes.values()].map(({ at }) => at);
  const points = [
    ...outline.drawables.flatMap(({ bounds }) => [
      { u: bounds.minU, v: bounds.minV },
      { u: bounds.maxU, v: bounds.maxV },
    ]),
    ...places.map((at) => seen(at, view)),
  ];
  if (sheet === 'isometric') points.push(...places.map(([x, y]) => seen([x, y, 0], view)));
  else if (sheet !== 'floor') {
    const u = points[0]?.u ?? 0;
    points.push({ u, v: 0 }, { u, v: job.kitchen.ceilingHeight });
  }
  return boundsOf(points, 0.05) ?? { minU: 0, minV: 0, maxU: 3, maxV: 2.5 };
}

function grownBy({ minU, minV, maxU, maxV }: Bounds, by: number): Bounds {
  return { minU: minU - by, minV: minV - by, maxU: maxU + by, maxV: maxV + by };
}

/** Points round a mark, m on the sheet. */
function extentOf(mark: Mark, scale: number) {
  if (mark.kind === 'line') return mark.strokes.flatMap(pointsOf);
  if (mark.kind === 'fill') return mark.outline.flatMap(pointsOf);
  if (mark.kind === 'dimension') return [...mark.line, ...textCorners(mark.text, scale)];
  return textCorners(mark, scale);
}

/** Where a mark's text stands, px of paper. */
function textBoxes(mark: Mark, { scale, paper }: Setting): Box[] {
  const text = mark.kind === 'dimension' ? mark.text : mark;
  const bounds = text.kind === 'text' ? boundsOf(textCorners(text, scale)) : null;
  return bounds ? [screenBox(bounds, paper)] : [];
}

function textCorners({ at, align, width, height }: Extract<Mark, { kind: 'text' }>, scale: number) {
  const [w, h] = [(width * scale) / 1000, (height * scale) / 1000];
  const left = align === 'left' ? at.u : align === 'right' ? at.u - w : at.u - w / 2;
  return [
    { u: left, v: at.v - h / 2 },
    { u: left + w, v: at.v + h / 2 },
  ];
}

function layered(marks: readonly Layered[]): Layer[] {
  return layerIds
    .map((id) => ({ id, marks: marks.flatMap(([layer, mark]) => (layer === id ? [mark] : [])) }))
    .filter((layer) => layer.marks.length > 0);
}

/** True for one of the three flat sheets. */
export function isFlat(sheet: DrawnSheet): sheet is SheetId {
  return sheet !== 'isometric';
}

/** A node's place on a drawing, m on the sheet. */
export function placeOnSheet(at: readonly [number, number, number], sheet: DrawnSheet) {
  const place: [number, number, number] = [...at];
  return isFlat(sheet) ? project(place, sheet) : seen(place, turnedView(isometric));
}
