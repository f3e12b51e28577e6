import type { Vec3 } from '../document.ts';
import { add, dot, norm, normalize, scale, subtract } from '../vector.ts';
import { coverage, type Tube } from './tube.ts';

/** A block with its lower and its upper corner. */
export interface Box {
  readonly min: Vec3;
  readonly max: Vec3;
}

const axes = [0, 1, 2] as const;

/** A search that ends this near to a box is at it, m. */
const touch = 1e-9;

/**
 * Clear distance between the outside of a duct and a box, m; 0 where they touch or overlap. Exact for
 * duct along an axis of space. Sloping duct is what lies within its rounding, between the planes of its
 * two ends: exact but where a box is nearest to the rim of an end, and never more than there is.
 */
export function gapBetween(tube: Tube, box: Box): number {
  const axis = axisOf(tube);
  if (axis !== null) return straightGap(tube, box, axis);
  return Math.max(slopingGap(tube, box), beyondEnds(tube, box), ...hullGaps(tube, box));
}

/** Clear distance between a box and the planes of a tube's two ends, m. */
function beyondEnds({ a, b }: Tube, box: Box): number {
  const along = normalize(subtract(b, a));
  const side = (pick: (one: number, other: number) => number) =>
    axes.reduce<number>(
      (sum, axis) => sum + pick(along[axis] * box.min[axis], along[axis] * box.max[axis]),
      0,
    );
  return Math.max(side(Math.min) - dot(along, b), dot(along, a) - side(Math.max), 0);
}

function hullGaps(tube: Tube, box: Box): number[] {
  const hull = hullOf(tube);
  return axes.map((axis) => Math.max(box.min[axis] - hull.max[axis], hull.min[axis] - box.max[axis], 0));
}

/** The axis of space that a tube and its sides lie along, if there is one. */
function axisOf(tube: Tube): 0 | 1 | 2 | null {
  const along = normalize(subtract(tube.b, tube.a));
  const lies = (unit: Vec3) => axes.some((axis) => Math.abs(unit[axis]) > 1 - 1e-12);
  const axis = axes.find((each) => Math.abs(along[each]) > 1 - 1e-12);
  const flat = tube.half[0] > 0 || tube.half[1] > 0;
  return axis === undefined || (flat && !tube.across.every(lies)) ? null : axis;
}

/** Half of what the core of a tube covers along an axis of space, m, where it lies along the axes. */
function coreHalf(tube: Tube, axis: 0 | 1 | 2): number {
  return tube.half[0] * Math.abs(tube.across[0][axis]) + tube.half[1] * Math.abs(tube.across[1][axis]);
}

/** Clear distance between the core of a tube that lies along the axes and a box, along one of them, m. */
function coreGap(tube: Tube, box: Box, axis: 0 | 1 | 2): number {
  const core = coreHalf(tube, axis);
  const low = Math.min(tube.a[axis], tube.b[axis]) - core;
  const high = Math.max(tube.a[axis], tube.b[axis]) + core;
  return Math.max(box.min[axis] - high, low - box.max[axis], 0);
}

function straightGap(tube: Tube, box: Box, along: 0 | 1 | 2): number {
  const apart = axes.map((axis) => coreGap(tube, box, axis));
  const lateral = Math.hypot(...apart.filter((_, axis) => axis !== along));
  return Math.hypot(apart[along] as number, Math.max(0, lateral - tube.rounding));
}

/**
 * The squared distance from a place in the core to the box is smooth and convex in the three
 * coordinates of the core, so that the least along one after another leads to the least of all.
 */
function slopingGap(tube: Tube, box: Box): number {
  const run = subtract(tube.b, tube.a);
  const spans = [
    { way: run, low: 0, high: 1 },
    { way: scale(tube.across[0], tube.half[0]), low: -1, high: 1 },
    { way: scale(tube.across[1], tube.half[1]), low: -1, high: 1 },
  ].filter(({ way }) => norm(way) > 0);
  const place = spans.map(({ low, high }) => (low + high) / 2);
  let at = tube.a;
  spans.forEach(({ way }, i) => {
    at = add(at, scale(way, place[i] as number));
  });
  for (let sweep = 0; sweep < 40; sweep += 1) {
    let moved = 0;
    spans.forEach(({ way, low, high }, i) => {
      const now = place[i] as number;
      const base = subtract(at, scale(way, now));
      const best = nearestAlong(base, way, low, high, box, now);
      moved = Math.max(moved, Math.abs(best - now) * norm(way));
      place[i] = best;
      at = add(base, scale(way, best));
    });
    if (moved < 1e-7 || spans.length < 2) break;
  }
  const gap = outsideBy(at, box) - tube.rounding;
  return gap > touch ? gap : 0;
}

/** Distance from a place to a box, m. */
function outsideBy(at: Vec3, box: Box): number {
  return Math.hypot(...axes.map((axis) => Math.max(box.min[axis] - at[axis], at[axis] - box.max[axis], 0)));
}

