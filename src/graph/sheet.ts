import type { Vec3 } from './document.ts';

/** A way of looking at the graph: `floor` shows x-y, `section-x` x-z, `section-y` y-z. */
export type SheetId = 'floor' | 'section-x' | 'section-y';

declare const sheetBrand: unique symbol;
declare const screenBrand: unique symbol;

/** Metres on a sheet: `u` to the right, `v` up. */
export interface SheetPoint {
  readonly u: number;
  readonly v: number;
  readonly [sheetBrand]?: never;
}

/** Pixels in a sheet's element: `x` to the right, `y` down. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
  readonly [screenBrand]?: never;
}

const axes = {
  floor: { u: 0, v: 1, depth: 2 },
  'section-x': { u: 0, v: 2, depth: 1 },
  'section-y': { u: 1, v: 2, depth: 0 },
} as const satisfies Record<SheetId, { u: 0 | 1; v: 1 | 2; depth: 0 | 1 | 2 }>;

/** A point in space as the sheet shows it, m. */
export function project(at: Vec3, sheet: SheetId): SheetPoint {
  const a = axes[sheet];
  return { u: at[a.u], v: at[a.v] };
}

/** The coordinate that the sheet does not show, m. */
export function depthOf(at: Vec3, sheet: SheetId): number {
  return at[axes[sheet].depth];
}

/** A point in space from a point on a sheet and the coordinate that it does not show, m. */
export function unproject(point: SheetPoint, sheet: SheetId, depth: number): Vec3 {
  const a = axes[sheet];
  const at: Vec3 = [0, 0, 0];
  at[a.u] = point.u;
  at[a.v] = point.v;
  at[a.depth] = depth;
  return at;
}
