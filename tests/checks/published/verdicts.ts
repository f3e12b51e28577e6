import { airChecks } from './air.ts';
import { bendChecks } from './bends.ts';
import { fanChecks } from './fans.ts';
import {
  agrees,
  type Check,
  type Figure,
  figures,
  span,
  type Tolerance,
  toleranceOf,
  type Value,
} from './figure.ts';
import { fittingChecks } from './fittings.ts';
import { friction } from './friction.ts';
import { disagreements, notComputed } from './reasons.ts';
import { ruleChecks } from './rules.ts';
import { workedChecks } from './worked.ts';

/** Every check by the id of its figure. */
export const checks: ReadonlyMap<string, Check> = new Map([
  ...friction,
  ...bendChecks,
  ...fittingChecks,
  ...ruleChecks,
  ...airChecks,
  ...workedChecks,
  ...fanChecks,
]);

export interface Verdict {
  readonly figure: Figure;
  readonly by: string;
  readonly ours: Value;
  readonly tolerance: Tolerance;
  /** Why another tolerance than the figure's hint was taken. */
  readonly because?: string;
  readonly agrees: boolean;
  /** Why ours differs, for a figure that is known to disagree. */
  readonly reason?: string;
}

/** The model's answer to every figure that it can compute, in the order of the file. */
export function verdicts(): Verdict[] {
  const reasons = spread(disagreements);
  return figures.flatMap((figure) => {
    const check = checks.get(figure.id);
    if (!check) return [];
    const tolerance = check.within?.tolerance ?? toleranceOf(figure);
    const ours = check.ours(figure);
    const reason = reasons.get(figure.id);
    return [
      {
        figure,
        by: check.by,
        ours,
        tolerance,
        agrees: agrees(ours, figure.value, tolerance),
        ...(check.within ? { because: check.within.because } : {}),
        ...(reason === undefined ? {} : { reason }),
      },
    ];
  });
}

/** Why each figure that the model does not compute is left out, by id. */
export function leftOut(): Map<string, string> {
  return new Map([...spread(notComputed)].filter(([id]) => !checks.has(id)));
}

function spread(entries: readonly (readonly [string, string, string])[]): Map<string, string> {
  return new Map(entries.flatMap(([first, last, why]) => span(first, last).map((id) => [id, why] as const)));
}
