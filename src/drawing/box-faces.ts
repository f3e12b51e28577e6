import type { Block } from '../graph/document.ts';
import { depthOf, project, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import type { Bounds } from './viewport.ts';

export type Box3 = Pick<Block, 'min' | 'max'>;

/** A box of space as a sheet shows it, m. */
export function boundsOn(box: Box3, sheet: SheetId): Bounds {
  const [a, b] = [project(box.min, sheet), project(box.max, sheet)];
  return {
    minU: Math.min(a.u, b.u),
    minV: Math.min(a.v, b.v),
    maxU: Math.max(a.u, b.u),
    maxV: Math.max(a.v, b.v),
  };
}

/** True where a sheet looks at a box along its shortest side: at the face of a wall, down on a roof. */
export function isFaceOn(box: Box3, sheet: SheetId): boolean {
  const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
  const depth = Math.abs(depthOf(box.max, sheet) - depthOf(box.min, sheet));
  return depth < Math.min(maxU - minU, maxV - minV);
}

/** A place on the edge of a box that it is resized by; -1, 0 and 1 say which sides it moves. */
export interface Grip {
  readonly at: SheetPoint;
  readonly u: -1 | 0 | 1;
  readonly v: -1 | 0 | 1;
}

const sides = [-1, 0, 1] as const;

/** The eight grips of a box on a sheet, corners first. */
export function gripsOf(box: Box3, sheet: SheetId): Grip[] {
  const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
  const place = (low: number, high: number, side: -1 | 0 | 1) => low + ((high - low) * (side + 1)) / 2;
  return sides
    .flatMap((u) =>
      sides.map((v): Grip => ({ u, v, at: { u: place(minU, maxU, u), v: place(minV, maxV, v) } })),
    )
    .filter(({ u, v }) => u !== 0 || v !== 0)
    .sort((a, b) => Math.abs(b.u) + Math.abs(b.v) - Math.abs(a.u) - Math.abs(a.v));
}
