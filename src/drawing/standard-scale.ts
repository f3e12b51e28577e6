import type { UnitSystem } from '../graph/document.ts';

/** A scale that drawings are made at. */
export interface StandardScale {
  /** How many times smaller than life. */
  readonly ratio: number;
  /** `1:50`, or what an inch scale is called: `1/4″ = 1′-0″`. */
  readonly text: string;
}

const round = [5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000];

/** Inches on paper to a foot, as they are written and as a number. */
const inches = [
  ['3', 3],
  ['1 1/2', 1.5],
  ['1', 1],
  ['3/4', 3 / 4],
  ['1/2', 1 / 2],
  ['3/8', 3 / 8],
  ['1/4', 1 / 4],
  ['3/16', 3 / 16],
  ['1/8', 1 / 8],
  ['3/32', 3 / 32],
  ['1/16', 1 / 16],
  ['1/32', 1 / 32],
  ['1/64', 1 / 64],
] as const;

/**
 * The scales in use, the largest drawing first: those of ISO 5455 with 1:25, or architects' inches to a foot
 * (common practice).
 */
export const standardScales: Readonly<Record<UnitSystem, readonly StandardScale[]>> = {
  metric: round.map((ratio) => ({ ratio, text: `1:${ratio}` })),
  imperial: inches.map(([text, value]) => ({ ratio: 12 / value, text: `${text}″ = 1′-0″` })),
};

/** The largest standard scale at which `fits` holds; the smallest of all where it holds at none. */
export function fittingScale(units: UnitSystem, fits: (ratio: number) => boolean): StandardScale {
  const scales = standardScales[units];
  const found = scales.find(({ ratio }) => fits(ratio)) ?? scales[scales.length - 1];
  if (!found) throw new Error('there are standard scales');
  return found;
}
