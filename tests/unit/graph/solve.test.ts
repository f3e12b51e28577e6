import { describe, expect, it, test } from 'vitest';
import type { FanSpeed, Hood, Job, Vec3 } from '../../../src/graph/document.ts';
import type { FittingResult, SchemeSolution, Solved } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob, jobOf, runThrough, solvedAtFull, withScheme } from '../../support/route-job.ts';

const riserAndRun: Vec3[] = [
  [1, 0, 1.8],
  [1, 0, 2.6],
  [1, 3, 2.6],
];

function solve(job: Job): SchemeSolution {
  return solveScheme(job, job.schemes[0]?.id ?? '');
}

function lossesOf(solved: Solved): number {
  const friction = [...solved.segments.values()].reduce((sum, segment) => sum + segment.frictionLoss, 0);
  return solved.fittings.reduce((sum, fitting) => sum + fitting.loss, friction);
}

function reasons(solution: SchemeSolution): (string | null)[] {
  return solution.speeds.map(({ outcome }) => (outcome.solved ? null : outcome.reason));
}

describe('where the pressure goes', () => {
  it('adds up to what the fan gives less what the house holds back, at every speed of both schemes', () => {
    const job = exampleJob();
    const outcomes = job.schemes.flatMap((scheme) => solveScheme(job, scheme.id).speeds);
    expect(outcomes).toHaveLength(8);
    for (const { outcome } of outcomes) {
      if (!outcome.solved) throw new Error(outcome.reason);
      const driven = outcome.totalPressure + (outcome.house?.pressure ?? Number.NaN);
      expect(Math.abs(lossesOf(outcome) / driven - 1)).toBeLessThan(1e-9);
    }
  });

  it('gives shares that add up to one with that of the house', () => {
    const solved = solvedAtFull(solveScheme(exampleJob(), 'roof'));
    const shares = [...solved.segments.values(), ...solved.fittings].reduce(
      (sum, part) => sum + part.share,
      0,
    );
    const house = -(solved.house?.pressure ?? Number.NaN) / solved.totalPressure;
    expect(house).toBeGreaterThan(0);
    expect(shares + house).toBeCloseTo(1, 9);
  });

  it('falls along the run from the pressure of room and fan to nothing outdoors, and never rises', () => {
    const { profile, totalPressure, house } = solvedAtFull(solveScheme(exampleJob(), 'roof'));
    expect(profile[0]).toMatchObject({ distance: 0, at: 'r1' });
    expect(profile[0]?.total).toBe(totalPressure + (house?.pressure ?? Number.NaN));
    expect(Math.abs(profile.at(-1)?.total ?? 1)).toBeLessThan(1e-9 * totalPressure);
    expect(profile.at(-1)?.at).toBe('r7');
    for (let i = 1; i < profile.length; i++) {
      expect(profile[i]?.total).toBeLessThanOrEqual((profile[i - 1]?.total ?? 0) + 1e-9);
      expect(profile[i]?.distance).toBeGreaterThanOrEqual(profile[i - 1]?.distance ?? 0);
    }
  });

  it('charges the arc of a bend to the leg upstream of it', () => {
    const solved = solvedAtFull(
      solve(runThrough(riserAndRun, { bend: { kind: 'smooth', radiusRatio: 1.5 } })),
    );
    const radius = 1.5 * 0.2032;
    expect(solved.segments.get('d1')?.frictionLength).toBeCloseTo(0.8 - radius + (radius * Math.PI) / 2, 12);
    expect(solved.segments.get('d2')?.frictionLength).toBeCloseTo(3 - radius, 12);
  });

  it('gives an equivalent length that costs in straight duct what the fitting costs', () => {
    const solved = solvedAtFull(solve(runThrough(riserAndRun)));
    const bend = solved.fittings.find((fitting) => fitting.kind === 'bend');
    const rate = solved.segments.get('d1')?.lossPerMetre ?? 0;
    expect((bend?.equivalentLength ?? 0) * rate).toBeCloseTo(bend?.loss ?? 0, 9);
  });

  it('shows a cap part by part', () => {
    const cap = solvedAtFull(solveScheme(exampleJob(), 'roof')).fittings.find(
      (fitting) => fitting.kind === 'cap',
    );
    expect(cap?.buildUp?.length).toBeGreaterThan(1);
    expect(cap?.buildUp?.reduce((sum, part) => sum + part.loss, 0)).toBeCloseTo(cap?.loss ?? 0, 9);
  });

  it('names the fastest leg, where the duct is smallest', () => {
    const solved = solvedAtFull(solveScheme(exampleJob(), 'roof'));
    expect(solved.fastest?.segment).toBe('rd2');
    expect(solved.fastest?.velocity).toBeCloseTo(solved.flow / ((Math.PI / 4) * 0.1524 ** 2), 12);
  });
});

