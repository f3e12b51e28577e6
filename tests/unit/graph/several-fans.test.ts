import { describe, expect, it, test } from 'vitest';
import { derive, figuresOf } from '../../../src/graph/derive/derive.ts';
import type { Hood, Job } from '../../../src/graph/document.ts';
import type { Solved } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { jobOf, runThrough, solvedAtFull, withScheme } from '../../support/route-job.ts';
import { twoHoods } from '../../support/two-hoods.ts';

const solve = (job: Job) => solveScheme(job, job.schemes[0]?.id ?? '');

function fullOf(job: Job, hood: string): Solved {
  const outcome = solve(job).speeds.findLast((speed) => speed.hood === hood)?.outcome;
  if (!outcome?.solved) throw new Error(outcome?.reason ?? 'no such hood');
  return outcome;
}

/** What is lost along a hood's path. */
function spent({ path, segments, fittings }: Solved): number {
  const friction = path.reduce((sum, id) => sum + (segments.get(id)?.frictionLoss ?? 0), 0);
  return fittings.reduce(
    (sum, fitting) => sum + (path.includes(fitting.segment) ? fitting.loss : 0),
    friction,
  );
}

describe('two hoods on one duct', () => {
  const one = fullOf(twoHoods(), 'hood-1');
  const other = fullOf(twoHoods(), 'hood-2');

  it('each move less than alone', () => {
    const alone = fullOf(twoHoods(false), 'hood-1');
    expect(one.flow).toBeLessThan(alone.flow);
    expect(other.flow).toBeLessThan(alone.flow);
  });

  it('put all their air into the trunk', () => {
    expect(one.segments.get('out')?.flow).toBeCloseTo(one.flow + other.flow, 9);
  });

  it('have the loss of the tee among their fittings, the branch with its flow ratio', () => {
    const tee = other.fittings.find(({ kind, segment }) => kind === 'junction' && segment === 'db');
    expect(tee?.label).toMatch(/90° tee, branch, joining/);
    expect(tee?.junction?.flowRatio).toBeCloseTo(other.flow / (one.flow + other.flow), 6);
    expect(tee?.provenance.row).toBe('junctions/converging');
  });

  it('balance along each path: losses equal what the fan gives', () => {
    for (const solved of [one, other]) expect(spent(solved) / solved.totalPressure).toBeCloseTo(1, 8);
  });

  it('draw the house down together', () => {
    const house = {
      volume: 400,
      ach50: 4,
      leakageExponent: 0.65,
      storeys: 1,
      otherExhaust: [],
      makeUpAir: null,
      combustion: ['natural-draught furnace or boiler'],
    };
    const [here, there] = ['hood-1', 'hood-2'].map((hood) => fullOf({ ...twoHoods(), house }, hood));
    if (!here || !there) throw new Error('both hoods run');
    expect(here.house?.hoods).toBeCloseTo(here.flow + there.flow, 9);
    expect(here.house).toEqual(there.house);
    expect(spent(here)).toBeCloseTo(here.totalPressure + (here.house?.pressure ?? 0), 6);
  });

  it('say how many rounds the junction took', () => {
    expect(one.rounds.count).toBeGreaterThan(2);
    expect(one.rounds.change).toBeLessThan(1e-9);
  });

  it('derive every figure, the coefficient of the tee from flow ratio, area ratio and angle', () => {
    const solution = solve(twoHoods());
    const figures = figuresOf(solution, 7);
    expect(figures.filter((ref) => !derive(twoHoods(), solution, ref))).toEqual([]);
    const tee = figures.find(({ figure, at }) => figure === 'coefficient' && at?.startsWith('j/junction'));
    expect(tee && derive(twoHoods(), solution, tee)?.inputs.map(({ symbol }) => symbol)).toEqual([
      'q',
      'a',
      'α',
      'V',
    ]);
  });

  it('no longer have the junction left out of the numbers', () => {
    expect(solve(twoHoods()).findings.map(({ rule }) => rule)).not.toContain('junction-left-out');
  });
});

