import { produce } from 'immer';
import type { Job } from '../../graph/document.ts';
import { memoise } from '../../graph/memo.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import { plantFault } from './plant.ts';
import type { Condition, Fault, Probe } from './types.ts';

/** Losses nearer than this stand at one place, m. */
const HERE = 1e-6;

/** What a scheme would show to instruments, with one fault in it or none; each condition is solved once. */
export interface Patient {
  observe(probe: Probe): number | undefined;
  readonly solution: (condition: Condition) => SchemeSolution;
}

/** A job with only what the air of one scheme depends on; the same object for the same job. */
export const onlyAir = memoise(
  (job: Job, schemeId: string): Job => ({
    ...job,
    ...(job.house && { house: { ...job.house, combustion: [] } }),
    blocks: [],
    exits: [],
    underlays: [],
    schemes: job.schemes.filter((scheme) => scheme.id === schemeId),
  }),
);

/**
 * The scheme with a fault in it, really solved; the same for the same fault object. With a window open the kitchen is taken to stand at the
 * pressure of the outdoors; with the filters out nothing hinders the air before the fan.
 */
export const patient = memoise((job: Job, schemeId: string, fault: Fault | null): Patient => {
  const known = new Map<Condition, SchemeSolution>();
  const solution = (condition: Condition): SchemeSolution => {
    let found = known.get(condition);
    if (!found) {
      found = solveScheme(under(condition), schemeId);
      known.set(condition, found);
    }
    return found;
  };
  const under = (condition: Condition): Job =>
    produce(job, (draft) => {
      const gone = condition === 'filters out' && fault?.cause === 'dirty-filter';
      if (fault && !gone) plantFault(draft, job, schemeId, fault);
      if (condition === 'window open') delete draft.house;
    });
  return {
    solution,
    observe(probe) {
      if (probe.kind === 'sound')
        return soundOf(job, schemeId, fault, probe.speed, solution(probe.condition));
      const outcome = solution(probe.condition).speeds[probe.speed]?.outcome;
      return outcome?.solved ? reading(outcome, probe) : undefined;
    },
  };
});

/** A fan that is not as rated sounds as it did, 50 log10 of its speed aside (fan laws, from memory). */
function soundOf(
  job: Job,
  schemeId: string,
  fault: Fault | null,
  speed: number,
  solution: SchemeSolution,
): number | undefined {
  const other = fault?.cause === 'slow-fan' || fault?.cause === 'dirty-filter';
  const heard = other ? patient(job, schemeId, null).solution('as used') : solution;
  const outcome = heard.speeds[speed]?.outcome;
  if (!outcome?.solved) return undefined;
  const slower = fault?.cause === 'slow-fan' ? 50 * Math.log10(1 - fault.size) : 0;
  return outcome.sound.cook.level + slower;
}

/** What an instrument reads at one solved speed; undefined where the place is not on the hood's run. */
export function reading(solved: Solved, probe: Pick<Probe, 'kind' | 'node'>): number | undefined {
  const room = solved.house?.pressure ?? 0;
  switch (probe.kind) {
    case 'hood air':
      return solved.flow;
    case 'cap air': {
      const last = solved.path.at(-1);
      return last === undefined ? undefined : solved.segments.get(last)?.flow;
    }
    case 'collar static':
      return solved.staticPressure;
    case 'duct static': {
      const at = staticBefore(solved, probe.node ?? '');
      return at === undefined ? undefined : at - room;
    }
    case 'house pressure':
      return room;
    case 'sound':
      return solved.sound.cook.level;
  }
}

/** Static pressure just before a node and what is fitted at it, above outdoors, Pa: upstream of every loss that stands there. */
function staticBefore({ profile }: Solved, node: string): number | undefined {
  const point = profile.find(({ at }) => at === node);
  if (!point) return undefined;
  return profile.find(({ distance }) => distance > point.distance - HERE)?.static;
}