describe('the fan', () => {
  it('works at a static pressure equal to the friction alone on a bare straight duct of its collar size', () => {
    const solved = solvedAtFull(
      solve(
        runThrough([
          [0, 0, 0],
          [0, 0, 6],
        ]),
      ),
    );
    const friction = solved.segments.get('d1')?.frictionLoss ?? 0;
    expect(Math.abs(solved.staticPressure / friction - 1)).toBeLessThan(1e-9);
  });

  it('delivers more at each higher speed, and less than it is rated for', () => {
    const flows = solveScheme(exampleJob(), 'wall').speeds.map(({ outcome }) =>
      outcome.solved ? outcome.flow : 0,
    );
    expect(flows).toEqual([...flows].sort((a, b) => a - b));
    expect(new Set(flows).size).toBe(4);
    for (const { ratedFlow, outcome } of solveScheme(exampleJob(), 'wall').speeds) {
      expect(outcome.solved && outcome.flow).toBeLessThan(ratedFlow);
    }
  });

  it('scales one speed from another by the fan laws', () => {
    const base = runThrough(riserAndRun);
    const hood = base.hoods[0] as Hood;
    const high = hood.speeds.at(-1) as FanSpeed;
    const half: FanSpeed = {
      name: 'half',
      pressureBasis: 'static',
      density: 1.2,
      scaledFrom: { speed: high.name, ratio: 0.5 },
    };
    const written: FanSpeed = {
      ...half,
      name: 'written',
      curve: high.curve?.map(([q, p]) => [q / 2, p / 4]) ?? [],
    };
    delete written.scaledFrom;
    const solution = solve({ ...base, hoods: [{ ...hood, speeds: [half, written, high] }] });
    const [scaled, same] = solution.speeds.map(({ outcome }) => (outcome.solved ? outcome.flow : 0));
    expect(scaled).toBeGreaterThan(0);
    expect(scaled).toBe(same);
  });
});

describe('a hood of which less than a curve is known', () => {
  const base = runThrough(riserAndRun);
  const hood = base.hoods[0] as Hood;
  const basis = { pressureBasis: 'static', density: 1.2 } as const;
  const speeds: FanSpeed[] = [
    {
      ...basis,
      name: 'two points',
      certified: [
        [0.1, 200],
        [0.2, 62],
      ],
    },
    { ...basis, name: 'free air', freeAir: { flow: 0.28, shutOffPressure: 280 } },
    { ...basis, name: 'label', single: { flow: 0.28 } },
  ];
  const solution = solve({ ...base, hoods: [{ ...hood, speeds }] });

  it('is solved on what is known', () => {
    expect(reasons(solution)).toEqual([null, null, null]);
  });

  it('carries a finding for every assumption that its numbers rest on', () => {
    const assumed = solution.findings.filter((finding) => finding.rule === 'fan-assumed');
    expect(assumed.map((finding) => finding.id)).toEqual([
      'fan-assumed:n0/hood-1/two points',
      'fan-assumed:n0/hood-1/free air',
      'fan-assumed:n0/hood-1/label',
    ]);
  });
});

describe('no number without an answer', () => {
  it('says that nothing is attached to the hood', () => {
    const job = jobOf([{ id: 'h', at: [0, 0, 0], role: 'hood', hood: 'hood-1' }], []);
    expect(new Set(reasons(solve(job)))).toEqual(new Set(['Nothing is attached to the hood yet.']));
  });

  it('says that the hood is not on the sheets', () => {
    const [reason] = reasons(solve(jobOf([], [])));
    expect(reason).toMatch(/not on the sheets/);
  });

  it('says that the run has no way out', () => {
    const job = jobOf(
      [
        { id: 'a', at: [0, 0, 0], role: 'hood', hood: 'hood-1' },
        { id: 'b', at: [2, 0, 0], role: 'hood', hood: 'hood-1' },
      ],
      [{ id: 'd', from: 'a', to: 'b' }],
    );
    expect(reasons(solve(job))[0]).toMatch(/no way out/);
  });

  it('says that a speed has no curve, and solves the others', () => {
    const base = runThrough(riserAndRun);
    const hood = base.hoods[0] as Hood;
    const blank: FanSpeed = { name: 'unknown', pressureBasis: 'static', density: 1.2 };
    const solution = solve({ ...base, hoods: [{ ...hood, speeds: [blank, ...hood.speeds] }] });
    expect(reasons(solution)[0]).toMatch(/"unknown" has no curve/);
    expect(reasons(solution).slice(1)).toEqual([null, null, null, null]);
  });
});

