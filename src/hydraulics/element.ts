import { fillFrictionGroup, GROUP } from './friction.ts';
import type { Air, LossPart } from './types.ts';

/**
 * Every loss part is a sum of `weight × unit function of the flow`, and parts that share a unit
 * function (all straight duct of one size and roughness, all coefficients on one area) add up by
 * their weights alone. The network solver leans on that: a run of a hundred lengths of one duct
 * costs one friction factor.
 */
export const UNIT = {
  /** Friction group `f Re²`; a: Re per m3/s, b: relative roughness. */
  friction: 0,
  /** `q (q² + a²)^b`: a power law of exponent 2b + 1, made linear at a creep; a: creep flow, b. */
  power: 1,
  /** `q / √(q² + a²)`: the pull of a flap, full once it is off its seat; a: seat flow. */
  flap: 2,
  /** A Reynolds factor times `q √(q² + a²)`; a: creep flow, b: Re per m3/s. */
  reynolds: 3,
} as const;

/** Factor by Reynolds number, rising Re, as a handbook prints it. */
export interface ReynoldsTable {
  readonly reynolds: readonly number[];
  readonly factor: readonly number[];
}

/** Receives one `weight × unit` of a part. */
export type Emit = (unit: number, a: number, b: number, table: ReynoldsTable | null, weight: number) => void;

/**
 * Reynolds number, on the diameter of a circle of the same area, below which a loss coefficient is
 * taken over by viscosity. A pure `q²` has no slope at rest, and Newton's method would divide by
 * nothing; `q √(q² + q0²)` has. It overstates the loss by less than `(Re0/Re)²/2`: 5e-7 of it at
 * Re 100, 5e-11 at Re 10 000. (That losses go linear at low Re is physics; the place is a choice.)
 */
const CREEP_REYNOLDS = 0.1;
/** The same for a measured part, as a fraction of the flow it was measured at: error under 5e-13 there. */
const CREEP_FRACTION = 1e-6;
/** The same for leakage, as a pressure, Pa: error under 1e-10 at 1 Pa for exponents 0.5 to 1. */
const CREEP_PRESSURE = 1e-8;
/**
 * Leak of a closed flap, as a fraction of the flow that its opening pressure would drive through
 * the open area. It makes the step at opening a steep slope. Common practice.
 */
const FLAP_LEAK = 0.05;

function creepFlow(area: number, air: Air): number {
  const diameter = Math.sqrt((4 * area) / Math.PI);
  return (CREEP_REYNOLDS * air.viscosity * area) / (air.density * diameter);
}

/** Breaks a part into weighted unit functions at the given air. */
export function emitPart(part: LossPart, air: Air, emit: Emit): void {
  switch (part.kind) {
    case 'duct': {
      const d = part.hydraulicDiameter;
      const inverse = air.viscosity / (air.density * d);
      const weight = ((part.multiplier * part.length) / d) * (air.density / 2) * inverse * inverse;
      emit(UNIT.friction, 1 / (inverse * part.area), part.roughness / d, null, weight);
      return;
    }
    case 'local':
      emitLocal(part.c, part.area, air, emit);
      return;
    case 'reynolds-local': {
      const rePerFlow = (air.density * part.hydraulicDiameter) / (part.area * air.viscosity);
      const weight = (part.c * air.density) / (2 * part.area * part.area);
      emit(UNIT.reynolds, creepFlow(part.area, air), rePerFlow, part, weight);
      return;
    }
    case 'flap': {
      emitLocal(part.c, part.area, air, emit);
      if (part.openingPressure === 0) return;
      emit(UNIT.flap, seatFlow(part, air), 0, null, part.openingPressure);
      return;
    }
    case 'power': {
      const creep = part.coefficient * CREEP_PRESSURE ** part.exponent;
      const weight = part.coefficient ** (-1 / part.exponent);
      emit(UNIT.power, creep, (1 / part.exponent - 1) / 2, null, weight);
      return;
    }
    case 'measured': {
      const weight = (part.loss * air.density) / (part.density * part.atFlow * part.atFlow);
      emit(UNIT.power, CREEP_FRACTION * part.atFlow, 0.5, null, weight);
      return;
    }
  }
}

