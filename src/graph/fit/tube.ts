import { area } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import type { Vec3 } from '../document.ts';
import { turnSides, widthAxis } from '../inference/orientation.ts';
import type { Route, RouteBend, RouteNode, RouteSegment } from '../route.ts';
import { add, cross, distance, dot, norm, normalize, scale, subtract } from '../vector.ts';

/**
 * A straight stretch of duct as the room meets it: a flat core swept from `a` to `b`, and a rounding
 * around it. Round duct has no core and its whole radius as rounding; rectangular duct is all core, with
 * its wall and insulation as rounding; a flat oval is its middle, rounded by half its height.
 */
export interface Tube {
  readonly a: Vec3;
  readonly b: Vec3;
  /** Unit vectors across the run, along the core's half widths `half`. */
  readonly across: readonly [Vec3, Vec3];
  /** m */
  readonly half: readonly [number, number];
  /** m */
  readonly rounding: number;
}

/** Arcs are replaced by chords whose middle strays from the arc's centre line by no more than this, m. */
export const chordError = 0.002;

/**
 * Thickness of the wall of a duct, m, where it is enough to matter: sheet metal by common practice for
 * house ducts (26 gauge and the seam over it), plastic pipe from memory (schedule 40, 8 in).
 */
function wallThickness(material: string): number {
  if (material === 'smooth-plastic') return 0.008;
  return material === 'flexible' || material === 'semi-rigid' ? 0.002 : 0.0006;
}

/** What a leg's outside depends on. */
type Laid = Pick<RouteSegment, 'section' | 'material' | 'insulation'>;

interface Profile {
  readonly half: readonly [number, number];
  readonly rounding: number;
}

/** The core and rounding of a leg's section, its first side along `width`, its second across that. */
function profileOf(section: Section, skin: number): Profile {
  switch (section.shape) {
    case 'round':
      return { half: [0, 0], rounding: section.diameter / 2 + skin };
    case 'rectangular':
      return { half: [section.width / 2, section.height / 2], rounding: skin };
    case 'oval': {
      const round = Math.min(section.width, section.height) / 2;
      return {
        half: [section.width / 2 - round, section.height / 2 - round],
        rounding: round + skin,
      };
    }
  }
}

function skinOf(leg: Laid): number {
  return wallThickness(leg.material) + leg.insulation;
}

/** From a leg's centre line to its outside where that is farthest: half its greater side, wall and insulation, m. */
export function outsideHalf(leg: Laid): number {
  const { half, rounding } = profileOf(leg.section, skinOf(leg));
  return Math.hypot(...half) + rounding;
}

/**
 * The straight of a leg, from the end of one bend's arc to the start of the next; a mitre takes it on
 * to the outer corner. Nothing where the bends leave no straight.
 */
export function tubeOf(leg: RouteSegment, route: Route): Tube | null {
  const from = route.nodes.get(leg.from);
  const to = route.nodes.get(leg.to);
  return from && to ? tubeBetween(leg, from, to, neighbours(leg, route)) : null;
}

/** {@link tubeOf} between the nodes that a leg joins; `around` are its {@link neighbours}. */
export function tubeBetween(
  leg: RouteSegment,
  from: RouteNode,
  to: RouteNode,
  around: readonly Vec3[],
): Tube | null {
  if (leg.length < 1e-9) return null;
  const width = widthAxis(leg.direction, around);
  const { half, rounding } = profileOf(leg.section, skinOf(leg));
  const start = cutAt(from, leg);
  const end = leg.length - cutAt(to, leg);
  if (end - start < 1e-9) return null;
  const along = (s: number) => add(from.at, scale(leg.direction, s));
  return {
    a: along(start),
    b: along(end),
    across: [width, normalize(cross(leg.direction, width))],
    half,
    rounding,
  };
}

/**
 * The cone at the start of a leg that is narrower than what comes before it, as duct of the wider size;
 * nothing where the leg has no cone or widens.
 */
export function coneIn(tube: Tube, leg: RouteSegment, from: RouteNode): Tube | null {
  const cone = from.transition;
  if (cone?.downstream !== leg.id || cone.length <= 0 || area(cone.from) <= area(cone.to)) return null;
  const end = Math.min(leg.length, (from.bend?.tangent ?? 0) + cone.length);
  return { ...tube, ...profileOf(cone.from, skinOf(leg)), b: add(from.at, scale(leg.direction, end)) };
}

