import { bench, describe } from 'vitest';
import type { Block, Job, Scheme } from '../../src/graph/document.ts';
import { fitFindings } from '../../src/graph/fit.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { emptyJob } from '../../src/graph/templates.ts';

/** Joists over the whole floor, in pieces of 0.3 m, and a run of legs of 0.4 m that zigzags below them. */
function room(blocks: number, segments: number, height: number): Job {
  const job = emptyJob('metric');
  const scheme = job.schemes[0] as Scheme;
  const nodes = Array.from({ length: segments + 1 }, (_, i): Scheme['nodes'][0] => ({
    id: `n${i}`,
    at: [(i % 70) * 0.4, Math.floor(i / 70) * 0.6 + (i % 2) * 0.3, height],
    role: 'turn',
  }));
  const legs = nodes.slice(1).map(({ id }, i) => ({ id: `d${i}`, from: `n${i}`, to: id }));
  const joists = Array.from({ length: blocks }, (_, i): Block => {
    const [x, y] = [(i % 70) * 0.4, Math.floor(i / 70) * 0.4];
    return { id: `b${i}`, name: '', kind: 'joist', min: [x, y, 2.5], max: [x + 0.04, y + 0.3, 2.74] };
  });
  return { ...job, blocks: joists, schemes: [{ ...scheme, nodes, segments: legs }] };
}

for (const [blocks, segments] of [
  [30, 5],
  [5000, 100],
  [5000, 1000],
] as const)
  describe(`${segments} segments among ${blocks} blocks`, () => {
    for (const [words, height] of [
      ['clear of them', 2.3],
      ['each into some', 2.55],
    ] as const) {
      const job = room(blocks, segments, height);
      const route = inferRoute(job, 'scheme-1');
      bench(words, () => {
        fitFindings(job, { ...route });
      });
    }
  });
