import { words } from '../words/index.ts';
import { monotoneTangents } from './monotone.ts';
import { bracketedRoot } from './root.ts';
import type { Air, FanCurve } from './types.ts';

const says = words.losses.fan;

/** A curve made ready to be read many times. Pressures are in its own basis, at its rated density. */
export interface FanTable {
  readonly kind: 'cubic' | 'linear' | 'power';
  readonly flows: Float64Array;
  readonly pressures: Float64Array;
  /** Slope at each point (cubic), or of the piece that starts there (linear). */
  readonly slopes: Float64Array;
  /** `P0 - b q (q² + creep²)^((c-1)/2)` of a power curve. */
  readonly coefficient: number;
  readonly exponent: number;
  readonly creep: number;
  readonly firstFlow: number;
  readonly firstSlope: number;
  readonly lastFlow: number;
  readonly lastSlope: number;
  /** Beyond `tailFlow` the pressure also falls by `tail (q - tailFlow)²`. */
  readonly tailFlow: number;
  readonly tail: number;
  /** Below the first point the pressure also rises by `head (q - firstFlow)²`. */
  readonly head: number;
  /** `1 / (2 A²)` for a static basis, else 0. */
  readonly velocity: number;
  readonly ratedDensity: number;
  /** Highest of the given pressures. */
  readonly peak: number;
  /** True where the pressure in its own basis never rises with the flow. */
  readonly falling: boolean;
}

const tables = new WeakMap<FanCurve, FanTable>();

/** The prepared table of a curve; curves are plain data that nobody changes, so one table each will do. */
export function fanTable(curve: FanCurve): FanTable {
  let table = tables.get(curve);
  if (table === undefined) {
    table = prepare(curve);
    tables.set(curve, table);
  }
  return table;
}

/** What is wrong with a curve, as the end of a sentence; undefined when it can be used. */
export function fanProblem(curve: FanCurve): string | undefined {
  const { points } = curve;
  if (points.length < 2) return says.fewPoints;
  for (let i = 0; i < points.length; i++) {
    const [q, p] = points[i] as readonly [number, number];
    if (!Number.isFinite(q) || !Number.isFinite(p)) return says.notNumber;
    if (q < 0) return says.negativeFlow;
    if (i > 0 && q <= (points[i - 1] as readonly [number, number])[0]) return says.noRise;
  }
  if (!points.some(([, p]) => p > 0)) return says.noPressure;
  if (!(curve.density > 0)) return says.noDensity;
  if (curve.basis === 'static' && !(curve.collarArea > 0)) return says.noCollar;
  if (curve.interpolation === 'power') return powerProblem(points);
  return undefined;
}

function powerProblem(points: FanCurve['points']): string | undefined {
  if (points.length !== 3 || points[0]?.[0] !== 0) return says.powerPoints;
  const [p0, p1, p2] = points.map((point) => point[1]) as [number, number, number];
  return p0 > p1 && p1 > p2 ? undefined : says.powerRise;
}

function prepare(curve: FanCurve): FanTable {
  const flows = Float64Array.from(curve.points, (point) => point[0]);
  const pressures = Float64Array.from(curve.points, (point) => point[1]);
  const last = flows.length - 1;
  const at = (array: Float64Array, i: number): number => array[i] as number;
  const kind =
    curve.interpolation === 'power' ? 'power' : curve.interpolation === 'linear' ? 'linear' : 'cubic';
  const creep = 1e-6 * at(flows, last);
  let exponent = 1;
  let coefficient = 0;
  let slopes = new Float64Array(last + 1);
  if (kind === 'power') {
    const [near, far] = [at(pressures, 0) - at(pressures, 1), at(pressures, 0) - at(pressures, 2)];
    exponent = Math.log(near / far) / Math.log(at(flows, 1) / at(flows, 2));
    coefficient = near / at(flows, 1) ** exponent;
  } else if (kind === 'linear') {
    for (let i = 0; i < last; i++)
      slopes[i] = (at(pressures, i + 1) - at(pressures, i)) / (at(flows, i + 1) - at(flows, i));
    slopes[last] = at(slopes, last - 1);
  } else {
    slopes = monotoneTangents(flows, pressures);
  }
  const lastFlow = at(flows, last);
  const lastSlope =
    kind === 'power' ? -coefficient * exponent * lastFlow ** (exponent - 1) : at(slopes, last);
  const lastPressure = at(pressures, last);
  const peak = pressures.reduce((a, b) => Math.max(a, b), 0);
  const bend = peak / (lastFlow * lastFlow);
  const flat = lastSlope * lastFlow > -1e-9 * peak;
  const velocity = curve.basis === 'static' ? 1 / (2 * curve.collarArea * curve.collarArea) : 0;
  return {
    kind,
    flows,
    pressures,
    slopes,
    coefficient,
    exponent,
    creep,
    firstFlow: at(flows, 0),
    firstSlope: at(slopes, 0),
    lastFlow,
    lastSlope,
    tailFlow: kind === 'power' || flat || lastPressure <= 0 ? lastFlow : lastFlow - lastPressure / lastSlope,
    tail: velocity * curve.density + (flat ? bend : 0),
    head: at(slopes, 0) * lastFlow > -1e-9 * peak ? bend : 0,
    velocity,
    ratedDensity: curve.density,
    peak,
    falling: pressures.every((p, i) => i === 0 || p <= at(pressures, i - 1)),
  };
}

