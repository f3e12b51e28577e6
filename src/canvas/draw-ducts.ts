import type { ScreenPoint } from '../graph/sheet.ts';
import { textOn } from './colour.ts';
import { inkOnFill } from './draw-labels.ts';
import { type Box, boxAt } from './label-place.ts';
import type { SheetLeg } from './outline.ts';
import type { Palette } from './palette.ts';
import { fillAll, type Pen, strokeAll } from './pen.ts';
import type { Drawable, Stroke } from './stroke.ts';
import { type Bounds, overlaps, type Size, toScreen, type Viewport, visibleBounds } from './viewport.ts';

export interface DuctPaint {
  readonly palette: Palette;
  /** Fill by segment id; absent where there is no number. */
  readonly colours: ReadonlyMap<string, string>;
  /** How strongly each thing is drawn, 0-1; all of it fully where absent. */
  readonly strength?: (item: Drawable) => number;
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
  const byId = new Map(legs.map((leg) => [leg.segment.id, leg]));
  for (const item of visible) {
    drawOne(pen, item, paint, view);
    const leg = item.kind === 'leg' ? byId.get(item.id) : undefined;
    if (leg) drawFlow(pen, leg, paint.palette, view);
  }
  return visible.length;
}

/** Draws one thing: fill, finer lines, centre line, walls. */
export function drawOne(
  pen: Pen,
  item: Drawable,
  { palette, colours, strength }: DuctPaint,
  view: Viewport,
): void {
  const whole = strength?.(item) ?? 1;
  pen.globalAlpha = whole;
  const colour = item.colourOf === null ? undefined : colours.get(item.colourOf);
  const inside = colour ? inkOnFill[textOn(colour)] : palette.wall;
  pen.fillStyle = colour ?? (item.colourOf === null ? palette.sheet : palette.unsolved);
  fillAll(pen, item.fill, view);
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  pen.strokeStyle = inside;
  pen.globalAlpha = 0.6 * whole;
  pen.lineWidth = 1;
  const spread =
    Math.max(item.bounds.maxU - item.bounds.minU, item.bounds.maxV - item.bounds.minV) * view.scale;
  if (spread >= leastForFine) strokeAll(pen, item.fine, view);
  drawCentre(pen, item.centre, view);
  pen.globalAlpha = whole;
  pen.fillStyle = inside;
  fillAll(pen, item.solid, view);
  pen.strokeStyle = palette.wall;
  pen.lineWidth = item.kind === 'leg' || item.kind === 'bend' ? 1.5 : 1.25;
  strokeAll(pen, item.walls, view);
  pen.globalAlpha = 1;
}

/** Centre lines: a long and a short dash. */
function drawCentre(pen: Pen, centre: readonly Stroke[], view: Viewport): void {
  if (centre.length === 0) return;
  pen.setLineDash([10, 3, 2, 3]);
  strokeAll(pen, centre, view);
  pen.setLineDash([]);
}

interface Arrow {
  readonly tip: ScreenPoint;
  readonly along: ScreenPoint;
  /** Half its length, px. */
  readonly head: number;
  readonly box: Box;
}

/** The arrowhead of a leg, near the start of its straight duct; null where it would crowd the leg. */
export function arrowOf(leg: SheetLeg, view: Viewport): Arrow | null {
  if (leg.endOn) return null;
  const from = toScreen(leg.straightFrom, view);
  const to = toScreen(leg.straightTo, view);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const width = leg.half * 2 * view.scale;
  if (length < 36 || width < 6) return null;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const head = Math.min(9, Math.max(4, width * 0.28));
  const at = { x: from.x + along.x * length * 0.22, y: from.y + along.y * length * 0.22 };
  const tip = { x: at.x + along.x * head, y: at.y + along.y * head };
  return { tip, along, head, box: boxAt(at, head * 2 + 4, head * 2 + 4) };
}

function drawFlow(pen: Pen, leg: SheetLeg, palette: Palette, view: Viewport): void {
  const arrow = arrowOf(leg, view);
  if (!arrow) return;
  const { tip, along, head } = arrow;
  const point = (back: number, side: number) => ({
    x: tip.x - along.x * back * head - along.y * side * head,
    y: tip.y - along.y * back * head + along.x * side * head,
  });
  pen.beginPath();
  pen.moveTo(tip.x, tip.y);
  for (const { x, y } of [point(2, 0.62), point(1.5, 0), point(2, -0.62)]) pen.lineTo(x, y);
  pen.closePath();
  pen.fillStyle = palette.sheet;
  pen.strokeStyle = palette.wall;
  pen.lineWidth = 1;
  pen.fill();
  pen.stroke();
}