/** A long run with a point in its middle that is a fan or, without `fan`, a plain joint. */
function longRun(fan?: Partial<Hood>): Job {
  const job = runThrough([
    [0, 0, 2],
    [8, 0, 2],
    [16, 0, 2],
  ]);
  if (!fan) return job;
  const [hood] = job.hoods as [Hood];
  const inRun = withScheme(job, (scheme) => ({
    ...scheme,
    nodes: scheme.nodes.map((node) => (node.id === 'n1' ? { ...node, role: 'fan', fan: 'booster' } : node)),
  }));
  return { ...inRun, hoods: [hood, { ...hood, id: 'booster', name: 'Booster', ...fan }] };
}

describe('a fan in the run', () => {
  it('raises the flow', () => {
    expect(solvedAtFull(solve(longRun({}))).flow).toBeGreaterThan(1.05 * solvedAtFull(solve(longRun())).flow);
  });

  it('gives its pressure on top of that of the hood, and the losses take both', () => {
    const solved = solvedAtFull(solve(longRun({})));
    const [booster] = solved.boosters;
    expect(booster).toMatchObject({ node: 'n1', name: 'Booster' });
    expect(booster?.flow).toBeCloseTo(solved.flow, 9);
    expect(spent(solved)).toBeCloseTo(solved.totalPressure + (booster?.pressure ?? 0), 7);
  });

  it('is a step up in the profile, which still ends at nothing outdoors', () => {
    const { profile, boosters } = solvedAtFull(solve(longRun({})));
    const steps = profile.slice(1).map((point, i) => point.total - (profile[i]?.total ?? 0));
    expect(Math.max(...steps)).toBeCloseTo(boosters[0]?.pressure ?? 0, 9);
    expect(profile.at(-1)?.total).toBeCloseTo(0, 6);
  });

  it('has its pressure derived', () => {
    const solution = solve(longRun({}));
    const full = solution.speeds.length - 1;
    const found = derive(longRun({}), solution, { figure: 'booster pressure', speed: full, at: 'n1' });
    expect(found?.value).toBe(solvedAtFull(solution).boosters[0]?.pressure);
    expect(figuresOf(solution, full).map(({ figure }) => figure)).toContain('booster pressure');
  });

  it('is not listed as a hood', () => {
    expect(new Set(solve(longRun({})).speeds.map(({ hood }) => hood))).toEqual(new Set(['hood-1']));
  });

  it('runs at its highest speed where the hood has more', () => {
    const [hood] = longRun().hoods as [Hood];
    const speeds = hood.speeds.slice(0, 1);
    expect(solvedAtFull(solve(longRun({ speeds }))).boosters[0]?.speed).toBe(speeds[0]?.name);
  });

  it('without data is left out and says so', () => {
    const job = longRun({});
    const bare = { ...job, hoods: job.hoods.slice(0, 1) };
    const solution = solve(bare);
    expect(solvedAtFull(solution).flow).toBe(solvedAtFull(solve(longRun())).flow);
    expect(solution.findings.map(({ rule }) => rule)).toContain('fan-left-out');
  });
});

test('a junction whose branch is about to turn round has its loss left out by name, and the run is solved', () => {
  const flat = { shape: 'rectangular', width: 0.254, height: 0.083 } as const;
  const small = { shape: 'round', diameter: 0.15 } as const;
  const damper = [{ kind: 'backdraught-damper', at: 0 }];
  const job = jobOf(
    [
      { id: 'h', role: 'hood', hood: 'hood-1', at: [0, 0, 1] },
      { id: 'j', role: 'turn', at: [1, 0, 0] },
      { id: 'main', role: 'turn', at: [2, 0, 0] },
      { id: 'side', role: 'turn', at: [2, 2, 1] },
      { id: 'down', role: 'cap', at: [0, 0, 0] },
      { id: 'up', role: 'turn', at: [2, 2, 2] },
    ],
    [
      { id: 'd0', from: 'j', to: 'main' },
      { id: 'd1', from: 'down', to: 'up', duct: small },
      { id: 'd2', from: 'h', to: 'down', duct: flat, fittings: damper },
      { id: 'd3', from: 'j', to: 'h', duct: flat },
      { id: 'd4', from: 'side', to: 'j', duct: small, fittings: damper },
    ],
  );
  const solution = solve(job);
  expect(solvedAtFull(solution).flow).toBeGreaterThan(0);
  const left = solution.findings.filter(({ rule }) => rule === 'junction-left-out');
  expect(left.find(({ nodes }) => nodes.includes('j'))?.message).toMatch(/about to turn round/);
});
