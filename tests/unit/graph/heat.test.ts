import { describe, expect, it } from 'vitest';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { stretchesOf } from '../../../src/graph/heat.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { dewPoint } from '../../../src/hydraulics/heat.ts';
import { runThrough, solvedAtFull, withScheme } from '../../support/route-job.ts';

const north = { id: 'n', name: 'north wall', kind: 'wall', min: [-5, 3, 0], max: [5, 3.2, 3] } as const;
const surroundings = {
  kitchen: { ceilingHeight: 2.44 },
  house: undefined,
  exits: [{ ...north, min: [...north.min] as Vec3, max: [...north.max] as Vec3 }],
};
const hood: Vec3 = [0, 0, 1.8];

describe('duct is cold', () => {
  it('above the ceiling, from where it passes through it', () => {
    const cut = stretchesOf([0, 0, 1.44], [0, 0, 3.44], hood, surroundings);
    expect(cut).toEqual([
      { from: 0, to: expect.closeTo(0.5, 12), cold: false },
      { from: expect.closeTo(0.5, 12), to: 1, cold: true },
    ]);
  });

  it('beyond the outside wall', () => {
    const cut = stretchesOf([0, 0, 2], [0, 4, 2], hood, surroundings);
    expect(cut.map(({ cold }) => cold)).toEqual([false, true]);
    expect(cut[1]?.from).toBeCloseTo(0.8, 12);
  });

  it('nowhere within the kitchen', () => {
    expect(stretchesOf([0, 0, 2], [3, 2, 2], hood, surroundings)).toEqual([{ from: 0, to: 1, cold: false }]);
  });

  it('only above the top storey of a house that has several', () => {
    const house = { storeys: 2 } as NonNullable<Job['house']>;
    expect(
      stretchesOf([0, 0, 2.5], [0, 0, 4.5], hood, { ...surroundings, house }).map(({ cold }) => cold),
    ).toEqual([false]);
  });
});

/** Up through the ceiling, 6 m along the attic, out. */
function attic(change: { outdoors?: number; insulation?: number } = {}) {
  const job = runThrough([
    [0, 0, 1.8],
    [0, 0, 3],
    [0, 6, 3],
  ]);
  const insulated = withScheme(job, (scheme) => ({
    ...scheme,
    segments: scheme.segments.map((segment) => ({ ...segment, insulation: change.insulation ?? 0 })),
  }));
  const air = { ...job.air, temperature: 22, humidity: 0.5, outdoorTemperature: change.outdoors ?? -10 };
  return solveScheme({ ...insulated, air }, job.schemes[0]?.id ?? '');
}

describe('the air along the run', () => {
  it('starts at the temperature of the kitchen and falls from leg to leg', () => {
    const { segments } = solvedAtFull(attic());
    const [riser, run] = [segments.get('d1'), segments.get('d2')];
    expect(riser?.inletTemperature).toBe(22);
    expect(riser?.outletTemperature).toBeLessThan(22);
    expect(run?.inletTemperature).toBe(riser?.outletTemperature);
    expect(run?.outletTemperature).toBeLessThan(run?.inletTemperature ?? 0);
    expect(run?.outletTemperature).toBeGreaterThan(-10);
  });

  it('cools more at a lower speed', () => {
    const ends = attic().speeds.map(({ outcome }) =>
      outcome.solved ? (outcome.segments.get('d2')?.outletTemperature ?? 0) : 0,
    );
    expect(ends).toEqual([...ends].sort((a, b) => a - b));
    expect(new Set(ends).size).toBe(ends.length);
  });

  it('lets water settle where the wall is below the dew point of the kitchen air', () => {
    const run = solvedAtFull(attic()).segments.get('d2');
    expect(run?.wallTemperature).toBeLessThan(dewPoint(22, 0.5));
    expect(run?.condensation.risk).toBe(true);
    expect(solvedAtFull(attic({ outdoors: 18 })).segments.get('d2')?.condensation).toEqual({
      risk: false,
      insulation: 0,
    });
  });

  it('settles none with the insulation that the solution asks for', () => {
    const lowest = (solution: ReturnType<typeof attic>) => {
      const outcome = solution.speeds[0]?.outcome;
      if (!outcome?.solved) throw new Error('solved');
      return [...outcome.segments.values()];
    };
    const needed = Math.max(...lowest(attic()).map((leg) => leg.condensation.insulation ?? 0));
    expect(needed).toBeGreaterThan(0);
    expect(lowest(attic({ insulation: needed })).map((leg) => leg.condensation.risk)).toEqual([false, false]);
  });

  it('is told in a finding with the insulation that prevents it', () => {
    const found = attic().findings.find(({ rule }) => rule === 'condensation');
    expect(found).toMatchObject({
      severity: 'warning',
      message: expect.stringMatching(/below the dew point of the kitchen air/),
      remedy: expect.stringMatching(/of insulation or more/),
    });
    expect(attic({ outdoors: 20 }).findings.map(({ rule }) => rule)).not.toContain('condensation');
  });
});
