import type { Job, Scheme } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { type Places, placesOf } from '../../graph/places.ts';
import type { SchemeSolution, Solved, SpeedResult } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import type { System } from '../../units/index.ts';

/** What a job sheet is about: a scheme of a job, solved. */
export interface Subject {
  readonly job: Job;
  readonly scheme: Scheme;
  readonly solution: SchemeSolution;
  readonly places: Places;
  readonly units: System;
  /** Numbers of the legs, counted from 1 in the order of the air. */
  readonly legNumbers: ReadonlyMap<string, number>;
  /** Of each hood with numbers its highest speed that has them: what schedules and charts are drawn at. */
  readonly designs: readonly Design[];
}

export interface Design {
  /** Index into the solution's speeds. */
  readonly index: number;
  readonly speed: SpeedResult;
  readonly solved: Solved;
}

/** @throws RangeError if the job has no scheme of that id */
export function subjectOf(job: Job, schemeId: string): Subject {
  const solution = solveScheme(job, schemeId);
  const designs = new Map<string, Design>();
  solution.speeds.forEach((speed, index) => {
    if (speed.outcome.solved) designs.set(speed.hood, { index, speed, solved: speed.outcome });
  });
  return {
    job,
    scheme: schemeOf(job, schemeId),
    solution,
    places: placesOf(solution.route, job.blocks),
    units: job.units,
    legNumbers: new Map(solution.route.order.map((id, i) => [id, i + 1])),
    designs: [...designs.values()],
  };
}
