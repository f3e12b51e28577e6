/** Writes a function's value and slope at x to out[0] and out[1]. */
export type Fill = (out: Float64Array, x: number) => void;

/** A Newton step this small, relative to x, is rounding. */
const ROUNDING = 1e-15;
/** A Newton step this small that no longer gains has met the noise of the function itself. */
const NOISE = 1e-12;

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
    const step = -value / (out[1] as number);
    if (Math.abs(step) <= ROUNDING * Math.abs(x)) return x + step;
    const gains = Math.abs(value) <= 0.5 * previous;
    if (!gains && Math.abs(step) <= NOISE * Math.abs(x)) return x;
    const inside = x + step > Math.min(below, above) && x + step < Math.max(below, above);
    const next = gains && inside ? x + step : (below + above) / 2;
    if (next === x || next === below || next === above) return next;
    previous = Math.abs(value);
    x = next;
  }
  return x;
}
