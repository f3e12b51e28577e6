import { produce } from 'immer';
import { bench, describe } from 'vitest';
import { combinations } from '../../src/advice/combinations/search.ts';
import type { Job, Node, Scheme } from '../../src/graph/document.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { exampleJob } from '../support/route-job.ts';

/** The example's kitchen, house and hood with one run of so many legs. */
function longRun(legs: number): Job {
  const job = exampleJob();
  const scheme = job.schemes[0] as Scheme;
  const nodes = Array.from({ length: legs + 1 }, (_, i): Node => {
    const end = i === 0 ? { role: 'hood' as const, hood: job.hoods[0]?.id ?? '' } : undefined;
    const cap = i === legs ? { role: 'cap' as const, cap: 'wall-flap' } : { role: 'turn' as const };
    return { id: `n${i}`, at: [Math.ceil(i / 2), Math.floor(i / 2), 2.3], ...(end ?? cap) };
  });
  const segments = Array.from({ length: legs }, (_, i) => ({
    id: `d${i}`,
    from: `n${i}`,
    to: `n${i + 1}`,
  }));
  return { ...job, schemes: [{ ...scheme, id: 'long', nodes, segments }] };
}

/** What a frame shows: the air and the sound of every speed, and the legs of one. */
function show(job: Job): void {
  const { speeds } = solveScheme(job, 'long');
  for (const { outcome } of speeds) if (outcome.solved) outcome.sound.cook.level;
  const top = speeds.at(-1)?.outcome;
  if (top?.solved) top.segments;
}

describe('a frame of a drag on a run of a thousand legs', () => {
  let job = longRun(1000);
  let step = 0;
  const next = () => {
    step += 1;
    job = produce(job, (draft) => {
      const at = draft.schemes[0]?.nodes[500]?.at;
      if (at) at[0] = 250 + 0.1 * Math.sin(step);
    });
    return job;
  };
  bench('move, infer', () => {
    inferRoute(next(), 'long');
  });
  bench('move, infer, solve, what is shown', () => show(next()));
  bench('the same with nothing known from before', () => show(structuredClone(next())));
});

describe('after a drag', () => {
  let step = 0;
  bench('proposals and their combinations for the bad scheme', () => {
    step += 1;
    const job = produce(exampleJob(), (draft) => {
      draft.air.temperature += 0.01 * step;
    });
    combinations(job, 'roof');
  });
});
