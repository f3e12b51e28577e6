import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/graph/document.ts';
import { limitOf } from '../../../src/graph/house.ts';
import type { HouseResult, SchemeSolution, Solved } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { leakageFlow } from '../../../src/hydraulics/house.ts';
import { exampleJob, runThrough, solvedAtFull } from '../../support/route-job.ts';

type DrawnHouse = NonNullable<Job['house']>;

const house: DrawnHouse = {
  volume: 400,
  ach50: 3,
  leakageExponent: 0.65,
  storeys: 1,
  otherExhaust: [{ name: 'dryer', flow: 0.05 }],
  makeUpAir: null,
  combustion: ['natural-draught water heater'],
};

function solve(change: Partial<DrawnHouse> | null, scheme = 'wall'): SchemeSolution {
  const { house: _, ...job } = exampleJob();
  return solveScheme(change === null ? job : { ...job, house: { ...house, ...change } }, scheme);
}

function houseIn(solved: Solved): HouseResult {
  if (!solved.house) throw new Error('there is a house');
  return solved.house;
}

describe('the house around the kitchen', () => {
  it('lets in through its leaks exactly what all fans take out', () => {
    const result = houseIn(solvedAtFull(solve({})));
    expect(result.leakage).toBeCloseTo(result.hoods + 0.05, 9);
    expect(leakageFlow(house, -result.pressure)).toBeCloseTo(result.leakage, 9);
  });

  it('costs the hood air: a tight house passes less than a leaky one, and both less than none', () => {
    const flow = (change: Partial<DrawnHouse> | null) => solvedAtFull(solve(change)).flow;
    expect(flow({ ach50: 2 })).toBeLessThan(flow({ ach50: 10 }));
    expect(flow({ ach50: 10 })).toBeLessThan(flow(null));
  });

  it('hardly matters when it is as open as a barn', () => {
    const open = solvedAtFull(solve({ ach50: 3000, otherExhaust: [] }));
    expect(open.flow / solvedAtFull(solve(null)).flow).toBeCloseTo(1, 4);
  });

  it('is drawn down further at each higher speed', () => {
    const pressures = solve({}).speeds.map(({ outcome }) => (outcome.solved ? houseIn(outcome).pressure : 0));
    expect(pressures).toEqual([...pressures].sort((a, b) => b - a));
    expect(pressures[0]).toBeLessThan(0);
  });

  it('is not part of a job that has none', () => {
    expect(solvedAtFull(solve(null)).house).toBeNull();
  });

  it('stands exactly at its limit with the make-up opening that the solution asks for', () => {
    const { makeUpNeeded, limit } = houseIn(solvedAtFull(solve({})));
    if (!makeUpNeeded || !limit) throw new Error('the house is beyond its limit');
    const makeUpAir = { kind: 'opening', area: makeUpNeeded.opening } as const;
    const held = houseIn(solvedAtFull(solve({ makeUpAir })));
    expect(held.pressure).toBeCloseTo(-limit.value, 6);
    expect(held.makeUp).toBeCloseTo(makeUpNeeded.flow, 8);
  });

  it('stands exactly at its limit with a make-up fan of the flow that the solution asks for', () => {
    const { makeUpNeeded, limit } = houseIn(solvedAtFull(solve({})));
    if (!makeUpNeeded || !limit) throw new Error('the house is beyond its limit');
    const held = houseIn(solvedAtFull(solve({ makeUpAir: { kind: 'fan', flow: makeUpNeeded.flow } })));
    expect(held.pressure).toBeCloseTo(-limit.value, 6);
  });

  it('needs no make-up air within its limit', () => {
    expect(houseIn(solvedAtFull(solve({ combustion: [], ach50: 12 }))).makeUpNeeded).toBeNull();
  });
});

