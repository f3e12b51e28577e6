import type { Section } from '../../hydraulics/types.ts';
import type { Vec3 } from '../document.ts';
import { cross, dot, norm, normalize } from '../vector.ts';

const up: Vec3 = [0, 0, 1];
const east: Vec3 = [1, 0, 0];

/** A leg within 5° of vertical. */
export function isVertical(direction: Vec3): boolean {
  return Math.abs(direction[2]) >= Math.cos((5 * Math.PI) / 180);
}

/**
 * Which way the `width` of a section lies. On a leg that is not vertical it lies level, across the
 * run, and `height` stands upright. A vertical leg takes it from the nearest leg that is not vertical,
 * upstream first, as if the duct were simply bent up or down; with none it lies east.
 */
export function widthAxis(direction: Vec3, neighbours: readonly Vec3[]): Vec3 {
  const level = [direction, ...neighbours].find((d) => norm(d) > 0 && !isVertical(d));
  return level ? normalize(cross(up, level)) : east;
}

/** The sides of a section in the plane of a turn and across it, m; nothing for round duct. */
export function turnSides(
  section: Section,
  width: Vec3,
  incoming: Vec3,
  outgoing: Vec3,
): { readonly inPlane: number; readonly acrossPlane: number } | undefined {
  if (section.shape === 'round') return undefined;
  const axis = normalize(cross(incoming, outgoing));
  const widthAcross = Math.abs(dot(axis, width)) >= Math.SQRT1_2;
  return widthAcross
    ? { inPlane: section.height, acrossPlane: section.width }
    : { inPlane: section.width, acrossPlane: section.height };
}

/** Deflection between two unit vectors, degrees from straight on; 0 where either is no direction. */
export function deflection(incoming: Vec3, outgoing: Vec3): number {
  return (Math.atan2(norm(cross(incoming, outgoing)), dot(incoming, outgoing)) * 180) / Math.PI;
}
