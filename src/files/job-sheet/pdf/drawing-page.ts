import type { LayerId, Mark, SheetDrawing } from '../../../drawing/marks.ts';
import { placeOnSheet, sheetDrawing } from '../../../drawing/sheet-drawing.ts';
import { fittingScale, type StandardScale } from '../../../drawing/standard-scale.ts';
import { pointsOf } from '../../../drawing/stroke.ts';
import { type Bounds, boundsOf } from '../../../drawing/viewport.ts';
import type { Finding } from '../../../graph/route.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { POINT } from '../../pdf/font.ts';
import type { At, Page } from '../../pdf/page.ts';
import type { DrawingBlock } from '../types.ts';
import { drawMarks, labelMeasure, lieOf } from './draw-marks.ts';
import type { Drawn } from './drawn.ts';
import { drawKeys, drawLetter, drawNumber } from './keys.ts';
import { type Area, inks, pen, sizes, style, type Type } from './look.ts';
import { drawScaleBar, scaleBarHeight } from './scale-bar.ts';
import { drawCircle, drawLine, drawPolygon } from './shapes.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';
import { inside } from './title-block.ts';

/** Width of the column beside a drawing, mm. */
const columnWidth = 58;
/** Paper left free in the column, mm. */
const free = 4;
/** Paper left free round a drawing, mm. */
const edge = 2.5;

/** Draws one sheet at the largest standard scale that its page has room for, and says which. */
export function drawDrawingPage(page: Page, block: DrawingBlock, drawn: Drawn, type: Type): string {
  const whole = inside(page);
  const area: Area = { ...whole, width: whole.width - columnWidth };
  const column: Area = { ...whole, x: area.x + area.width, width: columnWidth };
  const fitted = atFittingScale(block, drawn, area, type);
  const { scale, drawing } = fitted;
  const lie = lieOf(area, scale.ratio, middleOf(fitted, area));
  drawMarks(page, drawing, lie, type);
  drawKeys(page, drawing, lie, drawn, type);
  drawLine(
    page,
    { line: pen('edge') },
    { x: column.x, y: column.y },
    { x: column.x, y: column.y + column.height },
  );
  drawColumn(page, column, block, scale, drawn, type);
  return block.drawing === 'isometric' ? words.paper.block.noScale : scale.text;
}

interface Fitted {
  readonly scale: StandardScale;
  readonly drawing: SheetDrawing;
  readonly bounds: Bounds;
}

/** The view from an angle may be this much smaller than its frame has room for, so that the room is seen whole. */
const smallestShare = 0.55;

/**
 * The drawing at the largest standard scale at which the duct and all that is said of it fits; the room around it
 * may run to the edge of the paper. A view from an angle has no scale, and shows the room too where it can.
 */
function atFittingScale(
  { drawing: sheet }: DrawingBlock,
  { job, route }: Drawn,
  area: Area,
  type: Type,
): Fitted {
  const frame = { width: area.width - 2 * edge, height: area.height - 2 * edge };
  const needed = ({ minU, maxU, minV, maxV }: Bounds) =>
    1000 * Math.max((maxU - minU) / frame.width, (maxV - minV) / frame.height);
  const nodes = boundsOf([...route.nodes.values()].map(({ at }) => placeOnSheet(at, sheet)));
  const made = (scale: StandardScale): Fitted => {
    const drawing = sheetDrawing({ job, route, sheet, scale: scale.ratio, measure: labelMeasure(type) });
    return { scale, drawing, bounds: boundsOfRoute(drawing) ?? drawing.bounds };
  };
  let last: Fitted | null = null;
  const scale = fittingScale(job.units, (ratio) => {
    if (nodes && needed(nodes) > ratio) return false;
    last = made({ ratio, text: '' });
    return needed(last.bounds) <= ratio;
  });
  const kept = last as Fitted | null;
  const found = kept?.scale.ratio === scale.ratio ? { ...kept, scale } : made(scale);
  if (sheet !== 'isometric') return found;
  const whole = needed(found.drawing.bounds);
  const ratio = Math.min(whole, needed(found.bounds) / smallestShare);
  const turned = made({ ratio, text: words.paper.block.noScale });
  return { ...turned, bounds: whole <= ratio ? turned.drawing.bounds : turned.bounds };
}

