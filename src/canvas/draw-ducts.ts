import type { SheetPoint } from '../graph/sheet.ts';
import type { SheetLeg } from './outline.ts';
import type { Palette } from './palette.ts';
import { fillAll, type Pen, strokeAll } from './pen.ts';
import type { Drawable, Stroke } from './stroke.ts';
import { type Bounds, overlaps, type Size, toScreen, type Viewport, visibleBounds } from './viewport.ts';

export interface DuctPaint {
  readonly palette: Palette;
  /** Fill by segment id; absent where there is no number. */
  readonly colours: ReadonlyMap<string, string>;
}

/** Below this size on the screen, px, the finer lines inside duct are left out. */
const leastForFine = 7;

/** What of a list is in view, in its order. */
export function inView<T extends { readonly bounds: Bounds }>(
  items: readonly T[],
  view: Viewport,
  size: Size,
): T[] {
  const visible = visibleBounds(view, size, 2);
  return items.filter((item) => overlaps(item.bounds, visible));
}

/** Draws what is in view, from the farthest to the nearest, and says how many things that were. */
export function drawDucts(
  pen: Pen,
  drawables: readonly Drawable[],
  legs: readonly SheetLeg[],
  paint: DuctPaint,
  view: Viewport,
  size: Size,
): number {
  const visible = inView(drawables, view, size);
  for (const item of visible) drawOne(pen, item, paint, view);
  for (const leg of legs) if (!leg.endOn) drawFlow(pen, leg, paint, view, size);
  return visible.length;
}

function drawOne(pen: Pen, item: Drawable, { palette, colours }: DuctPaint, view: Viewport): void {
  const colour = item.colourOf === null ? palette.sheet : (colours.get(item.colourOf) ?? palette.unsolved);
  pen.fillStyle = colour;
  fillAll(pen, item.fill, view);
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  pen.strokeStyle = palette.fine;
  pen.lineWidth = 1;
  const spread =
    Math.max(item.bounds.maxU - item.bounds.minU, item.bounds.maxV - item.bounds.minV) * view.scale;
  if (spread >= leastForFine) strokeAll(pen, item.fine, view);
  if (item.solid.length > 0) {
    pen.fillStyle = palette.wall;
    fillAll(pen, item.solid, view);
  }
  drawCentre(pen, item.centre, palette, view);
  pen.strokeStyle = palette.wall;
  pen.lineWidth = item.kind === 'leg' || item.kind === 'bend' ? 1.5 : 1.25;
  strokeAll(pen, item.walls, view);
}

/** Centre lines: a long and a short dash, dark with a light edge so that they read on every fill. */
function drawCentre(pen: Pen, centre: readonly Stroke[], palette: Palette, view: Viewport): void {
  if (centre.length === 0) return;
  pen.setLineDash([10, 3, 2, 3]);
  pen.strokeStyle = palette.fine;
  pen.lineWidth = 1;
  strokeAll(pen, centre, view);
  pen.setLineDash([]);
}

/** An arrowhead where the air goes, at a third of the leg; on a short leg none. */
function drawFlow(pen: Pen, leg: SheetLeg, paint: DuctPaint, view: Viewport, size: Size): void {
  const from = toScreen(leg.from, view);
  const to = toScreen(leg.to, view);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const width = leg.half * 2 * view.scale;
  if (length < 48 || width < 6) return;
  const e = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const head = Math.min(9, Math.max(5, width * 0.3));
  const at = arrowAt(leg.from, leg.to, view);
  if (at.x < -20 || at.y < -20 || at.x > size.width + 20 || at.y > size.height + 20) return;
  pen.beginPath();
  pen.moveTo(at.x + e.x * head, at.y + e.y * head);
  pen.lineTo(at.x - e.x * head - e.y * head * 0.62, at.y - e.y * head + e.x * head * 0.62);
  pen.lineTo(at.x - e.x * head * 0.5, at.y - e.y * head * 0.5);
  pen.lineTo(at.x - e.x * head + e.y * head * 0.62, at.y - e.y * head - e.x * head * 0.62);
  pen.closePath();
  pen.fillStyle = paint.palette.sheet;
  pen.strokeStyle = paint.palette.wall;
  pen.lineWidth = 1;
  pen.fill();
  pen.stroke();
}

function arrowAt(from: SheetPoint, to: SheetPoint, view: Viewport) {
  return toScreen({ u: from.u + (to.u - from.u) * 0.24, v: from.v + (to.v - from.v) * 0.24 }, view);
}
