/** A point of a drawing, in its units, y up. */
export type Point = readonly [number, number];

/** x' = a x + c y + e, y' = b x + d y + f. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const same: Affine = [1, 0, 0, 1, 0, 0];

export function placed([x, y]: Point, [a, b, c, d, e, f]: Affine): Point {
  return [a * x + c * y + e, b * x + d * y + f];
}

/** First `inner`, then `outer`. */
export function after(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = inner;
  const [p, q, r, s, t, u] = outer;
  return [p * a + r * b, q * a + s * b, p * c + r * d, q * c + s * d, p * e + r * f + t, q * e + s * f + u];
}

/** Chords that stand for a curve turn by no more than this, radians. */
const STEP = Math.PI / 36;

/** Points along an ellipse: from the angle `start` by `sweep`, radians, with half axes as vectors. */
export function ellipsePoints(
  [x, y]: Point,
  [ux, uy]: Point,
  [vx, vy]: Point,
  start: number,
  sweep: number,
): Point[] {
  const steps = Math.max(2, Math.ceil(Math.abs(sweep) / STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = start + (sweep * i) / steps;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [x + ux * c + vx * s, y + uy * c + vy * s];
  });
}

/** Points after `from` along an arc to `to`; `bulge` is the tangent of a quarter of its angle, positive to the left. */
export function bulgePoints(from: Point, to: Point, bulge: number): Point[] {
  if (Math.abs(bulge) < 1e-6) return [to];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const offset = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point = [(from[0] + to[0]) / 2 - dy * offset, (from[1] + to[1]) / 2 + dx * offset];
  const radius = Math.hypot(from[0] - centre[0], from[1] - centre[1]);
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  return ellipsePoints(centre, [radius, 0], [0, radius], start, 4 * Math.atan(bulge)).slice(1);
}

/** Points along a B-spline without weights, by de Boor's rule; its control points where its knots do not fit them. */
export function splinePoints(control: readonly Point[], knots: readonly number[], degree: number): Point[] {
  const n = control.length;
  if (degree < 1 || n <= degree || knots.length !== n + degree + 1) return [...control];
  const points: Point[] = [];
  for (let span = degree; span < n; span++) {
    const [low, high] = [knots[span] ?? 0, knots[span + 1] ?? 0];
    if (!(high > low)) continue;
    for (let i = points.length === 0 ? 0 : 1; i <= 8; i++)
      points.push(deBoor(control, knots, degree, span, low + ((high - low) * i) / 8));
  }
  return points.length > 1 ? points : [...control];
}

function deBoor(
  control: readonly Point[],
  knots: readonly number[],
  degree: number,
  span: number,
  at: number,
): Point {
  let row = control.slice(span - degree, span + 1);
  for (let level = 1; level <= degree; level++) {
    row = row.slice(1).map((point, i): Point => {
      const before = row[i] ?? point;
      const index = span - degree + level + i;
      const low = knots[index] ?? 0;
      const width = (knots[index + degree + 1 - level] ?? 0) - low;
      const part = width > 0 ? (at - low) / width : 0;
      return [before[0] + (point[0] - before[0]) * part, before[1] + (point[1] - before[1]) * part];
    });
  }
  return row[0] ?? [0, 0];
}
