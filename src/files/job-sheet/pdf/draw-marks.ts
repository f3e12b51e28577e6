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

/** Draws a sheet's marks, the room's behind the duct's. The edges of the area cut lines, and leave out texts that they would cut. */
export function drawMarks(page: Page, drawing: SheetDrawing, lie: Lie, type: Type): void {
  page.within(
    (path) => path.rect(lie.area.x, lie.area.y, lie.area.width, lie.area.height),
    () => {
      for (const { id, marks } of drawing.layers)
        for (const mark of marks) {
          if (mark.kind === 'text' && !isWithin(mark, lie)) continue;
          const pale = drawing.sheet === 'isometric' && (id === 'exits' || id === 'blocks');
          drawMark(page, pale ? paler(mark) : mark, lie, type);
        }
    },
  );
}

/** True for a text that the edge of the area does not cut. */
function isWithin({ at, align, width, height }: TextMark, { area, place }: Lie): boolean {
  const { x, y } = place(at);
  const left = align === 'left' ? x : align === 'right' ? x - width : x - width / 2;
  return (
    left >= area.x &&
    left + width <= area.x + area.width &&
    y - height / 2 >= area.y &&
    y + height / 2 <= area.y + area.height
  );
}

/** A face of the room that others are seen through: on paper many of them would make a dark heap. */
function paler(mark: Mark): Mark {
  return mark.kind === 'fill' ? { ...mark, opacity: 0.35 } : mark;
}

function drawMark(page: Page, mark: Mark, lie: Lie, type: Type): void {
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
    case 'text':
      drawText(page, mark, lie, type);
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
function drawText(page: Page, mark: TextMark, lie: Lie, type: Type): void {
  const at = lie.place(mark.at);
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
  drawText(page, mark.text, lie, type);
}

/** A paint of the print palette as a fill. */
function painted(paint: Paint, opacity = 1): Required<Pick<Look, 'fill' | 'opacity'>> {
  const { red, green, blue, opacity: own } = channelsOf(cssOf(paint, palettes.print));
  return { fill: { r: red / 255, g: green / 255, b: blue / 255 }, opacity: own * opacity };
}
