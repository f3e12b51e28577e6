import { partDrop } from '../hydraulics/element.ts';
import type { Job } from './document.ts';
import { schemeOf } from './infer.ts';
import { planOf } from './plan.ts';
import type { SchemeSolution } from './solution.ts';

/**
 * Total pressure that the run and the house ask of a hood's fan at each of `flows` (m3/s), as [flow, Pa];
 * none where that speed was not solved. The air divides at junctions as it does where the fan works, the
 * losses of junctions go with the square of the flow, and booster fans stay as they are; so the curve is
 * exact at the working point and on a single run, and near it elsewhere.
 */
export function systemCurve(
  job: Job,
  solution: SchemeSolution,
  speed: number,
  flows: readonly number[],
): (readonly [number, number])[] {
  const outcome = solution.speeds[speed]?.outcome;
  if (!outcome?.solved || !(outcome.flow > 0)) return [];
  const { air } = solution;
  const legs = planOf(solution.route, schemeOf(job, solution.schemeId)).legs;
  const boosters = outcome.boosters.reduce((sum, booster) => sum + booster.pressure, 0);
  return flows.map((flow) => {
    const scale = flow / outcome.flow;
    let sum = -boosters + housePart(job, outcome.house, flow - outcome.flow);
    for (const id of outcome.path) {
      const leg = legs.find((each) => each.id === id);
      const result = outcome.segments.get(id);
      if (!leg || !result) continue;
      const q = result.flow * scale;
      sum += partDrop(leg.duct, q, air);
      for (const fitting of outcome.fittings.filter((each) => each.segment === id)) {
        const planned = leg.fittings.find((each) => each.id === fitting.id);
        sum += planned
          ? planned.loss.parts.reduce((drop, part) => drop + partDrop(part, q, air), 0)
          : fitting.loss * scale * scale;
      }
    }
    return [flow, sum] as const;
  });
}

/** How far the house stands below outdoors when the hoods move `more` m3/s than where they work, Pa. */
function housePart(
  job: Job,
  house: { readonly pressure: number; readonly leakage: number } | null,
  more: number,
): number {
  if (!house || !job.house || !(house.leakage > 0)) return 0;
  const leaks = Math.max(0, house.leakage + more);
  return -house.pressure * (leaks / house.leakage) ** (1 / job.house.leakageExponent);
}