test('two hoods on one cap share it: each moves less than it would alone', () => {
  const alone = runThrough([
    [0, 0, 2],
    [2, 0, 2],
    [2, 3, 2],
  ]);
  const both = withScheme(
    { ...alone, hoods: [...alone.hoods, { ...(alone.hoods[0] as Hood), id: 'hood-2' }] },
    (scheme) => ({
      ...scheme,
      nodes: [...scheme.nodes, { id: 'h2', at: [4, 0, 2], role: 'hood', hood: 'hood-2' }],
      segments: [...scheme.segments, { id: 'd3', from: 'n1', to: 'h2' }],
    }),
  );
  const solution = solve(both);
  expect(solution.speeds.map(({ hood }) => hood)).toEqual([
    ...Array(4).fill('hood-1'),
    ...Array(4).fill('hood-2'),
  ]);
  const [one, two] = [solution.speeds[3], solution.speeds[7]].map((speed) =>
    speed?.outcome.solved ? speed.outcome : undefined,
  );
  expect(one?.flow).toBeCloseTo(two?.flow ?? 0, 9);
  expect(one?.segments.get('d2')?.flow).toBeCloseTo(2 * (one?.flow ?? 0), 9);
  expect(one?.flow).toBeLessThan(solvedAtFull(solve(alone)).flow);
});

test('a part in line is met at its place whatever way the segment is stored', () => {
  const withDamper = withScheme(runThrough(riserAndRun), (scheme) => ({
    ...scheme,
    segments: scheme.segments.map((segment) =>
      segment.id === 'd2'
        ? { id: 'd2', from: 'n2', to: 'n1', fittings: [{ kind: 'backdraught-damper', at: 2.5 }] }
        : segment,
    ),
  }));
  const { profile } = solvedAtFull(solve(withDamper));
  expect(profile.find((point) => point.at === 'd2')?.distance).toBeCloseTo(0.8 + 0.5, 12);
});

test('solving the same scheme again gives the very same solution', () => {
  const job = exampleJob();
  expect(solveScheme(job, 'roof')).toBe(solveScheme({ ...job, title: 'renamed' }, 'roof'));
});

test('a tight bend (r/D 0.5) stands worse than a gentle one (1.5) in every number, at every speed', () => {
  const points: Vec3[] = [
    [0, 0, 1.8],
    [0, 0, 2.8],
    [3, 0, 2.8],
    [3, 3, 2.8],
  ];
  const speedsAt = (radiusRatio: number) => {
    const job = runThrough(points, {
      duct: { shape: 'round', diameter: 0.1524 },
      bend: { kind: 'smooth', radiusRatio },
    });
    return solveScheme(job, job.schemes[0]?.id ?? '').speeds.map(({ outcome }) => {
      if (!outcome.solved) throw new Error(outcome.reason);
      return outcome;
    });
  };
  const gentle = speedsAt(1.5);
  const bend = (outcome: Solved) => outcome.fittings.find(({ kind }) => kind === 'bend') as FittingResult;
  const bendNoise = (outcome: Solved) => outcome.sound.cook.byCause.get('bend') as number;
  for (const [i, tight] of speedsAt(0.5).entries()) {
    const other = gentle[i] as Solved;
    expect(tight.flow).toBeLessThan(other.flow);
    expect(tight.staticPressure).toBeGreaterThan(other.staticPressure);
    for (const figure of ['c', 'loss', 'equivalentLength', 'share'] as const)
      expect(bend(tight)[figure], figure).toBeGreaterThan(bend(other)[figure]);
    expect(tight.sound.fan.pressure).toBeGreaterThan(other.sound.fan.pressure);
    expect(bendNoise(tight)).toBeGreaterThan(bendNoise(other));
    expect(tight.sound.cook.level).toBeGreaterThan(other.sound.cook.level);
  }
});
