import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { formatTrimmed } from '../../../units/index.ts';
import type { At, Line, Page } from '../../pdf/page.ts';
import { type Area, inks, pen, sizes, style, type Type } from './look.ts';
import { drawLine } from './shapes.ts';

/** A chart's field with its two axes, ready to be drawn in. */
export interface ChartFrame {
  readonly field: Area;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  at(point: readonly [number, number]): At;
}

export interface Axes {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly xTitle: string;
  readonly yTitle: string;
}

/** Draws grid, figures and titles of two axes. */
export function drawAxes(page: Page, area: Area, axes: Axes, type: Type): ChartFrame {
  const set = style(type, sizes.tiny + 0.6, 'regular');
  const title = style(type, sizes.tiny + 0.6, 'regular', inks.muted, true);
  const field = { x: area.x + 12, y: area.y + 5, width: area.width - 16, height: area.height - 15 };
  const x = scaleLinear([...axes.x], [field.x, field.x + field.width]);
  const y = scaleLinear([...axes.y], [field.y + field.height, field.y]).nice(5);
  const [right, foot] = [field.x + field.width, field.y + field.height];
  const light = { line: pen('fine', inks.faint) };
  for (const tick of y.ticks(5)) {
    drawLine(page, light, { x: field.x, y: y(tick) }, { x: right, y: y(tick) });
    page.text({ x: field.x - 1.4, y: y(tick) + 0.8 }, figureOf(tick, y.ticks(5)), set, 'right');
  }
  for (const tick of x.ticks(8)) {
    drawLine(page, light, { x: x(tick), y: field.y }, { x: x(tick), y: foot });
    page.text({ x: x(tick), y: foot + 3.2 }, figureOf(tick, x.ticks(8)), set, 'middle');
  }
  drawLine(
    page,
    { line: pen('edge') },
    { x: field.x, y: field.y },
    { x: field.x, y: foot },
    { x: right, y: foot },
  );
  page.text({ x: area.x, y: area.y + 2.4 }, axes.yTitle, title);
  page.text({ x: right, y: foot + 7 }, axes.xTitle, title, 'right');
  return { field, x, y, at: ([u, v]) => ({ x: x(u), y: y(v) }) };
}

/** A tick with as many decimals as the finest of its axis. */
function figureOf(tick: number, ticks: readonly number[]): string {
  const [a = 0, b = 1] = ticks;
  return formatTrimmed(tick, Math.max(0, Math.ceil(-Math.log10(Math.abs(b - a) || 1) + 0.3)));
}

/** Draws a line through points of a chart, cut at the edges of its field. */
export function drawCurve(
  page: Page,
  frame: ChartFrame,
  points: readonly (readonly [number, number])[],
  line: Line,
): void {
  const { x, y, width, height } = frame.field;
  page.within(
    (path) => path.rect(x, y - 0.5, width + 0.5, height + 1),
    () => drawLine(page, { line }, ...points.map(frame.at)),
  );
}
