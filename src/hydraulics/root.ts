/** Writes a function's value and slope at x to out[0] and out[1]. */
export type Fill = (out: Float64Array, x: number) => void;

/**
 * The root of a continuous function between a point where it is below zero and one where it is
 * above (on either side of each other), to rounding: Newton's method from `start`, falling back to
 * halving the bracket where Newton leaves it or does not gain.
 */
export function bracketedRoot(
  fill: Fill,
  below: number,
  above: number,
  start: number,
  out: Float64Array,
): number {
  let x = start;
  let previous = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 200; i++) {
    fill(out, x);
    const value = out[0] as number;
    if (value === 0) return x;
    if (value < 0) below = x;
    else above = x;
    let next = x - value / (out[1] as number);
    const inside = next > Math.min(below, above) && next < Math.max(below, above);
    if (!inside || Math.abs(value) > 0.5 * previous) next = (below + above) / 2;
    previous = Math.abs(value);
    if (Math.abs(next - x) <= 4e-16 * Math.abs(x)) return next;
    x = next;
  }
  return x;
}
