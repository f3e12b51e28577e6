import { type Box, boxAt } from '../../../drawing/label-place.ts';
import {
  channelsOf,
  cssOf,
  type DimensionMark,
  dimensionLines,
  dimensionPens,
  type Mark,
  type Paint,
  type Pen,
  PX,
  type SheetDrawing,
  type TextMark,
} from '../../../drawing/marks.ts';
import { MIN_TEXT, palettes } from '../../../drawing/palette.ts';
import type { Stroke } from '../../../drawing/stroke.ts';
import type { SheetPoint } from '../../../graph/sheet.ts';
import { POINT } from '../../pdf/font.ts';
import type { At, Look, Page, Path } from '../../pdf/page.ts';
import type { Area, Type } from './look.ts';
import { drawRect } from './shapes.ts';

/** How a drawing lies on a page. */
export interface Lie {
  readonly area: Area;
  /** n of 1 : n. */
  readonly scale: number;
  /** A place of the sheet, m, on the page, mm. */
  place(point: SheetPoint): At;
}

/** A drawing at 1 : `scale` with a point of its sheet in the middle of an area. */
export function lieOf(area: Area, scale: number, middle: SheetPoint): Lie {
  const [x, y] = [area.x + area.width / 2, area.y + area.height / 2];
  const mm = 1000 / scale;
  return {
    area,
    scale,
    place: ({ u, v }) => ({ x: x + (u - middle.u) * mm, y: y - (v - middle.v) * mm }),
  };
}

/** Width of a label's text in CSS px of paper, as the labels' placing asks for it. */
export const labelMeasure = (type: Type) => (text: string) =>
  type.regular.width(text, (MIN_TEXT * PX) / POINT, true) / PX;

/**
 * Draws a sheet's marks, the room's behind the duct's. The edges of the area cut lines. Texts that they would cut are
 * left out, but for the names of levels, which come in from the edge where there is room for them.
 */
export function drawMarks(page: Page, drawing: SheetDrawing, lie: Lie, type: Type): void {
  const { area } = lie;
  const taken = drawing.layers.flatMap(({ marks }) => marks.flatMap((mark) => textBoxes(mark, lie)));
  page.within(
    (path) => path.rect(area.x, area.y, area.width, area.height),
    () => {
      for (const { id, marks } of drawing.layers)
        for (const mark of marks) {
          const pale = drawing.sheet === 'isometric' && (id === 'exits' || id === 'blocks');
          if (mark.kind !== 'text') drawMark(page, pale ? paler(mark) : mark, lie, type);
          else {
            const at = lie.place(mark.at);
            if (isWithin(textBox(mark, at), area)) drawText(page, mark, at, type);
            else if (id === 'room') drawAtEdge(page, mark, at, taken, area, type);
          }
        }
    },
  );
}

/** Texts are kept this far from the edge of the paper's area, mm. */
const inset = 1.5;

/** The box of a text, mm. */
function textBox({ align, width, height, size }: TextMark, at: At): Box {
  const shift = align === 'left' ? width / 2 : align === 'right' ? -width / 2 : 0;
  return boxAt({ x: at.x + shift, y: at.y }, width, Math.max(height, size));
}

/** Where a mark's text stands on the page, mm. */
export function textBoxes(mark: Mark, { place }: Lie): Box[] {
  const text = mark.kind === 'dimension' ? mark.text : mark;
  return text.kind === 'text' ? [textBox(text, place(text.at))] : [];
}

function isWithin({ minX, minY, maxX, maxY }: Box, { x, y, width, height }: Area): boolean {
  return minX >= x + inset && maxX <= x + width - inset && minY >= y + inset && maxY <= y + height - inset;
}

