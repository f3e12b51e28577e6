import { airOf, viscosityAt } from '../../../src/hydraulics/air.ts';
import { partDrop } from '../../../src/hydraulics/element.ts';
import { type BendQuery, bendLoss } from '../../../src/hydraulics/losses/bends.ts';
import { area, hydraulicDiameter } from '../../../src/hydraulics/section.ts';
import type { Air, LossPart, Section } from '../../../src/hydraulics/types.ts';

/** Short ways of asking the model, for the checks. SI. */

export const POUND = 0.45359237;
export const FOOT = 0.3048;
export const INCH = 0.0254;
export const CFM = FOOT ** 3 / 60;
export const FPM = FOOT / 60;
export const INCH_OF_WATER = 249.08891;
export const GRAVITY = 9.80665;

/** 0.075 lb/ft3 at 20 °C. */
export const standardAir: Air = airOf((0.075 * POUND) / FOOT ** 3, viscosityAt(20));

export const round = (diameter: number): Section => ({ shape: 'round', diameter });
export const roundInches = (inches: number): Section => round(inches * INCH);

export const bendC = (query: Omit<BendQuery, 'section'> & { section?: Section }): number =>
  bendLoss({ section: roundInches(6), ...query }).c;

export function duct(section: Section, length: number, roughness: number): LossPart {
  return {
    kind: 'duct',
    length,
    hydraulicDiameter: hydraulicDiameter(section),
    area: area(section),
    roughness,
    multiplier: 1,
  };
}

/** Pa */
export const ductDrop = (
  section: Section,
  length: number,
  roughness: number,
  flow: number,
  air: Air = standardAir,
): number => partDrop(duct(section, length, roughness), flow, air);

/** Velocity pressure by way of a loss of C = 1, Pa. */
export const velocityPressure = (velocity: number, air: Air = standardAir): number =>
  partDrop({ kind: 'local', c: 1, area: 1 }, velocity, air);

/** Loss of a coefficient at a velocity pressure, both as given, through the same part as in a solve. */
export const lossAt = (c: number, pressure: number): number =>
  partDrop({ kind: 'local', c, area: 1 }, Math.sqrt((2 * pressure) / standardAir.density), standardAir);

/** Where a rising function of x crosses a level between two ends, by halving. */
export function crossing(rising: (x: number) => number, level: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 200 && b - a > 1e-15 * b; i++) {
    const middle = (a + b) / 2;
    if (rising(middle) < level) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}
