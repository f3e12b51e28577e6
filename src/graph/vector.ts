import type { Vec3 } from './document.ts';

export function add(a: Vec3, b: Vec3): Vec3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Vec3, b: Vec3): Vec3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vec3, factor: number): Vec3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Vec3, b: Vec3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vec3, b: Vec3): Vec3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** Length of a vector. */
export function norm(a: Vec3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

export function distance(a: Vec3, b: Vec3): number {
  return norm(subtract(a, b));
}

/** Unit vector; the zero vector stays what it is. */
export function normalize(a: Vec3): Vec3 {
  const length = norm(a);
  return length > 0 ? scale(a, 1 / length) : [0, 0, 0];
}

/** The place a fraction `t` of the way from `a` to `b`. */
export function lerp(a: Vec3, b: Vec3, t: number): Vec3 {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** Angle between two directions, degrees, 0-180; 0 where either has no length. Exact near 0 and 180. */
export function angleBetween(a: Vec3, b: Vec3): number {
  return (Math.atan2(norm(cross(a, b)), dot(a, b)) * 180) / Math.PI;
}

/** The place on the segment from `a` to `b` that is nearest to `p`, with its fraction along, 0-1. */
export function nearestOnSegment(p: Vec3, a: Vec3, b: Vec3): { at: Vec3; t: number } {
  const along = subtract(b, a);
  const square = dot(along, along);
  const t = square > 0 ? Math.min(1, Math.max(0, dot(subtract(p, a), along) / square)) : 0;
  return { at: lerp(a, b, t), t };
}
