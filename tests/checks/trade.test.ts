import { describe, expect, it } from 'vitest';
import type { Job, Vec3 } from '../../src/graph/document.ts';
import { schemeOf } from '../../src/graph/infer.ts';
import { planOf } from '../../src/graph/plan.ts';
import type { FittingResult, Solved } from '../../src/graph/solution.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { partDrop } from '../../src/hydraulics/element.ts';
import { runThrough, solvedAtFull } from '../support/route-job.ts';

/** Facts of the trade on whole drawn runs. Source of each: common practice, unless its name says otherwise. */

const solve = (job: Job): Solved => solvedAtFull(solveScheme(job, 'scheme-1'));

describe('a bend at r/D 0.5 against one at 1.5, both smooth', () => {
  const points: Vec3[] = [
    [0, 0, 0],
    [0, 0, 2],
    [0, 3, 2],
  ];
  const of = (radiusRatio: number) => solve(runThrough(points, { bend: { kind: 'smooth', radiusRatio } }));
  const bendOf = (solved: Solved) => solved.fittings.find(({ kind }) => kind === 'bend') as FittingResult;
  const [tight, gentle] = [of(0.5), of(1.5)];

  it.each(['c', 'loss', 'equivalentLength', 'share'] as const)('costs more in its %s', (number) => {
    expect(bendOf(tight)[number]).toBeGreaterThan(bendOf(gentle)[number]);
  });

  it('lets less air out', () => {
    expect(tight.flow).toBeLessThan(gentle.flow);
  });

  it('makes the fan work at a higher static pressure', () => {
    expect(tight.staticPressure).toBeGreaterThan(gentle.staticPressure);
  });
});

describe('a run squeezed from 8 in to 6 in, friction only, at the same pressure', () => {
  /** Flow at which 100 ft of straight galvanized duct loses 250 Pa, m3/s, by bisection. */
  function flowAt(diameter: number): number {
    const duct = { shape: 'round', diameter } as const;
    const job = runThrough(
      [
        [0, 0, 0],
        [0, 0, 30.48],
      ],
      { duct },
    );
    const solution = solveScheme(job, 'scheme-1');
    const part = planOf(solution.route, schemeOf(job, 'scheme-1')).legs[0]?.duct;
    if (!part) throw new Error('no duct');
    let [low, high] = [0, 2];
    for (let i = 0; i < 80; i++) {
      const middle = (low + high) / 2;
      if (partDrop(part, middle, solution.air) < 250) low = middle;
      else high = middle;
    }
    return low;
  }

  it('carries about (6/8)^2.5 of the air, roughly half', () => {
    const ratio = flowAt(0.1524) / flowAt(0.2032);
    expect(Math.abs(ratio / 0.75 ** 2.5 - 1)).toBeLessThan(0.06);
    expect(ratio).toBeGreaterThan(0.43);
    expect(ratio).toBeLessThan(0.53);
  });
});
