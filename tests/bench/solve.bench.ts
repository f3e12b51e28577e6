import { produce } from 'immer';
import { bench, describe } from 'vitest';
import { proposals } from '../../src/advice/proposals.ts';
import type { Job } from '../../src/graph/document.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { exampleJob } from '../support/route-job.ts';

/** One frame of a drag: a new document in which one turn has moved, so that nothing is remembered. */
function frames(schemeId: string, node: number): () => Job {
  let job = exampleJob();
  let step = 0;
  return () => {
    step += 1;
    job = produce(job, (draft) => {
      const at = draft.schemes.find((scheme) => scheme.id === schemeId)?.nodes[node]?.at;
      if (at) at[0] = 2.4 + 0.1 * Math.sin(step);
    });
    return job;
  };
}

describe('a frame of a drag on the example', () => {
  const next = frames('roof', 3);
  bench('move the node (immer)', () => {
    next();
  });
  bench('move, infer', () => {
    inferRoute(next(), 'roof');
  });
  bench('move, infer, solve at four speeds', () => {
    solveScheme(next(), 'roof');
  });
});

describe('after a drag', () => {
  const next = frames('roof', 3);
  bench('all proposals for the bad scheme', () => {
    proposals(next(), 'roof');
  });
});
