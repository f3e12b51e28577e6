/**
 * Tangents of the piecewise cubic through (x, y) that does not overshoot its points: in each piece
 * the cubic rises or falls all the way if its points do. x must rise.
 *
 * Source: F. N. Fritsch and R. E. Carlson, Monotone Piecewise Cubic Interpolation, 1980, from
 * memory: mean of the neighbouring chords, level at a turning point, chord slopes at the ends,
 * then shortened onto the circle of radius 3.
 */
export function monotoneTangents(x: Float64Array, y: Float64Array): Float64Array<ArrayBuffer> {
  const last = x.length - 1;
  const chord = new Float64Array(last);
  for (let i = 0; i < last; i++)
    chord[i] = ((y[i + 1] as number) - (y[i] as number)) / ((x[i + 1] as number) - (x[i] as number));
  const tangents = new Float64Array(last + 1);
  tangents[0] = chord[0] as number;
  tangents[last] = chord[last - 1] as number;
  for (let i = 1; i < last; i++) {
    const before = chord[i - 1] as number;
    const after = chord[i] as number;
    tangents[i] = before * after > 0 ? (before + after) / 2 : 0;
  }
  for (let i = 0; i < last; i++) {
    const slope = chord[i] as number;
    if (slope === 0) {
      tangents[i] = 0;
      tangents[i + 1] = 0;
      continue;
    }
    const alpha = (tangents[i] as number) / slope;
    const beta = (tangents[i + 1] as number) / slope;
    const length = Math.hypot(alpha, beta);
    if (length > 3) {
      tangents[i] = ((3 * alpha) / length) * slope;
      tangents[i + 1] = ((3 * beta) / length) * slope;
    }
  }
  return tangents;
}