/** The middle of the whole drawing, or as near to it as leaves what must be seen on the paper. */
function middleOf({ scale, drawing, bounds }: Fitted, area: Area): SheetPoint {
  const along = (low: 'minU' | 'minV', high: 'maxU' | 'maxV', paper: number) => {
    const half = ((paper / 2 - edge) * scale.ratio) / 1000;
    const whole = (drawing.bounds[low] + drawing.bounds[high]) / 2;
    const [least, most] = [bounds[high] - half, bounds[low] + half];
    return least > most ? (least + most) / 2 : Math.min(most, Math.max(least, whole));
  };
  return { u: along('minU', 'maxU', area.width), v: along('minV', 'maxV', area.height) };
}

const roomLayers = new Set<LayerId>(['exits', 'blocks', 'hatch', 'room', 'names']);

/** What the duct and all that is said of it covers, m: the room around it may run to the edge of the paper. */
function boundsOfRoute(drawing: SheetDrawing): Bounds | null {
  const marks = drawing.layers.flatMap(({ id, marks: own }) => (roomLayers.has(id) ? [] : own));
  return boundsOf(marks.flatMap((mark) => cornersOf(mark, drawing.scale)));
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

/** Beside the drawing: what it is, its scale, what is marked on it, and its key. */
function drawColumn(
  page: Page,
  column: Area,
  block: DrawingBlock,
  scale: StandardScale,
  drawn: Drawn,
  type: Type,
): void {
  const say = words.paper.drawing;
  const [x, width] = [column.x + free, column.width - 2 * free];
  const head = style(type, sizes.section, 'semibold', inks.ink, true);
  const quiet = style(type, sizes.small, 'regular', inks.muted, true);
  let y = column.y + free;
  y +=
    drawLines(
      page,
      { x, y },
      wrapped(block.caption, block.drawing === 'floor' ? width - 8 : width, head),
      head,
    ) + 1;
  if (block.drawing === 'floor') drawNorth(page, { x: x + width - 3, y: column.y + free + 4.5 }, type);
  if (block.drawing === 'isometric')
    y += drawLines(page, { x, y }, wrapped(say.isometric, width, quiet), quiet);
  else {
    y += drawLines(page, { x, y }, [scale.text], style(type, sizes.heading)) + 1.5;
    drawScaleBar(page, { x, y }, width, scale.ratio, drawn.job.units, type);
    y += scaleBarHeight;
    y += drawLines(page, { x, y }, wrapped(say.figures, width, quiet), quiet);
  }
  const entries = keyEntries(block, drawn, type);
  const keyTop = column.y + column.height - free - entries.length * 5.2 - 5;
  drawFindings(page, { x, y: y + 4, width, height: keyTop - y - 8 }, drawn, type);
  drawLine(page, { line: pen('fine') }, { x, y: keyTop - 2 }, { x: x + width, y: keyTop - 2 });
  page.text({ x, y: keyTop + 2.4 }, say.key, style(type, sizes.small, 'semibold', inks.ink, true));
  entries.forEach(({ sign, text }, i) => {
    const at = { x: x + 4, y: keyTop + 7 + i * 5.2 };
    sign(page, at);
    page.text({ x: x + 11, y: at.y + 0.9 }, text, style(type, 6.4, 'regular', inks.ink, true));
  });
}

const rank = { danger: 0, error: 1, warning: 2, note: 3 } as const;

/** What is marked on the drawing, the gravest first, as many as there is room for. */
function drawFindings(page: Page, area: Area, { lettered }: Drawn, type: Type): void {
  const say = words.paper.drawing;
  const head = style(type, sizes.small, 'semibold', inks.ink, true);
  const text = style(type, sizes.small, 'regular', inks.ink, true);
  const quiet = { ...text, colour: inks.muted };
  page.text({ x: area.x, y: area.y + 2.4 }, say.findings, head);
  let y = area.y + 5;
  if (lettered.length === 0) {
    drawLines(page, { x: area.x, y }, wrapped(say.noFindings, area.width, quiet), quiet);
    return;
  }
  const sorted = [...lettered].sort((a, b) => rank[a.finding.severity] - rank[b.finding.severity]);
  for (const [i, { letter, finding }] of sorted.entries()) {
    const lines = wrapped(saidOf(finding), area.width - 6, text);
    const height = lines.length * lineHeight(text) + 1.8;
    const last = i === sorted.length - 1;
    if (y + height + (last ? 0 : lineHeight(quiet)) > area.y + area.height) {
      drawLines(page, { x: area.x, y }, [say.more(sorted.length - i)], quiet);
      return;
    }
    drawLetter(page, { x: area.x + 1.8, y: y + 2 }, letter, finding.severity, type);
    drawLines(page, { x: area.x + 6, y }, lines, text);
    y += height;
  }
}

function saidOf({ message, remedy, severity }: Finding): string {
  const grave = severity === 'danger' || severity === 'error';
  return grave && remedy ? `${message} ${remedy}` : message;
}

interface KeyEntry {
  readonly text: string;
  readonly sign: (page: Page, at: At) => void;
}

function keyEntries({ drawing }: DrawingBlock, { route, lettered }: Drawn, type: Type): readonly KeyEntry[] {
  const say = words.paper.drawing;
  const flat = drawing !== 'isometric';
  const along = [...route.segments.values()].some(({ direction }) => {
    const depth = drawing === 'floor' ? direction[2] : drawing === 'section-x' ? direction[1] : direction[0];
    return flat && Math.abs(depth) > 0.996;
  });
  const severities = new Set(lettered.map(({ finding }) => finding.severity));
  const grave = severities.has('danger') || severities.has('error');
  return [
    { text: say.leg, sign: (page, at) => drawNumber(page, at, '1', type) },
    ...(grave
      ? [{ text: say.grave, sign: (page: Page, at: At) => drawLetter(page, at, 'A', 'danger', type) }]
      : []),
    ...(severities.has('warning')
      ? [{ text: say.warning, sign: (page: Page, at: At) => drawLetter(page, at, 'A', 'warning', type) }]
      : []),
    { text: say.flow, sign: drawArrow },
    { text: say.centre, sign: drawCentreSign },
    ...(along
      ? [
          { text: say.toward, sign: (page: Page, at: At) => drawRiser(page, at, true) },
          { text: say.away, sign: (page: Page, at: At) => drawRiser(page, at, false) },
        ]
      : []),
  ];
}

function drawArrow(page: Page, { x, y }: At): void {
  const corners = [
    { x: x + 2, y },
    { x: x - 2, y: y - 1.3 },
    { x: x - 1, y },
    { x: x - 2, y: y + 1.3 },
  ];
  drawPolygon(page, { fill: inks.paper, line: pen('edge') }, ...corners);
}

function drawCentreSign(page: Page, { x, y }: At): void {
  const line = pen('edge', inks.muted, [2.6, 0.8, 0.5, 0.8]);
  drawLine(page, { line }, { x: x - 4, y }, { x: x + 4, y });
}

/** A riser as the sheets draw it: half of it inked where the air comes at the viewer, crossed where it goes away. */
function drawRiser(page: Page, at: At, toward: boolean): void {
  const radius = 1.7;
  const corner = radius * Math.SQRT1_2;
  drawCircle(page, at, radius, { fill: inks.wash, line: pen('edge') });
  if (toward)
    page.draw({ fill: inks.ink }, (path) => {
      path.arc(at, radius, Math.PI / 4, (5 * Math.PI) / 4);
      path.close();
    });
  for (const side of toward ? [-1] : [-1, 1])
    drawLine(
      page,
      { line: pen('fine') },
      { x: at.x - corner, y: at.y - side * corner },
      { x: at.x + corner, y: at.y + side * corner },
    );
}

function drawNorth(page: Page, at: At, type: Type): void {
  drawCircle(page, at, 3, { line: pen('fine') });
  drawPolygon(
    page,
    { fill: inks.ink },
    { x: at.x, y: at.y - 3 },
    { x: at.x - 1.1, y: at.y + 1.6 },
    { x: at.x, y: at.y + 0.8 },
    { x: at.x + 1.1, y: at.y + 1.6 },
  );
  const set = style(type, sizes.small, 'semibold', inks.ink, true);
  page.text({ x: at.x, y: at.y + 3 + sizes.small * POINT }, words.paper.drawing.north, set, 'middle');
}
