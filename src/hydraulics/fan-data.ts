import { formatNumber } from '../units/index.ts';
import { words } from '../words/index.ts';
import type { FanCurve } from './types.ts';

const says = words.losses.fanData;

/** What a curve refers to, whichever way its points were come by. */
export interface FanBasis {
  readonly basis: FanCurve['basis'];
  /** Area behind the velocity pressure of a static basis, m2. */
  readonly collarArea: number;
  /** Rated air density, kg/m3. */
  readonly density: number;
}

/** A curve made from less than a curve, with the sentence that must stand beside its results. */
export interface MadeCurve {
  readonly curve: FanCurve;
  readonly assumption: string;
}

/**
 * Shut-off pressure taken for a fan of which only one flow is known, Pa (about 1 in w.g.). An
 * assumption: kitchen hoods are found from about half to twice this (common practice).
 */
export const ASSUMED_SHUT_OFF = 250;

/** `p = P0 - b Q²` through shut-off and one more point, as a power curve. */
function parabola(shutOff: number, middleFlow: number, endFlow: number, b: number, on: FanBasis): FanCurve {
  const at = (q: number): readonly [number, number] => [q, shutOff - b * q * q];
  return {
    points: [[0, shutOff], at(middleFlow), at(endFlow)],
    basis: on.basis,
    collarArea: on.collarArea,
    density: on.density,
    interpolation: 'power',
  };
}

/**
 * A curve from two certified points [m3/s, Pa]: the parabola `p = P0 - b Q²` through both, carried
 * on to shut-off and to free delivery. Undefined where the point of more flow does not have less
 * pressure. Common practice.
 */
export function fromTwoPoints(
  one: readonly [number, number],
  other: readonly [number, number],
  on: FanBasis,
): MadeCurve | undefined {
  const [[q1, p1], [q2, p2]] = one[0] < other[0] ? [one, other] : [other, one];
  if (!(q1 >= 0 && q2 > q1 && p1 > p2)) return undefined;
  const b = (p1 - p2) / (q2 * q2 - q1 * q1);
  const shutOff = p1 + b * q1 * q1;
  const middle = q1 > 0 ? q1 : q2 / 2;
  return {
    curve: parabola(shutOff, middle, q2, b, on),
    assumption: says.twoPoints,
  };
}

/**
 * A curve from a free-air rating (m3/s at no pressure) and a shut-off pressure (Pa at no flow): the
 * parabola between them. Refuses values that are not above zero by returning undefined. Common practice.
 */
export function fromFreeAir(flow: number, shutOffPressure: number, on: FanBasis): MadeCurve | undefined {
  if (!(flow > 0 && shutOffPressure > 0)) return undefined;
  return {
    curve: parabola(shutOffPressure, flow / 2, flow, shutOffPressure / (flow * flow), on),
    assumption: says.freeAir,
  };
}

/**
 * A curve from one advertised flow (m3/s), taken as free air, with a shut-off pressure that is an
 * assumption: {@link ASSUMED_SHUT_OFF} unless another is given.
 */
export function fromSingle(
  flow: number,
  on: FanBasis,
  assumedShutOffPressure: number = ASSUMED_SHUT_OFF,
): MadeCurve | undefined {
  const made = fromFreeAir(flow, assumedShutOffPressure, on);
  return (
    made && {
      curve: made.curve,
      assumption: says.single(Math.round(assumedShutOffPressure)),
    }
  );
}

/**
 * The same fan at another speed by the fan laws: flow with the speed ratio, pressure with its
 * square. Undefined for a ratio that is not above zero.
 */
export function scaledBy(curve: FanCurve, speedRatio: number): MadeCurve | undefined {
  if (!(speedRatio > 0 && speedRatio < Number.POSITIVE_INFINITY)) return undefined;
  return {
    curve: {
      ...curve,
      points: curve.points.map(([q, p]) => [q * speedRatio, p * speedRatio * speedRatio] as const),
    },
    assumption: says.scaled(formatNumber(speedRatio, 3)),
  };
}

/** A speed as a data sheet gives it: one of the optional fields, SI. */
export interface SpeedData {
  readonly name: string;
  readonly pressureBasis: FanCurve['basis'];
  readonly density: number;
  readonly curve?: FanCurve['points'] | undefined;
  readonly certified?: readonly [readonly [number, number], readonly [number, number]] | undefined;
  readonly freeAir?: { readonly flow: number; readonly shutOffPressure: number } | undefined;
  readonly single?:
    | { readonly flow: number; readonly assumedShutOffPressure?: number | undefined }
    | undefined;
  readonly scaledFrom?: { readonly speed: string; readonly ratio: number } | undefined;
}

/** A speed's curve with the assumptions behind it, none for a full curve. */
export interface SpeedCurve {
  readonly curve: FanCurve;
  readonly assumptions: readonly string[];
}

/**
 * The curve of one of a hood's speeds, from whatever is given of it. Undefined where nothing usable
 * is given, or speeds are scaled from one another in a ring.
 */
export function curveOf(
  speeds: readonly SpeedData[],
  index: number,
  collarArea: number,
): SpeedCurve | undefined {
  return curveFrom(speeds, speeds[index], collarArea, []);
}

function curveFrom(
  speeds: readonly SpeedData[],
  speed: SpeedData | undefined,
  collarArea: number,
  passed: readonly SpeedData[],
): SpeedCurve | undefined {
  if (speed === undefined || passed.includes(speed)) return undefined;
  const on: FanBasis = { basis: speed.pressureBasis, collarArea, density: speed.density };
  if (speed.curve) return { curve: { points: speed.curve, ...on }, assumptions: [] };
  if (speed.scaledFrom) {
    const { speed: name, ratio } = speed.scaledFrom;
    const other = speeds.find((candidate) => candidate.name === name);
    const base = curveFrom(speeds, other, collarArea, [...passed, speed]);
    const made = base && scaledBy(base.curve, ratio);
    return made && { curve: made.curve, assumptions: [...base.assumptions, made.assumption] };
  }
  const made = madeFrom(speed, on);
  return made && { curve: made.curve, assumptions: [made.assumption] };
}

function madeFrom(speed: SpeedData, on: FanBasis): MadeCurve | undefined {
  if (speed.certified) return fromTwoPoints(speed.certified[0], speed.certified[1], on);
  if (speed.freeAir) return fromFreeAir(speed.freeAir.flow, speed.freeAir.shutOffPressure, on);
  if (speed.single) return fromSingle(speed.single.flow, on, speed.single.assumedShutOffPressure);
  return undefined;
}
