/** Below this Reynolds number the flow is laminar. */
export const LAMINAR_LIMIT = 2000;
/** From this Reynolds number on, friction follows Colebrook-White. */
export const TURBULENT_LIMIT = 4000;

/** 2 / ln 10: turns `2 log10` into natural logarithms. */
const TWO_LOG = 2 / Math.LN10;
/** Of the relative roughness in the Colebrook-White equation. */
const ROUGH = 1 / 3.7;

/**
 * The root of `x + 2 log10(ε/3.7 + 2.51 x/Re), `x = 1/√f`, by Halley's method from
 * `start` (0 for none), which converges cubically: once a step is under 2e-5 of x the remaining error is below rounding.
 */
export function colebrookX(re: number, relativeRoughness: number, start: number): number {
  const a = relativeRoughness * ROUGH;
  const b = 2.51 / re;
  let x = start > 0 ? start : -TWO_LOG * Math.log(a + 7 * b);
  for (let i = 0; i < 12; i++) {
    const u = a + b * x;
    const value = x + TWO_LOG * Math.log(u);
    const bu = b / u;
    const slope = 1 + TWO_LOG * bu;
    const step = (2 * value * slope) / (2 * slope * slope + value * TWO_LOG * bu * bu);
    x -= step;
    if (Math.abs(step) <= 2e-5 * x) return x;
  }
  return x;
}

/** `-d ln f / d ln Re` on the Colebrook curve, between 0 (rough) and under 1; from the implicit derivative. */
export function colebrookFall(re: number, relativeRoughness: number, x: number): number {
  const k = TWO_LOG * 2.51;
  return (2 * k) / (re * relativeRoughness * ROUGH + 2.51 * x + k);
}

/**
 * Darcy friction factor from the Colebrook-White equation with constants 3.7 and 2.51, to machine
 * precision. Meant for Re from 4000 up and relative roughness (ε/D) 0 to 0.05; solved for any
 * Re > 0 where a root exists, and NaN for a roughness that is negative or not under 1.
 * Source: Colebrook 1939, as printed in the handbooks.
 */
export function colebrook(re: number, relativeRoughness: number): number {
  if (!(re > 0) || !(relativeRoughness >= 0) || relativeRoughness >= 1) return Number.NaN;
  const x = colebrookX(re, relativeRoughness, 0);
  return 1 / (x * x);
}

/** Slots that {@link fillFrictionGroup} writes and reads. */
export const GROUP = { value: 0, slope: 1, x: 2 } as const;
const slots = new Float64Array(3);

/**
 * The friction group `f Re²`, to which the pressure drop of straight duct is proportional, and its
 * derivative with Re, written to `out` (value, slope, and `1/√f` of the turbulent end as a warm
 * start for the next call; start it at 0). It is what stays finite at rest, where f alone does not:
 *
 * - laminar, Re < 2000: `64 Re`;
 * - turbulent, Re >= 4000: Colebrook's `f Re²`;
 * - between: the cubic that meets both in value and slope. Its end slopes lie well within three
 *   times the chord's, so by Fritsch and Carlson's condition it rises all the way. The true flow
 *   there is intermittent and no law is agreed; the bridge is a choice (common practice).
 *
 * Requires Re >= 0.
 */
export function fillFrictionGroup(out: Float64Array, re: number, relativeRoughness: number): void {
  if (re < LAMINAR_LIMIT) {
    out[GROUP.value] = 64 * re;
    out[GROUP.slope] = 64;
    return;
  }
  const turbulentRe = Math.max(re, TURBULENT_LIMIT);
  const x = colebrookX(turbulentRe, relativeRoughness, out[GROUP.x] ?? 0);
  const fRe = turbulentRe / (x * x);
  const value = fRe * turbulentRe;
  const slope = fRe * (2 - colebrookFall(turbulentRe, relativeRoughness, x));
  out[GROUP.x] = x;
  if (re >= TURBULENT_LIMIT) {
    out[GROUP.value] = value;
    out[GROUP.slope] = slope;
    return;
  }
  const span = TURBULENT_LIMIT - LAMINAR_LIMIT;
  const t = (re - LAMINAR_LIMIT) / span;
  const low = 64 * LAMINAR_LIMIT;
  const rise = value - low;
  const lowSlope = 64 * span;
  const highSlope = slope * span;
  const c2 = 3 * rise - 2 * lowSlope - highSlope;
  const c3 = lowSlope + highSlope - 2 * rise;
  out[GROUP.value] = low + t * (lowSlope + t * (c2 + t * c3));
  out[GROUP.slope] = (lowSlope + t * (2 * c2 + t * 3 * c3)) / span;
}

/**
 * Darcy friction factor at any Reynolds number: laminar `64/Re`, Colebrook, and the bridge between
 * them. Infinite at rest (the drop itself is not: see {@link fillFrictionGroup}); NaN for a
 * negative Re or a roughness outside 0 to 1.
 */
export function frictionFactor(re: number, relativeRoughness: number): number {
  if (!(re >= 0) || !(relativeRoughness >= 0) || relativeRoughness >= 1) return Number.NaN;
  if (re < LAMINAR_LIMIT) return 64 / re;
  slots[GROUP.x] = 0;
  fillFrictionGroup(slots, re, relativeRoughness);
  return (slots[GROUP.value] as number) / (re * re);
}

/** Derivative of {@link frictionFactor} with the Reynolds number, analytic. */
export function frictionFactorSlope(re: number, relativeRoughness: number): number {
  if (!(re >= 0) || !(relativeRoughness >= 0) || relativeRoughness >= 1) return Number.NaN;
  if (re < LAMINAR_LIMIT) return -64 / (re * re);
  slots[GROUP.x] = 0;
  fillFrictionGroup(slots, re, relativeRoughness);
  return ((slots[GROUP.slope] as number) - (2 * (slots[GROUP.value] as number)) / re) / (re * re);
}
