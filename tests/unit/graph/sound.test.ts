import { describe, expect, it } from 'vitest';
import type { Hood, Job, Vec3 } from '../../../src/graph/document.ts';
import type { Solved } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { addLevels } from '../../../src/hydraulics/decibel.ts';
import { exampleJob, runThrough, solvedAtFull } from '../../support/route-job.ts';

const points: Vec3[] = [
  [0, 0, 1.8],
  [0, 0, 2.4],
  [6, 0, 2.4],
  [6, 4, 2.4],
];

/** The example's hood on a run whose duct rules. */
function run(diameter: number, change: (hood: Hood) => Hood = (hood) => hood): Job {
  const job = runThrough(points, { duct: { shape: 'round', diameter }, bend: 'smooth' });
  const [hood] = exampleJob().hoods as [Hood];
  return { ...job, hoods: [change(hood)] };
}

const solve = (job: Job) => solveScheme(job, job.schemes[0]?.id ?? '');
const full = (diameter: number) => solvedAtFull(solve(run(diameter)));

function speedsOf(diameter: number): Solved[] {
  return solve(run(diameter)).speeds.map(({ outcome }) => {
    if (!outcome.solved) throw new Error(outcome.reason);
    return outcome;
  });
}

describe('sound', () => {
  it('and air together: a smaller duct is louder and weaker, at the cook and outside', () => {
    const sizes = [0.2032, 0.1778, 0.1524, 0.127].map(full);
    for (const [i, small] of sizes.entries()) {
      const large = sizes[i - 1];
      if (!large) continue;
      expect(small.flow).toBeLessThan(large.flow);
      expect(small.sound.cook.level).toBeGreaterThan(large.sound.cook.level);
      expect(small.sound.outside.level).toBeGreaterThan(large.sound.outside.level);
    }
  });

  it('of a fan that is choked stays as loud as at the loudest point of its curve', () => {
    const [tight, tighter] = [full(0.1016), full(0.0762)];
    expect(tighter.flow).toBeLessThan(0.6 * tight.flow);
    expect(tighter.sound.cook.byCause.get('fan')).toBe(tight.sound.cook.byCause.get('fan'));
  });

  it('rises with the speed', () => {
    const levels = speedsOf(0.2032).map(({ sound }) => sound.cook.level);
    expect(levels).toEqual([...levels].sort((a, b) => a - b));
  });

  it('is the sum of its causes on energy', () => {
    for (const at of [full(0.1524).sound.cook, full(0.1524).sound.outside]) {
      expect(addLevels([...at.byCause.values()])).toBeCloseTo(at.level, 9);
      expect([...at.byCause.keys()]).toEqual(expect.arrayContaining(['fan', 'straight duct', 'bend', 'cap']));
    }
  });

  it('of the fan is its rated sound where it works at the point that it was rated at', () => {
    const open = run(0.2032, (hood) => ({
      ...hood,
      speeds: [
        {
          name: 'one',
          pressureBasis: 'static',
          density: 1.2,
          curve: [
            [0, 25],
            [0.1, 24.908891],
            [0.12, 0],
          ],
          sound: 50,
        },
      ],
    }));
    const solved = solvedAtFull(solve({ ...open, air: { ...open.air, elevation: 0 } }));
    const fan = solved.sound.cook.byCause.get('fan') ?? 0;
    const shift = 10 * Math.log10(solved.flow / 0.1);
    expect(Math.abs(fan - (50 + shift))).toBeLessThan(6);
    expect(solved.sound.assumptions[0]).toMatch(/rated 50 dBA .* 25 Pa \(0\.1 in w\.g\.\)/);
  });

  it('without a rating is estimated, and says so', () => {
    const bare = run(0.2032, (hood) => ({
      ...hood,
      speeds: hood.speeds.map(({ sound: _, ...speed }) => speed),
    }));
    const { sound } = solvedAtFull(solve(bare));
    expect(sound.cook.level).toBeGreaterThan(30);
    expect(sound.assumptions[0]).toMatch(/No sound is given/);
  });

  it('always carries its uncertainty and where it is heard', () => {
    const { sound } = full(0.2032);
    expect(sound.uncertainty).toBe(5);
    expect(sound.assumptions.at(-1)).toMatch(/m² absorption/);
  });
});