/** The flow about which a flap leaves its seat, m3/s: its pull is full well above it and falls to none at rest. */
export function seatFlow(
  { area, openingPressure }: Extract<LossPart, { kind: 'flap' }>,
  { density }: Pick<Air, 'density'>,
): number {
  return FLAP_LEAK * area * Math.sqrt((2 * openingPressure) / density);
}

function emitLocal(c: number, area: number, air: Air, emit: Emit): void {
  emit(UNIT.power, creepFlow(area, air), 0.5, null, (c * air.density) / (2 * area * area));
}

/**
 * Value and slope of a unit function at flow q, written to `out` at {@link GROUP}'s slots; its `x`
 * slot carries the warm start of friction from call to call. Every unit is odd in q, and rises.
 */
export function fillUnit(
  out: Float64Array,
  unit: number,
  a: number,
  b: number,
  table: ReynoldsTable | null,
  q: number,
): void {
  if (unit === UNIT.friction) {
    fillFrictionGroup(out, Math.abs(q) * a, b);
    if (q < 0) out[GROUP.value] = -(out[GROUP.value] as number);
    out[GROUP.slope] = (out[GROUP.slope] as number) * a;
    return;
  }
  const square = q * q + a * a;
  const root = Math.sqrt(square);
  if (unit === UNIT.power) {
    const power = b === 0.5 ? root : square ** b;
    out[GROUP.value] = q * power;
    out[GROUP.slope] = power + (2 * b * q * q * power) / square;
  } else if (unit === UNIT.flap) {
    out[GROUP.value] = q / root;
    out[GROUP.slope] = (a * a) / (square * root);
  } else {
    fillReynoldsFactor(out, table as ReynoldsTable, Math.abs(q) * b);
    const factor = out[GROUP.value] as number;
    const factorSlope = out[GROUP.slope] as number;
    out[GROUP.value] = factor * q * root;
    out[GROUP.slope] = factor * (root + (q * q) / root) + factorSlope * b * Math.abs(q) * root;
  }
}

/** A handbook's factor at a Reynolds number, linear between its rows and held at its ends. */
function fillReynoldsFactor(out: Float64Array, table: ReynoldsTable, re: number): void {
  const { reynolds, factor } = table;
  const last = reynolds.length - 1;
  out[GROUP.slope] = 0;
  if (re <= (reynolds[0] as number)) {
    out[GROUP.value] = factor[0] as number;
    return;
  }
  if (re >= (reynolds[last] as number)) {
    out[GROUP.value] = factor[last] as number;
    return;
  }
  let i = 1;
  while (re > (reynolds[i] as number)) i++;
  const r0 = reynolds[i - 1] as number;
  const f0 = factor[i - 1] as number;
  const slope = ((factor[i] as number) - f0) / ((reynolds[i] as number) - r0);
  out[GROUP.value] = f0 + slope * (re - r0);
  out[GROUP.slope] = slope;
}

/** A handbook's factor at a Reynolds number: straight between its rows, held at its ends. */
export function reynoldsFactor(table: ReynoldsTable, re: number): number {
  const out = new Float64Array(3);
  fillReynoldsFactor(out, table, re);
  return out[GROUP.value] as number;
}

/** For all parts, of which there are many. */
const slots = new Float64Array(3);

function sumPart(part: LossPart, q: number, air: Air, slot: number): number {
  let sum = 0;
  emitPart(part, air, (unit, a, b, table, weight) => {
    slots[GROUP.x] = 0;
    fillUnit(slots, unit, a, b, table, q);
    sum += weight * (slots[slot] as number);
  });
  return sum;
}

