import type { ScreenPoint, SheetPoint } from '../graph/sheet.ts';

/** How a sheet lies in its element. The sheet's origin falls on (`panX`, `panY`). */
export interface Viewport {
  /** Pixels a metre. */
  readonly scale: number;
  /** CSS pixels. */
  readonly panX: number;
  readonly panY: number;
}

/** CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A rectangle on a sheet, m. */
export interface Bounds {
  readonly minU: number;
  readonly minV: number;
  readonly maxU: number;
  readonly maxV: number;
}

export const MIN_SCALE = 4;
export const MAX_SCALE = 4000;

/** Metres to pixels; up on the sheet is up on the screen. */
export function toScreen(point: SheetPoint, view: Viewport): ScreenPoint {
  return { x: point.u * view.scale + view.panX, y: view.panY - point.v * view.scale };
}

/** Pixels to metres; the inverse of `toScreen`. */
export function toSheet(point: ScreenPoint, view: Viewport): SheetPoint {
  return { u: (point.x - view.panX) / view.scale, v: (view.panY - point.y) / view.scale };
}

/** Zooms by `factor` and keeps the point under the pointer where it is. The scale stays within its limits. */
export function zoomAt(view: Viewport, pointer: ScreenPoint, factor: number): Viewport {
  const scale = clampScale(view.scale * factor);
  const ratio = scale / view.scale;
  return {
    scale,
    panX: pointer.x - (pointer.x - view.panX) * ratio,
    panY: pointer.y - (pointer.y - view.panY) * ratio,
  };
}

/** Moves the sheet by a distance in pixels. */
export function panBy(view: Viewport, dx: number, dy: number): Viewport {
  return { scale: view.scale, panX: view.panX + dx, panY: view.panY + dy };
}

/**
 * The view that shows `bounds` centred, as large as `size` allows with `margin` pixels free on every side, or `x` of
 * them at the left and right and `y` above and below.
 */
export function fit(
  bounds: Bounds,
  size: Size,
  margin: number | { readonly x: number; readonly y: number },
): Viewport {
  const { x, y } = typeof margin === 'number' ? { x: margin, y: margin } : margin;
  const width = Math.max(bounds.maxU - bounds.minU, 1e-3);
  const height = Math.max(bounds.maxV - bounds.minV, 1e-3);
  const free = { x: Math.max(size.width - 2 * x, 1), y: Math.max(size.height - 2 * y, 1) };
  const scale = clampScale(Math.min(free.x / width, free.y / height));
  return {
    scale,
    panX: size.width / 2 - ((bounds.minU + bounds.maxU) / 2) * scale,
    panY: size.height / 2 + ((bounds.minV + bounds.maxV) / 2) * scale,
  };
}

/** What of the sheet is in view, m, widened by `margin` pixels. */
export function visibleBounds(view: Viewport, size: Size, margin = 0): Bounds {
  const lowerLeft = toSheet({ x: -margin, y: size.height + margin }, view);
  const upperRight = toSheet({ x: size.width + margin, y: -margin }, view);
  return { minU: lowerLeft.u, minV: lowerLeft.v, maxU: upperRight.u, maxV: upperRight.v };
}

/** True where two rectangles touch or overlap. */
export function overlaps(a: Bounds, b: Bounds): boolean {
  return a.minU <= b.maxU && b.minU <= a.maxU && a.minV <= b.maxV && b.minV <= a.maxV;
}

/** The smallest rectangle around points, widened by `margin` metres; null for no point. */
export function boundsOf(points: Iterable<SheetPoint>, margin = 0): Bounds | null {
  let minU = Number.POSITIVE_INFINITY;
  let minV = Number.POSITIVE_INFINITY;
  let maxU = Number.NEGATIVE_INFINITY;
  let maxV = Number.NEGATIVE_INFINITY;
  for (const { u, v } of points) {
    minU = Math.min(minU, u);
    minV = Math.min(minV, v);
    maxU = Math.max(maxU, u);
    maxV = Math.max(maxV, v);
  }
  if (minU > maxU) return null;
  return { minU: minU - margin, minV: minV - margin, maxU: maxU + margin, maxV: maxV + margin };
}

function clampScale(scale: number): number {
  return Math.min(MAX_SCALE, Math.max(MIN_SCALE, scale));
}
