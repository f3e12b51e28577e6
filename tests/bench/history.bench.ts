import { produce } from 'immer';
import { bench, describe } from 'vitest';
import type { Job } from '../../src/graph/document.ts';
import { moveNodes } from '../../src/graph/edits/index.ts';
import { commit, startHistory, undo } from '../../src/graph/history.ts';
import { drawn } from '../support/drawn.ts';

/** The small job with one run of many legs. */
function long(segments: number): Job {
  return produce(drawn(), (job) => {
    const scheme = job.schemes[0];
    if (!scheme) return;
    scheme.nodes = Array.from({ length: segments + 1 }, (_, i) => ({
      id: `n${i}`,
      at: [i, i % 2, 2],
      role: 'turn',
    }));
    scheme.segments = Array.from({ length: segments }, (_, i) => ({
      id: `d${i}`,
      from: `n${i}`,
      to: `n${i + 1}`,
    }));
  });
}

for (const count of [50, 1000, 20_000])
  describe(`${count} segments`, () => {
    const start = startHistory(long(count));
    const middle = `n${count / 2}`;
    bench('preview of one node moved', () => {
      produce(start.job, (job) => moveNodes(job, 's1', [middle], [0.1, 0, 0]));
    });
    const moved = commit(start, 'Move', (job) => moveNodes(job, 's1', [middle], [0.1, 0, 0]));
    bench('commit of one node moved', () => {
      commit(start, 'Move', (job) => moveNodes(job, 's1', [middle], [0.1, 0, 0]));
    });
    bench('undo of it', () => {
      undo(moved);
    });
  });
