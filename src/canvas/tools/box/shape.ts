import type { Job, Vec3 } from '../../../graph/document.ts';
import { type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import type { BoxKind } from './kinds.ts';
import { USUAL_DEPTH } from './kinds.ts';

export interface BoxAsk {
  readonly kind: BoxKind;
  readonly job: Job;
  readonly sheet: SheetId;
  readonly from: SheetPoint;
  /** Where the pointer is held to. */
  readonly to: SheetPoint;
  /** Typed sizes across, up and along the line of sight, m; `null` where not typed. */
  readonly typed: readonly [number | null, number | null, number | null];
  /** Middle of the box along the line of sight of a section, m. */
  readonly depth: number;
}

/** Thinner than this, m, a box is drawn as a line. */
const LINE = 0.005;

/**
 * The box between two points of a sheet: typed sizes count from the first point towards the pointer. What
 * is drawn as a line has the usual thickness of its kind; the third size is the usual one until it is
 * typed. `null` where there is no room in it.
 */
export function boxFrom({ kind, job, sheet, from, to, typed, depth }: BoxAsk): readonly [Vec3, Vec3] | null {
  const span = (drawn: number, size: number | null) => {
    if (size !== null) return drawn < 0 ? -size : size;
    return Math.abs(drawn) < LINE ? 0 : drawn;
  };
  let u = span(to.u - from.u, typed[0]);
  let v = span(to.v - from.v, typed[1]);
  if (u === 0 && v === 0) return null;
  if (u === 0) u = kind.thickness;
  if (v === 0) v = kind.thickness;
  if (u === 0 || v === 0) return null;
  const [near, far] =
    sheet === 'floor' ? levels(kind, job, typed[2]) : around(depth, typed[2] ?? usualDepth(kind));
  const end = { u: from.u + u, v: from.v + v };
  return [unproject(from, sheet, near), unproject(end, sheet, far)];
}

function levels({ heights, fixed }: BoxKind, job: Job, typed: number | null): readonly [number, number] {
  const [bottom, top] = heights(job);
  if (typed === null) return [bottom, top];
  return fixed === 'bottom' ? [bottom, bottom + typed] : [top - typed, top];
}

function around(middle: number, size: number): readonly [number, number] {
  return [middle - size / 2, middle + size / 2];
}

function usualDepth({ what, thickness }: BoxKind): number {
  return what === 'exit' && thickness > 0 ? 4 * USUAL_DEPTH : USUAL_DEPTH;
}
