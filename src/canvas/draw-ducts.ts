import { inkOnFill, textOn } from '../drawing/colour.ts';
import { detailOf, leastLine } from '../drawing/detail.ts';
import { arrowOf } from '../drawing/flow-arrow.ts';
import type { Outline, SheetLeg } from '../drawing/outline.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Drawable, Stroke } from '../drawing/stroke.ts';
import { overlaps, type Size, type Viewport, visibleBounds } from '../drawing/viewport.ts';
import { fillAll, type Pen, strokeAll } from './pen.ts';

export interface DuctPaint {
  readonly palette: Palette;
  /** Fill by segment id; absent where there is no number. */
  readonly colours: ReadonlyMap<string, string>;
  /** How strongly each thing is drawn, 0-1; all of it fully where absent. */
  readonly strength?: (item: Pick<Drawable, 'of' | 'id'>) => number;
}

/** Below this size on the screen, px, the finer lines inside duct are left out. */
const leastForFine = 7;

interface Seen {
  readonly view: Viewport;
  readonly width: number;
  readonly height: number;
  readonly items: readonly Drawable[];
}

/** What was in view when it was asked for last: the layers of a sheet ask one after another. */
const lastSeen = new WeakMap<readonly Drawable[], Seen>();

/** What of a list is in view, in its order. */
export function inView(
  items: readonly Drawable[],
  view: Viewport,
  { width, height }: Size,
): readonly Drawable[] {
  const last = lastSeen.get(items);
  if (last && last.view === view && last.width === width && last.height === height) return last.items;
  const visible = visibleBounds(view, { width, height }, 2);
  const shown = items.filter((item) => overlaps(item.bounds, visible));
  lastSeen.set(items, { view, width, height, items: shown });
  return shown;
}

/**
 * Draws what is in view, from the farthest to the nearest, as much of it as the zoom has room for, and
 * says how many things that were.
 */
export function drawDucts(
  pen: Pen,
  { drawables, legs, byId }: Outline,
  paint: DuctPaint,
  view: Viewport,
  size: Size,
): number {
  const detail = detailOf(legs, view);
  if (detail === 'line') return drawLines(pen, legs, paint, view, size);
  const visible = inView(drawables, view, size);
  if (detail === 'walls') drawWalls(pen, visible, paint, view);
  else
    for (const item of visible) {
      drawOne(pen, item, paint, view);
      const leg = item.kind === 'leg' ? byId.get(item.id) : undefined;
      if (leg) drawFlow(pen, leg, paint.palette, view);
    }
  return visible.length;
}

/** Every fill, then all walls of one strength as one path. */
function drawWalls(pen: Pen, items: readonly Drawable[], paint: DuctPaint, view: Viewport): void {
  const strengthOf = paint.strength ?? (() => 1);
  const byStrength = new Map<number, Stroke[]>();
  for (const item of items) {
    const whole = strengthOf(item);
    pen.globalAlpha = whole;
    pen.fillStyle = fillOf(item, paint);
    fillAll(pen, item.fill, view);
    const walls = byStrength.get(whole);
    if (walls) walls.push(...item.walls);
    else byStrength.set(whole, [...item.walls]);
  }
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineCap = 'butt';
  pen.strokeStyle = paint.palette.wall;
  pen.lineWidth = 1;
  for (const [whole, walls] of byStrength) {
    pen.globalAlpha = whole;
    strokeAll(pen, walls, view);
  }
  pen.globalAlpha = 1;
}

/** Legs as single lines, all of a colour and width as one path. */
function drawLines(
  pen: Pen,
  legs: readonly SheetLeg[],
  { palette, colours, strength }: DuctPaint,
  view: Viewport,
  size: Size,
): number {
  const visible = visibleBounds(view, size, 4);
  const paths = new Map<string, SheetLeg[]>();
  let count = 0;
  for (const leg of legs) {
    const { from, to } = leg;
    if (Math.max(from.u, to.u) < visible.minU || Math.min(from.u, to.u) > visible.maxU) continue;
    if (Math.max(from.v, to.v) < visible.minV || Math.min(from.v, to.v) > visible.maxV) continue;
    count += 1;
    const { id } = leg.segment;
    const width = Math.max(leastLine, Math.round(leg.half * 4 * view.scale) / 2);
    const whole = strength?.({ of: 'segment', id }) ?? 1;
    const key = `${width} ${whole} ${colours.get(id) ?? palette.muted}`;
    const path = paths.get(key);
    if (path) path.push(leg);
    else paths.set(key, [leg]);
  }
  pen.setLineDash([]);
  pen.lineCap = 'round';
  for (const [key, path] of paths) {
    const [width, whole, ...colour] = key.split(' ');
    pen.lineWidth = Number(width);
    pen.globalAlpha = Number(whole);
    pen.strokeStyle = colour.join(' ');
    pen.beginPath();
    for (const { from, to } of path) {
      pen.moveTo(from.u * view.scale + view.panX, view.panY - from.v * view.scale);
      pen.lineTo(to.u * view.scale + view.panX, view.panY - to.v * view.scale);
    }
    pen.stroke();
  }
  pen.globalAlpha = 1;
  pen.lineCap = 'butt';
  return count;
}

function fillOf({ colourOf }: Drawable, { palette, colours }: DuctPaint): string {
  if (colourOf === null) return palette.sheet;
  return colours.get(colourOf) ?? palette.unsolved;
}

/** Draws one thing: fill, finer lines, centre line, walls. */
export function drawOne(pen: Pen, item: Drawable, paint: DuctPaint, view: Viewport): void {
  const { palette, colours, strength } = paint;
  const whole = strength?.(item) ?? 1;
  pen.globalAlpha = whole;
  const colour = item.colourOf === null ? undefined : colours.get(item.colourOf);
  const inside = colour ? inkOnFill[textOn(colour)] : palette.wall;
  pen.fillStyle = fillOf(item, paint);
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

function drawFlow(pen: Pen, leg: SheetLeg, palette: Palette, view: Viewport): void {
  const arrow = arrowOf(leg, view);
  if (!arrow) return;
  pen.beginPath();
  arrow.corners.forEach(({ x, y }, i) => {
    if (i === 0) pen.moveTo(x, y);
    else pen.lineTo(x, y);
  });
  pen.closePath();
  pen.fillStyle = palette.sheet;
  pen.strokeStyle = palette.wall;
  pen.lineWidth = 1;
  pen.fill();
  pen.stroke();
}
