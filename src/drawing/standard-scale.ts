import type { UnitSystem } from '../graph/document.ts';

/**
 * n of the scales 1 : n in use, the largest drawing first: those of ISO 5455 with 1:25, or architects' inches to a
 * foot (common practice).
 */
export const standardScales: Readonly<Record<UnitSystem, readonly number[]>> = {
  metric: [5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000],
  imperial: [4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768],
};

/** The largest standard scale at which `fits` holds; the smallest of all where it holds at none. */
export function fittingScale(units: UnitSystem, fits: (scale: number) => boolean): number {
  const scales = standardScales[units];
  const found = scales.find(fits) ?? scales[scales.length - 1];
  if (found === undefined) throw new Error('there are standard scales');
  return found;
}
