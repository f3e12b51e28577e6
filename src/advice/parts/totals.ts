import type { Job } from '../../graph/document.ts';
import { type Cost, costOf } from '../cost/price.ts';
import { boughtOf, type Part } from './part.ts';
import { type CuttingPlan, cuttingOf } from './plan.ts';

/** What a parts list comes to. */
export interface Totals {
  readonly cost: Cost;
  readonly plans: readonly CuttingPlan[];
  /** kg of the parts whose weight is known, and how many lines have none. */
  readonly weight: number;
  readonly unweighed: number;
  /** Metres of duct in the run and bought, and the share of what is bought that lies in no piece. */
  readonly run: number;
  readonly bought: number;
  readonly waste: number;
}

/** The parts of a scheme summed up. @throws RangeError if the job has no scheme of that id */
export function totalsOf(job: Job, schemeId: string): Totals {
  const cost = costOf(job, schemeId);
  const { plans } = cuttingOf(job, schemeId);
  const parts = cost.lines.map(({ part }) => part);
  const sum = (of: (part: Part) => number, kind?: Part['kind']) =>
    parts.reduce((total, part) => (kind && part.kind !== kind ? total : total + of(part)), 0);
  const bought = sum(boughtOf, 'duct');
  const used = plans.reduce((total, plan) => total + plan.used, 0);
  return {
    cost,
    plans,
    weight: sum(({ weight }) => weight ?? 0),
    unweighed: parts.filter(({ weight }) => weight === undefined).length,
    run: sum(({ quantity }) => quantity, 'duct'),
    bought,
    waste: bought > 0 ? Math.max(0, 1 - used / bought) : 0,
  };
}