/** What a node takes off the straight of a leg, m; below 0 where a mitre's outer corner adds to it. */
function cutAt(node: RouteNode, leg: RouteSegment): number {
  const { bend } = node;
  if (!bend) return 0;
  if (bend.radius > 0) return bend.tangent;
  const reach = bend.inPlane === undefined ? outsideHalf(leg) : bend.inPlane / 2 + skinOf(leg);
  return -Math.min(reach * Math.tan((bend.angle * Math.PI) / 360), 2 * reach);
}

/** Directions of the legs around one, upstream first, as far as its own end nodes reach. */
export function neighbours(leg: RouteSegment, route: Route): Vec3[] {
  if (!leg.vertical || leg.section.shape === 'round') return [];
  return [leg.from, leg.to].flatMap((end) =>
    (route.nodes.get(end)?.segments ?? [])
      .filter((id) => id !== leg.id)
      .flatMap((id) => {
        const met = route.segments.get(id);
        return met ? [met.direction] : [];
      }),
  );
}

/** The arc of a bend as chords, in the section and insulation of the leg upstream of it; none for a mitre. */
export function arcTubes(node: RouteNode, route: Route): readonly Tube[] {
  const { bend } = node;
  const upstream = bend && route.segments.get(bend.upstream);
  const downstream = bend && route.segments.get(bend.downstream);
  if (!bend || bend.radius <= 0 || !upstream || !downstream) return [];
  const line = arcLine(node.at, bend, leaving(upstream, node.id), leaving(downstream, node.id));
  const normal = normalize(cross(leaving(downstream, node.id), leaving(upstream, node.id)));
  if (norm(normal) === 0) return [];
  const sides = inAndAcross(upstream, bend, normal);
  return line.slice(1).map((b, i): Tube => {
    const a = line[i] as Vec3;
    const inPlane = normalize(cross(normal, subtract(b, a)));
    return { a, b, across: [inPlane, normal], half: sides.half, rounding: sides.rounding };
  });
}

/** Unit vector from a node into a leg. */
function leaving(leg: RouteSegment, node: string): Vec3 {
  return leg.from === node ? leg.direction : scale(leg.direction, -1);
}

function inAndAcross(leg: RouteSegment, bend: RouteBend, normal: Vec3): Profile {
  if (leg.section.shape === 'round') return profileOf(leg.section, skinOf(leg));
  const sides =
    bend.inPlane !== undefined && bend.acrossPlane !== undefined
      ? { inPlane: bend.inPlane, acrossPlane: bend.acrossPlane }
      : turnSides(leg.section, widthAxis(leg.direction, []), leg.direction, normal);
  const width = sides?.inPlane ?? leg.section.width;
  const height = sides?.acrossPlane ?? leg.section.height;
  return profileOf({ shape: leg.section.shape, width, height }, skinOf(leg));
}

/** Points on the centre line of an arc, from one tangent point to the other. */
function arcLine(at: Vec3, bend: RouteBend, back: Vec3, on: Vec3): Vec3[] {
  const half = ((Math.min(bend.angle, 175) / 2) * Math.PI) / 180;
  const middle = normalize(add(back, on));
  const centre = add(at, scale(middle, bend.radius / Math.cos(half)));
  const outward = scale(middle, -1);
  const sideways = normalize(subtract(on, scale(middle, dot(on, middle))));
  const count = Math.max(2, Math.ceil(half / Math.acos(1 - Math.min(1, chordError / bend.radius))));
  return Array.from({ length: count + 1 }, (_, i) => {
    const turn = half * ((2 * i) / count - 1);
    return add(
      centre,
      add(scale(outward, bend.radius * Math.cos(turn)), scale(sideways, bend.radius * Math.sin(turn))),
    );
  });
}

/** A tube that lies `by` metres within another on every side. */
export function shrunk(tube: Tube, by: number): Tube {
  const length = distance(tube.a, tube.b);
  const inward = scale(normalize(subtract(tube.b, tube.a)), Math.min(by, length / 2));
  const fromCore = Math.max(0, by - tube.rounding);
  return {
    a: add(tube.a, inward),
    b: subtract(tube.b, inward),
    across: tube.across,
    half: [Math.max(0, tube.half[0] - fromCore), Math.max(0, tube.half[1] - fromCore)],
    rounding: Math.max(0, tube.rounding - by),
  };
}

/** Half of what a tube covers along an axis of space, at any place along it, m. */
export function coverage(tube: Tube, axis: 0 | 1 | 2): number {
  const [one, other] = tube.across;
  const run = distance(tube.a, tube.b);
  const along = run > 0 ? Math.abs(tube.b[axis] - tube.a[axis]) / run : 0;
  return (
    Math.abs(one[axis]) * tube.half[0] +
    Math.abs(other[axis]) * tube.half[1] +
    tube.rounding * Math.sqrt(Math.max(0, 1 - along * along))
  );
}
