import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { planOf } from '../../graph/plan.ts';
import { legResult } from '../../graph/results.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import type { Losses } from './candidate.ts';

/** What a changed scheme would cost with the air of before still in its legs: like for like. */
export function lossesWithTheAirOf(before: Solved, job: Job, after: SchemeSolution): Losses {
  const { legs } = planOf(after.route, schemeOf(job, after.schemeId));
  const results = legs.map((leg) =>
    legResult(leg, before.segments.get(leg.id)?.flow ?? before.flow, after.air, before.totalPressure),
  );
  return {
    segments: new Map(results.map(({ segment }) => [segment.id, segment])),
    fittings: results.flatMap(({ fittings }) => fittings),
  };
}
