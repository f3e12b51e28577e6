import { readFileSync } from 'node:fs';
import {
  type Job,
  type Node,
  type Scheme,
  type Segment,
  job as schema,
  type Vec3,
} from '../../src/graph/document.ts';
import type { SchemeSolution, Solved } from '../../src/graph/solution.ts';
import { emptyJob } from '../../src/graph/templates.ts';

/** The example that ships with the program. */
export function exampleJob(): Job {
  return schema.parse(JSON.parse(readFileSync('fixtures/example.gentlebend.json', 'utf8')));
}

/** A scheme drawn by its parts on an otherwise empty job with one invented hood. */
export function jobOf(
  nodes: readonly Node[],
  segments: readonly Segment[],
  defaults?: Partial<Scheme['defaults']>,
): Job {
  const job = emptyJob('imperial');
  const [scheme] = job.schemes as [Scheme];
  return {
    ...job,
    schemes: [
      {
        ...scheme,
        defaults: { ...scheme.defaults, ...defaults },
        nodes: [...nodes],
        segments: [...segments],
      },
    ],
  };
}

/** One run through the given points: a hood at the first, a plain open cap at the last, turns between. */
export function runThrough(
  points: readonly Vec3[],
  defaults?: Partial<Scheme['defaults']>,
  cap: string | null = 'open',
): Job {
  const last = points.length - 1;
  const nodes = points.map((at, i): Node => {
    if (i === 0) return { id: 'n0', at, role: 'hood', hood: 'hood-1' };
    if (i === last && cap !== null) return { id: `n${i}`, at, role: 'cap', cap };
    return { id: `n${i}`, at, role: 'turn' };
  });
  const segments = points
    .slice(1)
    .map((_, i): Segment => ({ id: `d${i + 1}`, from: `n${i}`, to: `n${i + 1}` }));
  return jobOf(nodes, segments, defaults);
}

/** The only scheme of a job, changed. */
export function withScheme(job: Job, change: (scheme: Scheme) => Scheme): Job {
  return { ...job, schemes: job.schemes.map(change) };
}

/** The outcome at the highest speed; throws with its reason where there is none. */
export function solvedAtFull(solution: SchemeSolution): Solved {
  const outcome = solution.speeds.at(-1)?.outcome;
  if (!outcome) throw new Error('no speed at all');
  if (!outcome.solved) throw new Error(outcome.reason);
  return outcome;
}
