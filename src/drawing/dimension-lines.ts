import type { Dimension, DimensionEnd, Job, Scheme, Vec3 } from '../graph/document.ts';
import { placeInBox } from '../graph/edits/index.ts';
import { project, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import { distance } from '../graph/vector.ts';

/** A dimension as its sheet shows it: its ends, the ends of its line, m on the sheet, and what it measures, m. */
export interface DimensionShape {
  readonly ends: readonly [SheetPoint, SheetPoint];
  readonly line: readonly [SheetPoint, SheetPoint];
  readonly value: number;
}

type Place = Pick<Dimension, 'along' | 'offset'>;

type Room = Pick<Job, 'blocks' | 'exits'>;

/** Where an end of a dimension is; `null` where what it follows is gone. */
export function placeOfEnd(end: DimensionEnd, scheme: Scheme, room: Room): Vec3 | null {
  if ('at' in end) return end.at;
  if ('node' in end) return scheme.nodes.find(({ id }) => id === end.node)?.at ?? null;
  const box = [...room.blocks, ...room.exits].find(({ id }) => id === end.box);
  return box ? placeInBox(box, end.part) : null;
}

/** How a dimension stands on its sheet; `null` where an end of it is gone. */
export function dimensionShape(
  dimension: Omit<Dimension, 'id'>,
  scheme: Scheme,
  room: Room,
): DimensionShape | null {
  const [from, to] = [placeOfEnd(dimension.from, scheme, room), placeOfEnd(dimension.to, scheme, room)];
  return from && to && shapeBetween(from, to, dimension, dimension.sheet);
}

/**
 * The line of a dimension between two places: `offset` metres from the first of them, upwards for one
 * that measures along `u`, to the right for `v`, to the left of the way from one to the other for a
 * straight one, which measures the true distance in space.
 */
export function shapeBetween(from: Vec3, to: Vec3, { along, offset }: Place, sheet: SheetId): DimensionShape {
  const [a, b] = [project(from, sheet), project(to, sheet)];
  if (along === 'u') {
    const v = a.v + offset;
    return {
      ends: [a, b],
      line: [
        { u: a.u, v },
        { u: b.u, v },
      ],
      value: Math.abs(b.u - a.u),
    };
  }
  if (along === 'v') {
    const u = a.u + offset;
    return {
      ends: [a, b],
      line: [
        { u, v: a.v },
        { u, v: b.v },
      ],
      value: Math.abs(b.v - a.v),
    };
  }
  const normal = leftOf(a, b);
  const off = (p: SheetPoint) => ({ u: p.u + normal.u * offset, v: p.v + normal.v * offset });
  return { ends: [a, b], line: [off(a), off(b)], value: distance(from, to) };
}

/**
 * What a dimension measures and how far off it stands when its line is pulled to a point: straight near
 * the middle of a slanted pair, else along the side of the sheet that it is pulled away from.
 */
export function pulledTo(a: SheetPoint, b: SheetPoint, pull: SheetPoint): Place {
  const normal = leftOf(a, b);
  const straight = (pull.u - a.u) * normal.u + (pull.v - a.v) * normal.v;
  const level = Math.abs(a.v - b.v) < 1e-6;
  const upright = Math.abs(a.u - b.u) < 1e-6;
  if (level) return { along: 'u', offset: pull.v - a.v };
  if (upright) return { along: 'v', offset: pull.u - a.u };
  const outU = Math.max(0, Math.min(a.u, b.u) - pull.u, pull.u - Math.max(a.u, b.u));
  const outV = Math.max(0, Math.min(a.v, b.v) - pull.v, pull.v - Math.max(a.v, b.v));
  if (outU === 0 && outV === 0) return { along: 'straight', offset: straight };
  return outV >= outU ? { along: 'u', offset: pull.v - a.v } : { along: 'v', offset: pull.u - a.u };
}

/** How far a dimension's line stands off when it is pulled to a point and measures what it did. */
export function offsetTo(a: SheetPoint, b: SheetPoint, along: Dimension['along'], pull: SheetPoint): number {
  if (along === 'u') return pull.v - a.v;
  if (along === 'v') return pull.u - a.u;
  const normal = leftOf(a, b);
  return (pull.u - a.u) * normal.u + (pull.v - a.v) * normal.v;
}

function leftOf(a: SheetPoint, b: SheetPoint): SheetPoint {
  const length = Math.hypot(b.u - a.u, b.v - a.v);
  return length > 0 ? { u: -(b.v - a.v) / length, v: (b.u - a.u) / length } : { u: 0, v: 1 };
}
