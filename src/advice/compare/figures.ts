import { type BudgetCause, pressureBudget } from '../../graph/budget.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { placesOf } from '../../graph/places.ts';
import type { Finding, Severity } from '../../graph/route.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import { words } from '../../words/index.ts';
import { type Cost, costOf } from '../cost/price.ts';
import { outcomeAt } from '../proposals/effects.ts';
import { requiredAirflow } from '../required.ts';

export const causes = [
  'straight duct',
  'bends',
  'size changes',
  'cap',
  'parts in line',
  'junctions',
  'house',
] as const;
/** What uses up the fan's pressure. */
export type Cause = (typeof causes)[number];

/** One scheme in figures, at the judged speed where a figure belongs to a speed. */
export interface SchemeFigures {
  readonly id: string;
  readonly name: string;
  readonly solution: SchemeSolution;
  /** Null where there is no air at the judged speed; then `reason` says why. */
  readonly solved: Solved | null;
  readonly reason: string | null;
  /** Delivered at each hood's speed, m3/s; null where not solved. */
  readonly air: readonly { readonly key: string; readonly name: string; readonly flow: number | null }[];
  /** Airflow that the cooktop asks for, m3/s. */
  readonly need: number;
  /** Along the path of the air, Pa; what fans in the run give back is not in it. */
  readonly budget: ReadonlyMap<Cause, number>;
  /** Where the air is fastest, in words; null without air. */
  readonly fastest: { readonly velocity: number; readonly where: string } | null;
  /** Centre line in all, m. */
  readonly length: number;
  readonly turns: number;
  readonly cost: Cost;
  readonly findings: readonly Finding[];
  readonly counts: Readonly<Record<Severity, number>>;
}

/**
 * A scheme in the figures by which it is compared.
 *
 * @param speed index into the solution's speeds
 */
export function figuresOf(job: Job, solution: SchemeSolution, speed: number): SchemeFigures {
  const { route, schemeId, findings } = solution;
  const solved = outcomeAt(solution, speed) ?? null;
  const outcome = solution.speeds[speed]?.outcome;
  const hoods = new Set(solution.speeds.map(({ hood }) => hood));
  const counts = { danger: 0, error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return {
    id: schemeId,
    name: schemeOf(job, schemeId).name,
    solution,
    solved,
    reason: solved ? null : outcome && !outcome.solved ? outcome.reason : words.compare.figures.noAir,
    air: solution.speeds.map(({ hood, hoodName, speed: index, name, outcome: at }) => ({
      key: `${hood}/${index}`,
      name: hoods.size > 1 ? `${hoodName}, ${name}` : name,
      flow: at.solved ? at.flow : null,
    })),
    need: requiredAirflow(job.kitchen).governing.flow,
    budget: solved ? budgetOf(solved) : new Map(),
    fastest: solved?.fastest
      ? {
          velocity: solved.fastest.velocity,
          where: placesOf(route, job.blocks).between(solved.fastest.segment),
        }
      : null,
    length: [...route.segments.values()].reduce((sum, leg) => sum + leg.length, 0),
    turns: [...route.nodes.values()].filter(({ bend }) => bend).length,
    cost: costOf(job, schemeId),
    findings,
    counts,
  };
}

/** What each cause of the whole budget is called where schemes are compared; help is not in it. */
const causeOf: Readonly<Record<BudgetCause, Cause | null>> = {
  house: 'house',
  friction: 'straight duct',
  bends: 'bends',
  transitions: 'size changes',
  junctions: 'junctions',
  dampers: 'parts in line',
  'parts in line': 'parts in line',
  cap: 'cap',
  'helping fans': null,
};

/** Where the pressure goes, Pa by cause, along the path of the air from the hood. */
export function budgetOf(solved: Solved): ReadonlyMap<Cause, number> {
  const budget = new Map<Cause, number>();
  for (const part of pressureBudget(solved)) {
    const cause = causeOf[part.cause];
    if (cause) budget.set(cause, (budget.get(cause) ?? 0) + part.loss);
  }
  return budget;
}