/**
 * Where along `base + t·way`, `low` to `high`, a box is nearest. The slope of the squared distance is
 * piecewise straight and never falls, with corners where the line passes the planes of the box.
 */
function nearestAlong(base: Vec3, way: Vec3, low: number, high: number, box: Box, now: number): number {
  const slope = (t: number) =>
    axes.reduce<number>((sum, axis) => {
      const x = base[axis] + t * way[axis];
      return sum + way[axis] * (Math.max(0, x - box.max[axis]) - Math.max(0, box.min[axis] - x));
    }, 0);
  const corners = axes
    .filter((axis) => way[axis] !== 0)
    .flatMap((axis) => [(box.min[axis] - base[axis]) / way[axis], (box.max[axis] - base[axis]) / way[axis]])
    .filter((t) => t > low && t < high)
    .sort((one, other) => one - other);
  if (slope(now) === 0) return now;
  const stops = [low, ...corners, high];
  if (slope(low) >= 0) return low;
  for (let i = 1; i < stops.length; i += 1) {
    const [before, after] = [stops[i - 1] as number, stops[i] as number];
    const [falling, rising] = [slope(before), slope(after)];
    if (rising >= 0)
      return rising === falling ? before : before + ((after - before) * -falling) / (rising - falling);
  }
  return high;
}

/** The box that holds a tube, m. */
export function hullOf(tube: Tube): Box {
  const side = (pick: (one: number, other: number) => number, sense: 1 | -1) =>
    axes.map((axis) => pick(tube.a[axis], tube.b[axis]) + sense * coverage(tube, axis)) as unknown as Vec3;
  return { min: side(Math.min, -1), max: side(Math.max, 1) };
}

/** How far duct has to move to be clear of a box, m, and which way: the least of the six ways along the axes. */
export interface WayOut {
  readonly distance: number;
  readonly axis: 0 | 1 | 2;
  readonly sense: 1 | -1;
}

/**
 * The least move along an axis of space that parts duct from a box it overlaps: exact for duct along the
 * axes, to a twentieth of a millimetre for sloping duct. Both are convex, so that along each way they
 * part once and stay apart.
 */
export function wayOut(tube: Tube, box: Box): WayOut {
  const hull = hullOf(tube);
  const along = axisOf(tube);
  let best: WayOut | null = null;
  for (const axis of axes) {
    for (const sense of [1, -1] as const) {
      const most = sense > 0 ? box.max[axis] - hull.min[axis] : hull.max[axis] - box.min[axis];
      const limit = Math.max(0, best ? Math.min(best.distance, most) : most);
      const distance =
        along === null
          ? partedAfter(tube, box, axis, sense, limit)
          : Math.max(0, most - roundedOff(tube, box, axis, along));
      if (!best || distance < best.distance) best = { axis, sense, distance };
    }
  }
  return best as WayOut;
}

/** What the rounding of duct along an axis saves of a move across it, where the box meets its round corner, m. */
function roundedOff(tube: Tube, box: Box, axis: 0 | 1 | 2, along: 0 | 1 | 2): number {
  const other = axes.find((each) => each !== axis && each !== along);
  if (axis === along || other === undefined) return 0;
  const beside = Math.min(coreGap(tube, box, other), tube.rounding);
  return tube.rounding - Math.sqrt(tube.rounding ** 2 - beside ** 2);
}

/** The move after which the two are apart, m; `most` where that is not less. */
function partedAfter(tube: Tube, box: Box, axis: 0 | 1 | 2, sense: 1 | -1, most: number): number {
  const apart = (distance: number) => gapBetween(moved(tube, axis, sense * distance), box) > 0;
  if (most < 1e-4 || !apart(most - 5e-5)) return most;
  let low = 0;
  let high = most;
  while (high - low > 5e-5 && Number.isFinite(high)) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (apart(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function moved(tube: Tube, axis: 0 | 1 | 2, distance: number): Tube {
  const by: Vec3 = [0, 0, 0];
  by[axis] = distance;
  return { ...tube, a: add(tube.a, by), b: add(tube.b, by) };
}

/** True where two boxes have more than a face in common, the first grown by `margin` metres. */
export function overlap(one: Box, other: Box, margin = 0): boolean {
  return axes.every(
    (axis) => one.min[axis] - margin < other.max[axis] && one.max[axis] + margin > other.min[axis],
  );
}

/** The part of the line from `a` to `b` in a box, as fractions along it; `null` where it misses the box. */
export function clipped(a: Vec3, b: Vec3, box: Box): readonly [number, number] | null {
  let enters = 0;
  let leaves = 1;
  for (const axis of axes) {
    const step = b[axis] - a[axis];
    if (step === 0) {
      if (a[axis] < box.min[axis] || a[axis] > box.max[axis]) return null;
      continue;
    }
    const one = (box.min[axis] - a[axis]) / step;
    const other = (box.max[axis] - a[axis]) / step;
    enters = Math.max(enters, Math.min(one, other));
    leaves = Math.min(leaves, Math.max(one, other));
  }
  return enters < leaves ? [enters, leaves] : null;
}
