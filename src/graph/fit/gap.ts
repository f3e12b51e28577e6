import type { Vec3 } from '../document.ts';
import { add, dot, lerp, normalize, scale, subtract } from '../vector.ts';
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

/** True where sloping duct and a box are apart, asked of what is quickest to tell first. */
function isApart(tube: Tube, box: Box): boolean {
  return beyondEnds(tube, box) > 0 || hullGaps(tube, box).some((gap) => gap > 0) || slopingGap(tube, box) > 0;
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
  const spans = [
    { way: subtract(tube.b, tube.a), low: 0, at: 0.5 },
    { way: scale(tube.across[0], tube.half[0]), low: -1, at: 0 },
    { way: scale(tube.across[1], tube.half[1]), low: -1, at: 0 },
  ].filter(({ way }) => dot(way, way) > 0);
  let at = lerp(tube.a, tube.b, 0.5);
  for (let sweep = 0; sweep < 40; sweep += 1) {
    let moved = 0;
    for (const span of spans) {
      const base = subtract(at, scale(span.way, span.at));
      const best = nearestAlong(base, span.way, span.low, 1, box, span.at);
      moved = Math.max(moved, (best - span.at) ** 2 * dot(span.way, span.way));
      span.at = best;
      at = add(base, scale(span.way, best));
    }
    if (moved < 1e-14 || spans.length < 2) break;
  }
  const gap = outsideBy(at, box) - tube.rounding;
  return gap > touch ? gap : 0;
}

/** Distance from a place to a box, m. */
function outsideBy(at: Vec3, box: Box): number {
  let square = 0;
  for (const axis of axes) square += Math.max(box.min[axis] - at[axis], at[axis] - box.max[axis], 0) ** 2;
  return Math.sqrt(square);
}

/** Half the slope of the squared distance to a box at `base + t·way`. */
function slopeAt(base: Vec3, way: Vec3, box: Box, t: number): number {
  let slope = 0;
  for (const axis of axes) {
    const x = base[axis] + t * way[axis];
    if (x > box.max[axis]) slope += way[axis] * (x - box.max[axis]);
    else if (x < box.min[axis]) slope += way[axis] * (x - box.min[axis]);
  }
  return slope;
}

/**
 * Where along `base + t·way`, `low` to `high`, a box is nearest. The slope of the squared distance is
 * piecewise straight and never falls, with corners where the line passes the planes of the box.
 */
function nearestAlong(base: Vec3, way: Vec3, low: number, high: number, box: Box, now: number): number {
  if (slopeAt(base, way, box, now) === 0) return now;
  let before = low;
  let falling = slopeAt(base, way, box, low);
  if (falling >= 0) return low;
  const stops = [high];
  for (const axis of axes) {
    if (way[axis] === 0) continue;
    for (const side of [box.min[axis], box.max[axis]]) {
      const t = (side - base[axis]) / way[axis];
      if (t > low && t < high) stops.push(t);
    }
  }
  for (const after of stops.sort((one, other) => one - other)) {
    const rising = slopeAt(base, way, box, after);
    if (rising >= 0) return before + ((after - before) * -falling) / (rising - falling);
    before = after;
    falling = rising;
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

/** The least move along an axis of space that parts the boxes around duct and a block: never less than `wayOut`. */
export function roughWayOut(tube: Tube, box: Box): number {
  return Math.min(...hullWays(tube, box).map((way) => way.distance));
}

/**
 * The least move along an axis of space that parts duct from a box it overlaps: exact for duct along the
 * axes, to a twentieth of a millimetre for sloping duct. Both are convex, so that along each way they
 * part once and stay apart.
 */
export function wayOut(tube: Tube, box: Box): WayOut {
  const along = axisOf(tube);
  const ways = hullWays(tube, box).sort((one, other) => one.distance - other.distance);
  let best = ways[0] as WayOut;
  for (const way of ways) {
    const { axis, sense } = way;
    const distance =
      along === null
        ? partedAfter(tube, box, axis, sense, Math.max(0, Math.min(best.distance, way.distance)))
        : Math.max(0, way.distance - roundedOff(tube, box, axis, along));
    if (distance < best.distance) best = { axis, sense, distance };
  }
  return best;
}

/** The six ways along the axes that part the boxes around duct and a block. */
function hullWays(tube: Tube, box: Box): WayOut[] {
  const hull = hullOf(tube);
  return axes.flatMap((axis): WayOut[] => [
    { axis, sense: 1, distance: box.max[axis] - hull.min[axis] },
    { axis, sense: -1, distance: hull.max[axis] - box.min[axis] },
  ]);
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
  const apart = (distance: number) => isApart(moved(tube, axis, sense * distance), box);
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