/**
 * Total pressure lost in one part at flow q (m3/s), Pa, with q's sign.
 *
 * - duct: Darcy-Weisbach, `multiplier · f (L/D) ρV²/2`, on the hydraulic diameter and true mean velocity.
 * - local, reynolds-local: `C ρV²/2` on the part's area.
 * - flap: `opening pressure + C ρV²/2` once it is off its seat, so that the coefficient it shows,
 *   `C + opening pressure / velocity pressure`, falls as the flow rises. The same both ways: a flap
 *   met from behind is for the caller to flag. Common practice.
 * - power: the inverse of `Q = coefficient · dp^exponent`.
 * - measured: quadratic through the measured point, scaled with density.
 */
export function partDrop(part: LossPart, q: number, air: Air): number {
  return sumPart(part, q, air, GROUP.value);
}

/** Derivative of {@link partDrop} with flow, Pa per m3/s; above zero for every part that loses anything. */
export function partSlope(part: LossPart, q: number, air: Air): number {
  return sumPart(part, q, air, GROUP.slope);
}

const isPositive = (n: number): boolean => n > 0 && n < Number.POSITIVE_INFINITY;
const isNonNegative = (n: number): boolean => n >= 0 && n < Number.POSITIVE_INFINITY;

/** What is wrong with a part, as the end of a sentence; undefined when a solve can use it. */
export function partProblem(part: LossPart): string | undefined {
  switch (part.kind) {
    case 'duct':
      if (!isNonNegative(part.length)) return 'a duct length that is not a number from 0 up';
      if (!isPositive(part.hydraulicDiameter) || !isPositive(part.area)) return 'a duct without a size';
      if (!isNonNegative(part.roughness) || part.roughness >= part.hydraulicDiameter)
        return 'a roughness outside 0 to the diameter';
      return isNonNegative(part.multiplier) ? undefined : 'a friction multiplier that is not from 0 up';
    case 'local':
      if (!isPositive(part.area)) return 'a loss without an area';
      return isNonNegative(part.c) ? undefined : 'a loss coefficient that is not from 0 up';
    case 'reynolds-local':
      if (!isPositive(part.area) || !isPositive(part.hydraulicDiameter)) return 'a loss without an area';
      if (!isNonNegative(part.c)) return 'a loss coefficient that is not from 0 up';
      return tableProblem(part);
    case 'flap':
      if (!isPositive(part.area)) return 'a flap without an area';
      if (!isNonNegative(part.openingPressure)) return 'an opening pressure that is not from 0 up';
      return isNonNegative(part.c) ? undefined : 'a loss coefficient that is not from 0 up';
    case 'power':
      if (!isPositive(part.coefficient)) return 'a leakage coefficient that is not above 0';
      return part.exponent >= 0.3 && part.exponent <= 1 ? undefined : 'a leakage exponent outside 0.3 to 1';
    case 'measured':
      if (!isPositive(part.atFlow) || !isPositive(part.density)) return 'a measured loss without its flow';
      return isNonNegative(part.loss) ? undefined : 'a measured loss that is not from 0 up';
  }
}

/** Refuses a Reynolds table that falls so fast that the loss would fall with the flow. */
function tableProblem({ reynolds, factor }: ReynoldsTable): string | undefined {
  if (reynolds.length === 0 || reynolds.length !== factor.length) return 'an uneven Reynolds table';
  for (let i = 0; i < reynolds.length; i++) {
    if (!isPositive(reynolds[i] as number) || !isPositive(factor[i] as number))
      return 'a Reynolds table with a value that is not above 0';
    if (i === 0) continue;
    const step = (reynolds[i] as number) - (reynolds[i - 1] as number);
    if (!(step > 0)) return 'a Reynolds table that does not rise';
    const slope = ((factor[i] as number) - (factor[i - 1] as number)) / step;
    if (!(slope * (reynolds[i] as number) + 2 * (factor[i] as number) > 0))
      return 'a Reynolds table that falls faster than the square of the flow';
  }
  return undefined;
}
