import { describe, expect, test } from 'vitest';
import type { Hood, Vec3 } from '../../src/graph/document.ts';
import type { Solved } from '../../src/graph/solution.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { exampleJob, runThrough } from '../support/route-job.ts';
import { INCH } from './published/model.ts';

/**
 * Facts of the trade on sound and air together. Source of every one: common practice. They hold for the
 * example's hood (four speeds, 8 in collar) on 35 ft of smooth duct with two bends and an open end, where
 * the duct rules once it is smaller than the collar.
 */

const points: Vec3[] = [
  [0, 0, 1.8],
  [0, 0, 2.4],
  [6, 0, 2.4],
  [6, 4, 2.4],
];

function speedsWith(inches: number): Solved[] {
  const job = runThrough(points, { duct: { shape: 'round', diameter: inches * INCH }, bend: 'smooth' });
  const [hood] = exampleJob().hoods as [Hood];
  return solveScheme({ ...job, hoods: [hood] }, job.schemes[0]?.id ?? '').speeds.map(({ outcome }) => {
    if (!outcome.solved) throw new Error(outcome.reason);
    return outcome;
  });
}

/** What boost is rated to add to high, m3/s. */
const ADDED = 0.283168 - 0.226535;

describe('common practice: sound and air', () => {
  test('a 6 in duct on an 8 in collar is louder by 3 to 8 dB and moves 20 to 35 % less, both together', () => {
    const [wide, narrow] = [speedsWith(8).at(-1), speedsWith(6).at(-1)] as [Solved, Solved];
    const louder = narrow.sound.cook.level - wide.sound.cook.level;
    const less = 1 - narrow.flow / wide.flow;
    expect(louder).toBeGreaterThan(3);
    expect(louder).toBeLessThan(8);
    expect(less).toBeGreaterThan(0.2);
    expect(less).toBeLessThan(0.35);
  });

  test('where a 4 in duct rules, a higher speed is 4 to 9 dB louder and brings under a third of the air it is rated to add', () => {
    const [, , high, boost] = speedsWith(4) as [Solved, Solved, Solved, Solved];
    const louder = boost.sound.cook.level - high.sound.cook.level;
    expect(louder).toBeGreaterThan(4);
    expect(louder).toBeLessThan(9);
    expect((boost.flow - high.flow) / ADDED).toBeLessThan(1 / 3);
    expect(boost.flow).toBeGreaterThan(high.flow);
  });

  test('where the duct is as wide as the collar, most of the air that a higher speed is rated to add arrives', () => {
    const [, , high, boost] = speedsWith(8) as [Solved, Solved, Solved, Solved];
    expect((boost.flow - high.flow) / ADDED).toBeGreaterThan(0.8);
  });
});
