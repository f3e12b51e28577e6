import type { Job } from '../../graph/document.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { speedCurve } from '../../graph/speeds.ts';
import { systemCurve } from '../../graph/system-curve.ts';
import { fanTotalPressure } from '../../hydraulics/fan.ts';
import { area } from '../../hydraulics/section.ts';
import type { Measurement } from './types.ts';

/** What the measured air leaves open at one speed. */
export interface Unexplained {
  /** Index into the solution's speeds. */
  readonly speed: number;
  /** Air that was measured, m3/s. */
  readonly flow: number;
  /** Air as drawn, m3/s. */
  readonly drawn: number;
  /** Pressure of the fan's curve at the measured air less what run and house ask for there, Pa. */
  readonly loss: number;
  /** The same as a loss coefficient on the collar's velocity pressure. */
  readonly c: number;
  /** How much of it the measured static pressure at the collar lays on the fan and before it, and on what comes after, Pa. */
  readonly sides: { readonly fan: number; readonly duct: number } | null;
}

/**
 * The loss that the drawing does not explain, at each speed whose air was measured, by inverting the solve:
 * at the measured air the fan's curve gives more than the drawn run asks for, and the difference is lost
 * somewhere. Exact on a single run. Below zero where more air came than the drawing allows.
 */
export function unexplained(
  job: Job,
  solution: SchemeSolution,
  measured: readonly Measurement[],
): Unexplained[] {
  return solution.speeds.flatMap((result, speed) => {
    const { outcome } = result;
    const find = (kind: Measurement['kind']) =>
      measured.find((one) => one.speed === speed && one.kind === kind && one.condition === 'as used');
    const air = find('hood air') ?? find('cap air');
    const hood = job.hoods.find((each) => each.id === result.hood);
    const known = hood && speedCurve(hood, result.speed);
    if (!air || !outcome.solved || !hood || !known?.known) return [];
    const asked = systemCurve(job, solution, speed, [air.value])[0]?.[1];
    if (asked === undefined) return [];
    const given = fanTotalPressure(known.curve, air.value, solution.air);
    const velocityPressure = (solution.air.density * (air.value / area(hood.collar)) ** 2) / 2;
    const gauge = find('collar static')?.value;
    const loss = given - asked;
    return [
      {
        speed,
        flow: air.value,
        drawn: outcome.flow,
        loss,
        c: loss / velocityPressure,
        sides:
          gauge === undefined
            ? null
            : { fan: given - velocityPressure - gauge, duct: gauge + velocityPressure - asked },
      },
    ];
  });
}
