import type { Block, ExitFace, Vec3 } from '../../graph/document.ts';
import { holdsCollar, inAChase, liesIn } from '../../graph/fit/clash.ts';
import { type Box, overlap } from '../../graph/fit/gap.ts';
import { chordError } from '../../graph/fit/tube.ts';
import { type Axis, across, axisOf, type Direction, senseOf } from './grid.ts';

/** What a duct of one size has to keep clear of. */
export interface Obstacles {
  readonly blocks: readonly Block[];
  /** From the centre line of the duct to its outside, m. */
  readonly around: number;
  /** Wanted beyond that, m. */
  readonly clearance: number;
}

/** Only those that duct along a line at `at` on an axis across it can come too near to. */
export function besideOf(obstacles: Obstacles, axis: Axis, at: number): Obstacles {
  const reach = obstacles.around + obstacles.clearance;
  const blocks = obstacles.blocks.filter(({ min, max }) => min[axis] < at + reach && max[axis] > at - reach);
  return { ...obstacles, blocks };
}

/** Half a micrometre: what counts as clear in spite of rounding. */
const tolerance = 5e-7;

/** Where the centre line of a duct along an axis may not lie, m along that axis. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/**
 * Stretches of a line along an axis where duct would come too near to something: measured as the fit
 * check measures straight duct, with flat ends. A chase is nothing to keep clear of but its sides: duct
 * may run inside it, or outside, or through the faces across its way, and blocks that it leads through
 * are no obstacle inside it.
 *
 * @param line from one end of the room to the other, along `axis`
 * @param passed blocks that this duct may go through
 */
export function blockedSpans(
  line: { readonly axis: Axis; readonly from: Vec3; readonly to: Vec3 },
  { blocks, around, clearance }: Obstacles,
  passed: (block: Block) => boolean = () => false,
): Span[] {
  const { axis, from, to } = line;
  const sides = across[axis] as readonly [Axis, Axis];
  const chases = blocks.filter((block) => block.kind === 'chase');
  const spans: Span[] = [];
  for (const block of blocks) {
    const beside = Math.hypot(...sides.map((side) => outside(from[side], block.min[side], block.max[side])));
    if (block.kind === 'chase') {
      const inside = sides.every(
        (side) =>
          from[side] - around >= block.min[side] - tolerance &&
          from[side] + around <= block.max[side] + tolerance,
      );
      if (!inside && beside < around - tolerance) spans.push({ low: block.min[axis], high: block.max[axis] });
      continue;
    }
    if (beside >= around + clearance - tolerance || passed(block)) continue;
    if (chases.length > 0 && inAChase(hullOfLine(from, to, sides, around), block, { chases, clearance }))
      continue;
    const over = Math.max(0, beside - around);
    const margin = Math.sqrt(Math.max(0, clearance ** 2 - over ** 2));
    spans.push({ low: block.min[axis] - margin + tolerance, high: block.max[axis] + margin - tolerance });
  }
  return spans;
}

function outside(at: number, low: number, high: number): number {
  return Math.max(low - at, at - high, 0);
}

function hullOfLine(from: Vec3, to: Vec3, sides: readonly Axis[], around: number): Box {
  const min: Vec3 = [0, 0, 0];
  const max: Vec3 = [0, 0, 0];
  for (const axis of [0, 1, 2] as const) {
    const wide = sides.includes(axis) ? around : 0;
    min[axis] = Math.min(from[axis], to[axis]) - wide;
    max[axis] = Math.max(from[axis], to[axis]) + wide;
  }
  return { min, max };
}

/** Blocks that the leg from a collar may go through. */
export function passedAt(collar: Vec3): (block: Block) => boolean {
  return (block) => holdsCollar(block, collar);
}

/** Walls that the leg out of an exit may go through. */
export function passedBy(exit: ExitFace): (block: Block) => boolean {
  return (block) => liesIn(exit, block);
}

