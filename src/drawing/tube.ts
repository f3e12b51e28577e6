import type { Vec3 } from '../graph/document.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { add, cross, dot, norm, normalize, scale, subtract } from '../graph/vector.ts';
import type { Section } from '../hydraulics/types.ts';
import { line, type Stroke } from './stroke.ts';
import type { View } from './view.ts';

/** A leg whose length shows shorter than this share of its true length is seen end on: within 5° of the sight. */
const endOn = Math.sin((5 * Math.PI) / 180);

/** A point in space as a view shows it, m. */
export function seen(at: Vec3, view: View): SheetPoint {
  return { u: dot(at, view.right), v: dot(at, view.up) };
}

/** True where a direction runs along the line of sight, so that duct is seen end on. */
export function isEndOn(direction: Vec3, view: View): boolean {
  return Math.hypot(dot(direction, view.right), dot(direction, view.up)) < endOn;
}

/**
 * Half of what a section covers along `normal`, a unit vector across the duct, m: the section's
 * support function. `width` is the unit vector along the section's width.
 */
export function reach(section: Section, width: Vec3, normal: Vec3): number {
  if (section.shape === 'round') return section.diameter / 2;
  const along = Math.min(1, Math.abs(dot(width, normal)));
  const upright = Math.sqrt(1 - along * along);
  if (section.shape === 'rectangular') return (section.width * along + section.height * upright) / 2;
  const short = Math.min(section.width, section.height);
  const straight = Math.max(section.width, section.height) - short;
  return short / 2 + (straight / 2) * (section.width >= section.height ? along : upright);
}

/** A straight piece of duct between two points in space, with what its ends are cut along. */
export interface Piece {
  readonly from: Vec3;
  readonly to: Vec3;
  /** Direction of the piece before and after; null for a square end. */
  readonly before: Vec3 | null;
  readonly after: Vec3 | null;
  readonly section: Section;
  readonly width: Vec3;
}

/** The two walls of a piece as a view shows them; null for one seen end on. */
export interface Walls {
  readonly left: readonly [SheetPoint, SheetPoint];
  readonly right: readonly [SheetPoint, SheetPoint];
}

/**
 * The silhouette of a straight piece. A wall is the line of the duct's surface that the sight just
 * grazes; it ends on the plane of the mitre that the piece shares with its neighbour, which halves the turn.
 */
export function wallsOf(piece: Piece, view: View): Walls | null {
  const direction = normalize(subtract(piece.to, piece.from));
  const normal = grazing(direction, view);
  if (!normal) return null;
  const half = reach(piece.section, piece.width, normal);
  const wall = (side: 1 | -1): readonly [SheetPoint, SheetPoint] => {
    const offset = scale(normal, side * half);
    return [
      seen(add(piece.from, onMitre(offset, direction, piece.before)), view),
      seen(add(piece.to, onMitre(offset, direction, piece.after)), view),
    ];
  };
  return { left: wall(1), right: wall(-1) };
}

/** The unit vector in the plane of the sheet, square to a direction and to its left; null for one end on. */
export function grazing(direction: Vec3, view: View): Vec3 | null {
  if (isEndOn(direction, view)) return null;
  return normalize(cross(view.toward, direction));
}

/** Slides a point of a duct's rim along the duct onto the plane that halves the turn to its neighbour. */
function onMitre(offset: Vec3, own: Vec3, neighbour: Vec3 | null): Vec3 {
  if (!neighbour) return offset;
  const halving = add(own, neighbour);
  const along = dot(own, halving);
  if (along < 1e-6) return offset;
  return subtract(offset, scale(own, dot(offset, halving) / along));
}

/** A piece of a chain: straight runs through points in space, cut to each other by mitres. */
export function piecesThrough(
  points: readonly Vec3[],
  section: Section,
  widths: readonly Vec3[],
): readonly Piece[] {
  const directions = points.slice(1).map((p, i) => normalize(subtract(p, points[i] as Vec3)));
  return directions.map((_, i) => ({
    from: points[i] as Vec3,
    to: points[i + 1] as Vec3,
    before: directions[i - 1] ?? null,
    after: directions[i + 1] ?? null,
    section,
    width: widths[i] ?? widths[0] ?? [1, 0, 0],
  }));
}

/**
 * The seam around round duct where two pieces meet, or its square end, as far as the viewer sees it;
 * a straight stroke across duct with flat sides.
 */
export function seam(
  at: Vec3,
  before: Vec3 | null,
  after: Vec3 | null,
  section: Section,
  width: Vec3,
  view: View,
): Stroke | null {
  const along = after ?? before;
  const normal = along && grazing(along, view);
  if (!along || !normal) return null;
  const half = reach(section, width, normal);
  const level =
    Math.abs(dot(along, view.toward)) < 1e-9 && Math.abs(dot(before ?? along, view.toward)) < 1e-9;
  const steps = section.shape === 'round' && !level ? 12 : 1;
  const front = normalize(subtract(view.toward, scale(along, dot(view.toward, along))));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (Math.PI * i) / steps;
    const offset = add(scale(normal, half * Math.cos(angle)), scale(front, half * Math.sin(angle)));
    return seen(add(at, onMitre(offset, along, before)), view);
  });
  return line(...points);
}

/** An arc in space that turns one direction into another. */
export interface Arc {
  readonly start: Vec3;
  readonly end: Vec3;
  readonly centre: Vec3;
  readonly radius: number;
  /** Radians. */
  readonly angle: number;
  /** Unit vectors: along the flow at the start, and from the start to the centre. */
  readonly along: Vec3;
  readonly inward: Vec3;
}

/** The centre line of a bend at `at` with its tangent length on both legs, m; null for a straight pair. */
export function arcOf(at: Vec3, incoming: Vec3, outgoing: Vec3, radius: number, tangent: number): Arc | null {
  const across = subtract(outgoing, scale(incoming, dot(incoming, outgoing)));
  if (norm(across) < 1e-9 || radius <= 0) return null;
  const inward = normalize(across);
  const start = subtract(at, scale(incoming, tangent));
  return {
    start,
    end: add(at, scale(outgoing, tangent)),
    centre: add(start, scale(inward, radius)),
    radius,
    angle: 2 * Math.atan2(tangent, radius),
    along: incoming,
    inward,
  };
}

/** A point of an arc, `turn` radians from its start, on a radius `factor` times its own. */
export function arcPoint(arc: Arc, turn: number, factor = 1): Vec3 {
  const r = arc.radius * factor;
  return add(add(arc.centre, scale(arc.inward, -r * Math.cos(turn))), scale(arc.along, r * Math.sin(turn)));
}

/** A vector carried along an arc by its turn. */
export function carried(vector: Vec3, arc: Arc, turn: number): Vec3 {
  const a = dot(vector, arc.along);
  const i = dot(vector, arc.inward);
  const rest = subtract(vector, add(scale(arc.along, a), scale(arc.inward, i)));
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return add(rest, add(scale(arc.along, a * c - i * s), scale(arc.inward, a * s + i * c)));
}
