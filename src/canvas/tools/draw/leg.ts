import type { UnitSystem, Vec3 } from '../../../graph/document.ts';
import { depthOf, project, type SheetId, type SheetPoint, unproject } from '../../../graph/sheet.ts';
import { words } from '../../../words/index.ts';
import { type Typing, typedAngle, typedLength } from './typing.ts';

const says = words.tools.draw;

/** Shorter than this, a leg is not drawn, m. */
export const SHORTEST_LEG = 1e-3;

/** The leg in hand, ready to be drawn. */
export interface Leg {
  readonly from: Vec3;
  readonly to: Vec3;
  /** m */
  readonly length: number;
  /** Degrees on the sheet, counter-clockwise from the right, in [0, 360); null for a leg along the line of sight. */
  readonly angle: number | null;
  /** Its length was typed: it may be committed wherever the pointer is. */
  readonly typed: boolean;
}

/** A leg, or why there is none: nothing wrong yet, a text that is no number, or two ends that cannot be joined. */
export type LegResult =
  | { readonly ok: true; readonly leg: Leg }
  | { readonly ok: false; readonly why: string; readonly state: 'waiting' | 'unreadable' | 'refused' };

export interface LegAsk {
  readonly from: Vec3;
  readonly sheet: SheetId;
  /** Where the pointer is held to; null before it has moved. */
  readonly pointer: SheetPoint | null;
  /** Direction to take while the pointer says none: the last leg's. */
  readonly onward: Vec3 | null;
  readonly typing: Typing;
  readonly units: UnitSystem;
}

/**
 * The leg that the pointer and the typed numbers make together. A typed number wins over the pointer;
 * the coordinate that the sheet does not show stays the start's.
 */
export function legOf({ from, sheet, pointer, onward, typing, units }: LegAsk): LegResult {
  const length = typedLength(typing, units);
  const angle = typedAngle(typing);
  if (length.kind === 'bad') return unreadable(length.message);
  if (angle.kind === 'bad') return unreadable(angle.message);

  if (typing.rise !== 0) {
    if (length.kind === 'none') return wait(typing.rise > 0 ? says.howFarUp : says.howFarDown);
    const to: Vec3 = [from[0], from[1], from[2] + typing.rise * length.value];
    return made(from, to, length.value, sheet, true);
  }

  const start = project(from, sheet);
  const aim = pointer ? { u: pointer.u - start.u, v: pointer.v - start.v } : { u: 0, v: 0 };
  const reach = Math.hypot(aim.u, aim.v);
  const direction =
    angle.kind === 'value'
      ? unit(angle.value)
      : reach >= SHORTEST_LEG
        ? over(aim, reach)
        : seen(onward, sheet);
  if (!direction) return wait(says.pointTheWay);

  const along =
    length.kind === 'value'
      ? length.value
      : angle.kind === 'value'
        ? aim.u * direction.u + aim.v * direction.v
        : reach;
  if (along < SHORTEST_LEG) return wait(says.moveOn);
  const end =
    length.kind === 'none' && angle.kind === 'none' && pointer
      ? pointer
      : { u: start.u + along * direction.u, v: start.v + along * direction.v };
  return made(from, unproject(end, sheet, depthOf(from, sheet)), along, sheet, length.kind === 'value');
}

function unreadable(why: string): LegResult {
  return { ok: false, why, state: 'unreadable' };
}

function wait(why: string): LegResult {
  return { ok: false, why, state: 'waiting' };
}

function made(from: Vec3, to: Vec3, length: number, sheet: SheetId, typed: boolean): LegResult {
  const a = project(from, sheet);
  const b = project(to, sheet);
  return { ok: true, leg: { from, to, length, angle: angleOf(b.u - a.u, b.v - a.v), typed } };
}

/** Degrees counter-clockwise from the right, in [0, 360); null for no direction. */
function angleOf(u: number, v: number): number | null {
  if (Math.hypot(u, v) < SHORTEST_LEG) return null;
  const degrees = (Math.atan2(v, u) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** Exact at the quarter turns, where a cosine from π would not be. */
function unit(degrees: number): SheetPoint {
  const quarter = degrees / 90;
  if (Number.isInteger(quarter)) {
    const [u, v] = (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[(quarter % 4) as 0 | 1 | 2 | 3];
    return { u, v };
  }
  const radians = (degrees * Math.PI) / 180;
  return { u: Math.cos(radians), v: Math.sin(radians) };
}

function over(vector: SheetPoint, length: number): SheetPoint {
  return { u: vector.u / length, v: vector.v / length };
}

function seen(onward: Vec3 | null, sheet: SheetId): SheetPoint | null {
  if (!onward) return null;
  const flat = project(onward, sheet);
  const length = Math.hypot(flat.u, flat.v);
  return length > 1e-6 ? over(flat, length) : null;
}
