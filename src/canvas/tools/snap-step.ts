import type { UnitSystem } from '../../graph/document.ts';
import { FOOT, INCH } from '../../units/index.ts';

const steps: Readonly<Record<UnitSystem, readonly [number, ...number[]]>> = {
  imperial: [
    ...([INCH / 8, INCH / 4, INCH / 2, INCH, 3 * INCH, 6 * INCH] as const),
    ...([FOOT, 2 * FOOT, 5 * FOOT, 10 * FOOT] as const),
  ],
  metric: [0.001, 0.005, 0.01, 0.05, 0.1, 0.5, 1, 5],
};

/** A pointer within 8 px of a corner of the grid, wherever it is: 11 px between the lines. */
const WIDEST = 11;

/**
 * The grid that the pointer is held to at a zoom, m: the coarsest round step of the user's unit whose
 * corners leave no gap, so that every length drawn by hand comes out round; 1/8 in or 1 mm at finest.
 */
export function snapStep(scale: number, units: UnitSystem): number {
  const [finest, ...coarser] = steps[units];
  return coarser.findLast((step) => step * scale <= WIDEST) ?? finest;
}