/** A text at the right or left edge of the area, at its height, where nothing else is said. */
function drawAtEdge(page: Page, mark: TextMark, at: At, taken: readonly Box[], area: Area, type: Type): void {
  const edges = [
    { mark: { ...mark, align: 'right' as const }, at: { x: area.x + area.width - 2, y: at.y } },
    { mark: { ...mark, align: 'left' as const }, at: { x: area.x + 2, y: at.y } },
  ];
  const free = edges.find((edge) => {
    const box = textBox(edge.mark, edge.at);
    return isWithin(box, area) && !taken.some((other) => overlap(box, other));
  });
  if (free) drawText(page, free.mark, free.at, type);
}

function overlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** A face of the room that others are seen through: on paper many of them would make a dark heap. */
function paler(mark: Exclude<Mark, TextMark>): Exclude<Mark, TextMark> {
  return mark.kind === 'fill' ? { ...mark, opacity: 0.35 } : mark;
}

function drawMark(page: Page, mark: Exclude<Mark, TextMark>, lie: Lie, type: Type): void {
  switch (mark.kind) {
    case 'fill':
      page.draw(painted(mark.paint, mark.opacity), (path) => {
        mark.outline.forEach((stroke, i) => {
          layStroke(path, stroke, lie, i > 0);
        });
        path.close();
      });
      return;
    case 'line':
      drawStrokes(page, mark.strokes, mark.pen, lie);
      return;
    case 'dimension':
      drawDimension(page, mark, lie, type);
  }
}

function drawStrokes(page: Page, strokes: readonly Stroke[], pen: Pen, lie: Lie): void {
  const { fill, opacity } = painted(pen.paint, pen.opacity);
  const line = { width: pen.width, colour: fill, cap: 'round', ...(pen.dash && { dash: pen.dash }) } as const;
  page.draw({ line: pen.dash ? { ...line, cap: 'butt' } : line, opacity }, (path) => {
    for (const stroke of strokes) layStroke(path, stroke, lie);
  });
}

function layStroke(path: Path, stroke: Stroke, lie: Lie, joined = false): void {
  if (stroke.kind === 'arc') {
    const radius = (stroke.radius * 1000) / lie.scale;
    path.arc(lie.place(stroke.centre), radius, stroke.start, stroke.end, joined);
    return;
  }
  stroke.points.forEach((point, i) => {
    if (i === 0 && !joined) path.move(lie.place(point));
    else path.line(lie.place(point));
  });
  if (stroke.closed) path.close();
}

/** A line of text about its middle; a rim round its letters becomes a plate just behind them. */
function drawText(page: Page, mark: TextMark, at: At, type: Type): void {
  const size = mark.size / POINT;
  const font = mark.weight === 600 ? type.semibold : type.regular;
  const width = font.width(mark.text, size, true);
  if (mark.behind) {
    const wide = mark.behind.as === 'plate' ? Math.max(mark.width, width) : width + 1;
    const high = mark.behind.as === 'plate' ? mark.height : mark.size * 1.05;
    drawRect(
      page,
      { x: at.x - wide / 2, y: at.y - high / 2, width: wide, height: high },
      painted(mark.behind.paint),
    );
  }
  const align = mark.align === 'centre' ? 'middle' : mark.align;
  const style = { font, size, colour: painted(mark.paint).fill, tabular: true };
  page.text({ x: at.x, y: at.y + mark.size * 0.36 }, mark.text, style, align);
}

function drawDimension(page: Page, mark: DimensionMark, lie: Lie, type: Type): void {
  const { thin, slashes } = dimensionLines(mark, lie.scale);
  drawStrokes(page, thin, dimensionPens.thin, lie);
  drawStrokes(page, slashes, dimensionPens.slashes, lie);
  drawText(page, mark.text, lie.place(mark.text.at), type);
}

/** A paint of the print palette as a fill. */
function painted(paint: Paint, opacity = 1): Required<Pick<Look, 'fill' | 'opacity'>> {
  const { red, green, blue, opacity: own } = channelsOf(cssOf(paint, palettes.print));
  return { fill: { r: red / 255, g: green / 255, b: blue / 255 }, opacity: own * opacity };
}
