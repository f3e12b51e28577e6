import type { Job, Scheme } from '../document.ts';
import { schemeOf } from '../infer.ts';
import { type Places, placesOf } from '../places.ts';
import { type PlannedFitting, type PlannedLeg, planOf } from '../plan.ts';
import type { FittingResult, SchemeSolution, SegmentResult, Solved, SpeedResult } from '../solution.ts';

/** What a derivation draws on: one speed of one solved scheme. */
export interface Scene {
  readonly job: Job;
  readonly scheme: Scheme;
  readonly solution: SchemeSolution;
  /** Index into the solution's speeds. */
  readonly speed: number;
  readonly result: SpeedResult;
  readonly solved: Solved;
  readonly places: Places;
  leg(id: string): { readonly plan: PlannedLeg; readonly result: SegmentResult } | undefined;
  /** `plan` is absent where ducts join: that loss is looked up with the flows. */
  fitting(
    id: string,
  ):
    | { readonly leg: PlannedLeg; readonly plan: PlannedFitting | undefined; readonly result: FittingResult }
    | undefined;
}

/** The scene of a speed, or undefined where that speed has no numbers. */
export function sceneOf(job: Job, solution: SchemeSolution, speed: number): Scene | undefined {
  const result = solution.speeds[speed];
  if (!result?.outcome.solved) return undefined;
  const solved = result.outcome;
  const scheme = schemeOf(job, solution.schemeId);
  const legs = new Map(planOf(solution.route, scheme).legs.map((leg) => [leg.id, leg]));
  const fittings = new Map(solved.fittings.map((fitting) => [fitting.id, fitting]));
  return {
    job,
    scheme,
    solution,
    speed,
    result,
    solved,
    places: placesOf(solution.route, job.blocks),
    leg(id) {
      const planned = legs.get(id);
      const segment = solved.segments.get(id);
      return planned && segment && { plan: planned, result: segment };
    },
    fitting(id) {
      const result = fittings.get(id);
      const leg = result && legs.get(result.segment);
      const planned = leg?.fittings.find((fitting) => fitting.id === id);
      return leg && result && { leg, plan: planned, result };
    },
  };
}