/** A square bend from one direction into another, ready to be tried at any place. */
export interface BendShape {
  /** Balls that hold the duct in the bend and the wall beyond a mitre's corner: from the corner, with radii in m. */
  readonly balls: readonly { readonly at: Vec3; readonly radius: number }[];
  /** The bend's box from its corner. */
  readonly hull: Box;
}

/**
 * The arc of a square bend of a centre-line radius, or the outer corner of a mitre (radius 0), as balls
 * that hold it: between two balls an arc strays from them by s²/8h at most, and by as much as the fit
 * check's chords stray from the arc.
 */
export function bendShape(from: Direction, to: Direction, radius: number, around: number): BendShape {
  const back = unit(from, -1);
  const on = unit(to, 1);
  const mix = (a: number, b: number): Vec3 =>
    [0, 1, 2].map((i) => a * (back[i] as number) + b * (on[i] as number)) as Vec3;
  const reach = radius > 0 ? radius : -around;
  const low = Math.min(0, reach);
  const corners = [mix(low, low), mix(Math.max(0, reach), Math.max(0, reach))] as const;
  const hull = grown(corners[0], corners[1], around + chordError);
  if (radius === 0) {
    const ball = Math.hypot(around, around / 2) + chordError;
    return { balls: [mix(-around / 2, 0), mix(0, -around / 2)].map((at) => ({ at, radius: ball })), hull };
  }
  const spacing = Math.min(0.03, radius / 2);
  const count = Math.ceil((radius * Math.PI) / 2 / spacing);
  const stray = spacing ** 2 / (8 * around) + chordError;
  const balls = Array.from({ length: count + 1 }, (_, i) => {
    const angle = ((Math.PI / 2) * i) / count;
    return {
      at: mix(radius * (1 - Math.sin(angle)), radius * (1 - Math.cos(angle))),
      radius: around + stray,
    };
  });
  return { balls, hull };
}

function unit(direction: Direction, sign: 1 | -1): Vec3 {
  const at: Vec3 = [0, 0, 0];
  at[axisOf(direction)] = sign * senseOf(direction);
  return at;
}

function grown(a: Vec3, b: Vec3, by: number): Box {
  const at = (pick: (...values: number[]) => number, sign: number): Vec3 =>
    [0, 1, 2].map((i) => pick(a[i] as number, b[i] as number) + sign * by) as Vec3;
  return { min: at(Math.min, -1), max: at(Math.max, 1) };
}

/** Whether a bend has room with its corner at a place. A chase must hold it whole or not at all. */
export function bendFits(
  shape: BendShape,
  corner: Vec3,
  { blocks, clearance }: Obstacles,
  passed: (block: Block) => boolean = () => false,
): boolean {
  const hull: Box = { min: sum(shape.hull.min, corner), max: sum(shape.hull.max, corner) };
  for (const block of blocks) {
    if (block.kind === 'chase') {
      if (overlap(hull, block, 0) && !within(hull, block)) return false;
      continue;
    }
    if (!overlap(hull, block, clearance) || passed(block)) continue;
    const hit = shape.balls.some(
      ({ at, radius }) => fromBox(at, corner, block) < radius + clearance - tolerance,
    );
    if (!hit) continue;
    const chases = blocks.filter((each) => each.kind === 'chase');
    if (!inAChase(hull, block, { chases, clearance })) return false;
  }
  return true;
}

function sum(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function within(inner: Box, outer: Box): boolean {
  return ([0, 1, 2] as const).every(
    (axis) =>
      inner.min[axis] >= outer.min[axis] - tolerance && inner.max[axis] <= outer.max[axis] + tolerance,
  );
}

function fromBox(at: Vec3, corner: Vec3, { min, max }: Box): number {
  return Math.hypot(
    outside(at[0] + corner[0], min[0], max[0]),
    outside(at[1] + corner[1], min[1], max[1]),
    outside(at[2] + corner[2], min[2], max[2]),
  );
}