describe('the limit of a house', () => {
  it('is that of the appliance that spills first', () => {
    const limit = limitOf({ ...house, combustion: ['wood stove', 'natural-draft water heater'] });
    expect(limit).toMatchObject({ value: 2, canSpill: true, row: 'limits/natural-draught-water-heater' });
  });

  it('is that of a house without appliances where none is listed', () => {
    expect(limitOf({ ...house, combustion: [] })).toMatchObject({ value: 25, canSpill: false });
  });

  it('names no appliance that can spill where the list says none', () => {
    expect(limitOf({ ...house, combustion: ['none'] })).toMatchObject({ value: 25, canSpill: false });
    expect(limitOf({ ...house, combustion: ['none', 'wood stove'] })).toMatchObject({
      value: 5,
      canSpill: true,
    });
  });

  it('is not made up for an appliance that the catalogue does not know', () => {
    expect(limitOf({ ...house, combustion: ['invented furnace'] })).toBeNull();
  });
});

describe('a finding', () => {
  const found = (rule: string, change: Partial<DrawnHouse> | null) =>
    solve(change).findings.find((finding) => finding.rule === rule);

  it('of danger names carbon monoxide, the pressure, the limit, its source, and what to do', () => {
    const danger = found('house-depressurization', {});
    expect(danger?.severity).toBe('danger');
    expect(danger?.message).toMatch(/carbon monoxide/);
    expect(danger?.message).toMatch(/Pa \(0\.\d+ in w\.g\.\) below outdoors/);
    expect(danger?.message).toMatch(/limit for a natural-draught water heater/);
    expect(danger?.source).toMatch(/house depressurization limit table/);
    expect(danger?.remedy).toMatch(
      /cfm of make-up air .*sq in.*licensed technician test every flue for spillage/,
    );
  });

  it('of a house without an appliance that can spill is a warning', () => {
    expect(found('house-depressurization', { combustion: [] })?.severity).toBe('warning');
  });

  it('of danger goes when the house is leaky enough', () => {
    expect(found('house-depressurization', { ach50: 80 })).toBeUndefined();
  });

  it('of danger stands in the example at boost', () => {
    const job = exampleJob();
    const rules = solveScheme(job, 'wall').findings.filter(({ severity }) => severity === 'danger');
    expect(rules.map(({ rule }) => rule)).toContain('house-depressurization');
    expect(rules.find(({ rule }) => rule === 'house-depressurization')?.message).toMatch(/boost/);
  });

  it('of make-up air comes above 400 cfm and names the code with its edition', () => {
    expect(found('make-up-air', null)).toMatchObject({
      severity: 'warning',
      message: expect.stringContaining('400 cfm'),
      source: expect.stringMatching(/IRC 2015 M1503\.4 \(M1503\.6 from 2018\)/),
    });
  });

  it('of make-up air is but a note where some is provided', () => {
    expect(found('make-up-air', { makeUpAir: { kind: 'fan', flow: 0.25 } })?.severity).toBe('note');
  });

  it('of make-up air does not come for a hood of 400 cfm or less', () => {
    const { house: _, ...job } = exampleJob();
    const hoods = job.hoods.map((hood) => ({ ...hood, speeds: hood.speeds.slice(0, 2) }));
    const rules = solveScheme({ ...job, hoods }, 'wall').findings.map(({ rule }) => rule);
    expect(rules).not.toContain('make-up-air');
  });

  it('says that an appliance is not known instead of holding the house to nothing in silence', () => {
    expect(found('unknown-appliance', { combustion: ['invented furnace'] })?.message).toMatch(
      /invented furnace/,
    );
  });

  const straight = (diameter: number) =>
    solveOnly(
      runThrough(
        [
          [0, 0, 2],
          [0, 0, 3],
        ],
        { duct: { shape: 'round', diameter } },
      ),
    );
  const solveOnly = (job: Job) => solveScheme(job, job.schemes[0]?.id ?? '');

  it('of high velocity names the leg, its velocity and the band', () => {
    const solution = straight(0.127);
    const fast = solution.findings.find(({ rule }) => rule === 'velocity-high');
    const { fastest } = solvedAtFull(solution);
    expect(fastest?.velocity).toBeGreaterThan(10.16);
    expect(fast).toMatchObject({ severity: 'note', message: expect.stringContaining('fpm') });
    expect(fast?.segments).toEqual([fastest?.segment]);
  });

  it('of low velocity comes where the duct is far too wide', () => {
    expect(straight(0.4).findings.map(({ rule }) => rule)).toContain('velocity-low');
    expect(straight(0.2032).findings.map(({ rule }) => rule)).not.toContain('velocity-low');
  });
});