/**
 * Pressure in the curve's own basis and density, and its slope, written to out[0] and out[1].
 *
 * Past the last point the curve goes on along its end slope, and past zero pressure it falls faster
 * still (a static basis by the velocity pressure on top, so that the total pressure does not turn
 * upward again); a curve that ends level bends down. Below the first point it goes on rising.
 */
function fillOwnPressure(out: Float64Array, table: FanTable, q: number): void {
  const { flows, pressures, slopes, firstFlow, lastFlow } = table;
  if (table.kind === 'power') {
    const square = q * q + table.creep * table.creep;
    const half = (table.exponent - 1) / 2;
    const power = table.coefficient * square ** half;
    out[0] = (pressures[0] as number) - q * power;
    out[1] = -power - (2 * half * q * q * power) / square;
  } else if (q >= lastFlow) {
    out[0] = (pressures[pressures.length - 1] as number) + table.lastSlope * (q - lastFlow);
    out[1] = table.lastSlope;
  } else if (q <= firstFlow) {
    const short = q - firstFlow;
    out[0] = (pressures[0] as number) + (table.firstSlope + table.head * short) * short;
    out[1] = table.firstSlope + 2 * table.head * short;
  } else {
    let i = 1;
    while (q > (flows[i] as number)) i++;
    const q0 = flows[i - 1] as number;
    const p0 = pressures[i - 1] as number;
    const s0 = slopes[i - 1] as number;
    const dq = q - q0;
    if (table.kind === 'linear') {
      out[0] = p0 + s0 * dq;
      out[1] = s0;
    } else {
      const h = (flows[i] as number) - q0;
      const chord = ((pressures[i] as number) - p0) / h;
      const s1 = slopes[i] as number;
      const c2 = (3 * chord - 2 * s0 - s1) / h;
      const c3 = (s0 + s1 - 2 * chord) / (h * h);
      out[0] = p0 + dq * (s0 + dq * (c2 + dq * c3));
      out[1] = s0 + dq * (2 * c2 + dq * 3 * c3);
    }
  }
  const over = q - table.tailFlow;
  if (over > 0) {
    out[0] = (out[0] as number) - table.tail * over * over;
    out[1] = (out[1] as number) - 2 * table.tail * over;
  }
}

/** Total pressure that a prepared fan gives at flow q in air of a density, and its slope, to out[0], out[1]. */
export function fillFan(out: Float64Array, table: FanTable, q: number, density: number): void {
  fillOwnPressure(out, table, q);
  const scale = density / table.ratedDensity;
  const velocity = table.velocity * density;
  out[0] = (out[0] as number) * scale + velocity * q * q;
  out[1] = (out[1] as number) * scale + 2 * velocity * q;
}

/**
 * Total pressure that a fan produces at flow q (m3/s), Pa. A static-basis curve gets back the
 * velocity pressure in its collar, `p_t = p_s + ρ V²/2`; the curve scales with density, the flow
 * does not (fan laws). Between points: the monotone cubic of Fritsch and Carlson, or straight
 * lines; `power` is `P0 - b Q^c` through three points. Outside the points see the fall and rise
 * that {@link fillOwnPressure} states.
 */
export function fanTotalPressure(curve: FanCurve, q: number, air: Air): number {
  const out = new Float64Array(2);
  fillFan(out, fanTable(curve), q, air.density);
  return out[0] as number;
}

/** Derivative of {@link fanTotalPressure} with flow, Pa per m3/s. */
export function fanSlope(curve: FanCurve, q: number, air: Air): number {
  const out = new Float64Array(2);
  fillFan(out, fanTable(curve), q, air.density);
  return out[1] as number;
}

/**
 * Flow at which the pressure in the curve's own basis is zero, m3/s; the highest where a stalling
 * curve has several. Density does not move it.
 */
export function freeDelivery(curve: FanCurve): number {
  const table = fanTable(curve);
  const out = new Float64Array(2);
  const pressure = (q: number): number => {
    fillOwnPressure(out, table, q);
    return out[0] as number;
  };
  let above = Math.max(table.lastFlow, table.tailFlow);
  while (pressure(above) > 0) above *= 2;
  let below = above;
  for (let i = table.flows.length - 1; i >= 0 && pressure(below) <= 0; i--) {
    above = below;
    below = table.flows[i] as number;
  }
  if (pressure(below) <= 0) return 0;
  return bracketedRoot((slots, q) => fillOwnPressure(slots, table, q), above, below, below, out);
}
