import type { Vec3 } from '../graph/document.ts';
import { add, cross, dot, scale, subtract } from '../graph/vector.ts';
import { polygon, type Stroke } from './stroke.ts';
import { seen } from './tube.ts';
import type { View } from './view.ts';

/** A convex solid by its flat faces; the corners of a face run round it, either way. */
export type Solid = readonly (readonly Vec3[])[];

/** The solid between a flat outline and another of as many corners: a prism, a box or a frustum. */
export function between(base: readonly Vec3[], top: readonly Vec3[]): Solid {
  const sides = base.map((corner, i) => {
    const next = (i + 1) % base.length;
    return [corner, base[next], top[next], top[i]].filter((at) => at !== undefined);
  });
  return [base, top, ...sides];
}

/** A box along the axes. */
export function box(min: Vec3, max: Vec3): Solid {
  const level = (z: number): Vec3[] => [
    [min[0], min[1], z],
    [max[0], min[1], z],
    [max[0], max[1], z],
    [min[0], max[1], z],
  ];
  return between(level(min[2]), level(max[2]));
}

/** What a view shows of a convex solid: the faces that look at the viewer, as fills and outlines. */
export function shown(
  solid: Solid,
  view: View,
): { readonly fill: readonly (readonly Stroke[])[]; readonly walls: readonly Stroke[] } {
  const middle = mean(solid.flat());
  const faces = solid.filter((face) => facing(face, middle, view) > 1e-9);
  const outlines = faces.map((face) => polygon(face.map((at) => seen(at, view))));
  return { fill: outlines.map((outline) => [outline]), walls: outlines };
}

/** How much a face looks at the viewer: above 0 where it does. */
function facing(face: readonly Vec3[], middle: Vec3, view: View): number {
  const [a, b] = face;
  if (!a || !b) return 0;
  let normal: Vec3 = [0, 0, 0];
  face.forEach((at, i) => {
    normal = add(normal, cross(subtract(at, a), subtract(face[(i + 1) % face.length] ?? a, a)));
  });
  const outward = dot(normal, subtract(mean(face), middle)) < 0 ? -1 : 1;
  return outward * dot(normal, view.toward);
}

/** The mean of points. */
export function mean(points: readonly Vec3[]): Vec3 {
  return scale(
    points.reduce((sum, at) => add(sum, at), [0, 0, 0] as Vec3),
    1 / Math.max(1, points.length),
  );
}
