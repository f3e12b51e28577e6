import { describe, expect, it, test } from 'vitest';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import type { Route } from '../../../src/graph/route.ts';
import { exampleJob, jobOf, runThrough, withScheme } from '../../support/route-job.ts';

const riserAndRun: Vec3[] = [
  [1, 0, 1.8],
  [1, 0, 2.6],
  [1, 3, 2.6],
];

function infer(job: Job): Route {
  return inferRoute(job, job.schemes[0]?.id ?? '');
}

function rules(job: Job): string[] {
  return infer(job).findings.map((finding) => finding.rule);
}

describe('angles and lengths', () => {
  it('measures legs and turns in space, not on a sheet', () => {
    const route = infer(
      runThrough([
        [0, 0, 0],
        [1, 1, 1],
        [2, 2, 1],
      ]),
    );
    expect(route.segments.get('d1')?.length).toBeCloseTo(Math.sqrt(3), 12);
    const angle = (Math.atan2(1, Math.SQRT2) * 180) / Math.PI;
    expect(route.nodes.get('n1')?.bend?.angle).toBeCloseTo(angle, 9);
  });

  it('takes r·tan(θ/2) from both legs of a bend', () => {
    const route = infer(runThrough(riserAndRun, { bend: { kind: 'smooth', radiusRatio: 1.5 } }));
    const bend = route.nodes.get('n1')?.bend;
    expect(bend?.radius).toBeCloseTo(1.5 * 0.2032, 12);
    expect(bend?.tangent).toBeCloseTo(1.5 * 0.2032, 12);
    expect(route.segments.get('d1')?.straight).toBeCloseTo(0.8 - 1.5 * 0.2032, 12);
    expect(route.segments.get('d2')?.straight).toBeCloseTo(3 - 1.5 * 0.2032, 12);
  });

  it('takes nothing from the legs of a mitre', () => {
    const route = infer(runThrough(riserAndRun, { bend: { kind: 'mitred', radiusRatio: 1.5 } }));
    expect(route.nodes.get('n1')?.bend).toMatchObject({ radius: 0, tangent: 0, radiusRatio: 0 });
  });

  it('calls a turn of less than 2° a joint', () => {
    const route = infer(
      runThrough([
        [0, 0, 0],
        [1, 0, 0],
        [2, 0.03, 0],
      ]),
    );
    expect(route.nodes.get('n1')?.kind).toBe('joint');
  });
});

describe('what joins two legs', () => {
  const squeezed = withScheme(runThrough(riserAndRun), (scheme) => ({
    ...scheme,
    segments: scheme.segments.map((segment) =>
      segment.id === 'd2' ? { ...segment, duct: { shape: 'round', diameter: 0.1524 } } : segment,
    ),
  }));

  it('finds a bend and a change of size at the same node, the bend in the section upstream', () => {
    const node = infer(squeezed).nodes.get('n1');
    expect(node?.kind).toBe('bend and transition');
    expect(node?.bend?.radius).toBeCloseTo(0.2032, 12);
    expect(node?.transition).toMatchObject({ upstream: 'd1', downstream: 'd2', kind: 'conical' });
  });

  it('lets the node say how its size changes', () => {
    const abrupt = withScheme(squeezed, (scheme) => ({
      ...scheme,
      nodes: scheme.nodes.map((node) =>
        node.id === 'n1' ? { ...node, transition: { kind: 'abrupt' } } : node,
      ),
    }));
    expect(infer(abrupt).nodes.get('n1')?.transition).toMatchObject({
      kind: 'abrupt',
      angle: 180,
      length: 0,
    });
  });

  it('puts a change of size at the collar where the first leg is of another size', () => {
    const route = infer(runThrough(riserAndRun, { duct: { shape: 'round', diameter: 0.1524 } }));
    const transition = route.nodes.get('n0')?.transition;
    expect(transition?.from).toEqual({ shape: 'round', diameter: 0.2032 });
    expect(transition?.length).toBeCloseTo(
      0.0254 / Math.tan((((transition?.angle ?? 0) / 2) * Math.PI) / 180),
      9,
    );
  });

  it('turns flexible duct by itself unless the node says otherwise', () => {
    expect(infer(runThrough(riserAndRun, { material: 'flexible' })).nodes.get('n1')?.bend?.kind).toBe(
      'flexible',
    );
  });
});

describe('rectangular duct', () => {
  const stack = { shape: 'rectangular', width: 0.254, height: 0.08255 } as const;

  it('bends a riser the easy way: its height lies in the plane of the turn', () => {
    const bend = infer(runThrough(riserAndRun, { duct: stack })).nodes.get('n1')?.bend;
    expect(bend).toMatchObject({ kind: 'rectangular-smooth', inPlane: 0.08255, acrossPlane: 0.254 });
  });

  it('bends a level run to the side the hard way', () => {
    const level: Vec3[] = [
      [0, 0, 2],
      [2, 0, 2],
      [2, 2, 2],
    ];
    const bend = infer(runThrough(level, { duct: stack })).nodes.get('n1')?.bend;
    expect(bend).toMatchObject({ inPlane: 0.254, acrossPlane: 0.08255 });
  });

  it('turns a riser between two runs at right angles easy below and hard above', () => {
    const points: Vec3[] = [
      [0, 0, 1],
      [2, 0, 1],
      [2, 0, 3],
      [2, 2, 3],
    ];
    const route = infer(runThrough(points, { duct: stack }));
    expect(route.nodes.get('n1')?.bend?.inPlane).toBe(0.08255);
    expect(route.nodes.get('n2')?.bend?.inPlane).toBe(0.254);
  });
});

describe('direction of the air', () => {
  it('runs from the hood to the cap whatever way the segments are stored', () => {
    const backwards = withScheme(runThrough(riserAndRun), (scheme) => ({
      ...scheme,
      segments: [...scheme.segments]
        .reverse()
        .map(({ from, to, ...rest }) => ({ ...rest, from: to, to: from })),
    }));
    const route = infer(backwards);
    expect(route.order).toEqual(['d1', 'd2']);
    expect(route.segments.get('d1')).toMatchObject({ from: 'n0', to: 'n1', reversed: true });
  });

  it('brings two hoods together and lets them out by one cap', () => {
    const job = jobOf(
      [
        { id: 'a', at: [0, 0, 2], role: 'hood', hood: 'hood-1' },
        { id: 'b', at: [4, 0, 2], role: 'hood', hood: 'hood-1' },
        { id: 'j', at: [2, 0, 2], role: 'turn' },
        { id: 'c', at: [2, 3, 2], role: 'cap', cap: 'open' },
      ],
      [
        { id: 'out', from: 'c', to: 'j' },
        { id: 'left', from: 'a', to: 'j' },
        { id: 'right', from: 'j', to: 'b' },
      ],
    );
    const route = infer(job);
    expect(route.segments.get('right')).toMatchObject({ from: 'b', to: 'j' });
    expect(route.segments.get('out')).toMatchObject({ from: 'j', to: 'c' });
    expect(route.order.at(-1)).toBe('out');
    expect(route.nodes.get('j')?.junction).toMatchObject({ common: 'out', converging: true, straight: null });
  });

  it('tells the straight way through a junction from the branch', () => {
    const job = jobOf(
      [
        { id: 'h', at: [0, 0, 2], role: 'hood', hood: 'hood-1' },
        { id: 'j', at: [2, 0, 2], role: 'turn' },
        { id: 'on', at: [4, 0, 2], role: 'cap', cap: 'open' },
        { id: 'off', at: [2, 2, 2], role: 'cap', cap: 'open' },
      ],
      [
        { id: 'main', from: 'h', to: 'j' },
        { id: 'branch', from: 'j', to: 'off' },
        { id: 'straight', from: 'j', to: 'on' },
      ],
    );
    expect(infer(job).nodes.get('j')?.junction).toEqual({
      straight: 'straight',
      branches: ['branch'],
      common: 'main',
      converging: false,
    });
  });
});

describe('findings', () => {
  test('the clean way out of the example has none', () => {
    expect(inferRoute(exampleJob(), 'wall').findings).toEqual([]);
  });

  test('the bad way out of the example is told for what it is, gravest first', () => {
    const findings = inferRoute(exampleJob(), 'roof').findings;
    expect(findings.map((finding) => finding.rule)).toEqual(['flexible-duct', 'smaller-than-collar']);
    expect(findings[1]?.message).toBe(
      'From turn 1 of 5 on, the duct is 6" round, smaller than the hood\'s 8" round collar.',
    );
  });

  test('a run without a hood', () => {
    const job = withScheme(runThrough(riserAndRun), (scheme) => ({
      ...scheme,
      nodes: scheme.nodes.map((node) =>
        node.role === 'hood' ? { id: node.id, at: node.at, role: 'turn' } : node,
      ),
    }));
    expect(rules(job)).toContain('no-hood');
  });

  test('a run that ends open is computed as an open end and says so', () => {
    const job = runThrough(riserAndRun, {}, null);
    expect(infer(job).nodes.get('n2')?.kind).toBe('open end');
    expect(rules(job)).toContain('open-end');
  });

  test('a branch that ends open beside a cap is an error', () => {
    const job = withScheme(runThrough(riserAndRun), (scheme) => ({
      ...scheme,
      nodes: [...scheme.nodes, { id: 'stub', at: [2, 0, 2.6], role: 'turn' }],
      segments: [...scheme.segments, { id: 'ds', from: 'n1', to: 'stub' }],
    }));
    expect(infer(job).findings.find((finding) => finding.rule === 'open-branch')?.severity).toBe('error');
  });

  test('a piece of duct that is not connected', () => {
    const job = withScheme(runThrough(riserAndRun), (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) =>
        segment.id === 'd2' ? { ...segment, from: 'n9' } : segment,
      ),
      nodes: [...scheme.nodes, { id: 'n9', at: [1, 0.2, 2.6], role: 'turn' }],
    }));
    expect(rules(job)).toContain('gap');
  });

  test('a segment with no length', () => {
    expect(
      rules(
        runThrough([
          [0, 0, 0],
          [0, 0, 1],
          [0, 0, 1],
          [0, 2, 1],
        ]),
      ),
    ).toContain('zero-length');
  });

  test('two legs that cross without a node', () => {
    const crossing = runThrough([
      [0, 0, 2],
      [3, 0, 2],
      [3, 2, 2],
      [1, 2, 2],
      [1, -2, 2],
    ]);
    const found = infer(crossing).findings.find((finding) => finding.rule === 'crossing');
    expect(found?.segments).toEqual(['d1', 'd4']);
  });

  test('two legs that pass over each other do not cross', () => {
    const over = runThrough([
      [0, 0, 2],
      [3, 0, 2],
      [3, 2, 2],
      [3, 2, 2.5],
      [1, 2, 2.5],
      [1, -2, 2.5],
    ]);
    expect(rules(over)).not.toContain('crossing');
  });

  test('a bend that is too long for its legs names the turn and the length that is missing', () => {
    const tight = runThrough(
      [
        [0, 0, 1.8],
        [0, 0, 2],
        [0, 2, 2],
      ],
      { bend: { kind: 'smooth', radiusRatio: 1.5 } },
    );
    const found = infer(tight).findings.find((finding) => finding.rule === 'does-not-fit');
    expect(found).toMatchObject({ nodes: ['n1'], segments: ['d1'] });
    expect(found?.message).toMatch(/^The turn, the 90° bend, does not fit: .* 4 1\/8" too short\.$/);
  });

  test('a part in line beyond the end of its leg', () => {
    const job = withScheme(runThrough(riserAndRun), (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) => ({ ...segment, fittings: [{ kind: 'silencer', at: 2 }] })),
    }));
    const found = infer(job).findings.filter((finding) => finding.rule === 'part-beyond-end');
    expect(found.map((finding) => finding.segments)).toEqual([['d1']]);
  });

  test('names that the catalogue does not have are replaced, and the replacement is said', () => {
    const job = runThrough(riserAndRun, { material: 'adamant', bend: 'knee' }, 'chimney-pot');
    const route = infer(job);
    expect(route.segments.get('d1')?.material).toBe('galvanized');
    expect(route.nodes.get('n1')?.bend?.kind).toBe('three-piece');
    expect(rules(job)).toEqual(expect.arrayContaining(['unknown-material', 'unknown-bend', 'unknown-cap']));
  });

  test('a loop', () => {
    const job = withScheme(
      runThrough([
        [0, 0, 0],
        [1, 0, 0],
        [1, 1, 0],
        [2, 1, 0],
      ]),
      (scheme) => ({
        ...scheme,
        nodes: [...scheme.nodes, { id: 'x', at: [2, 0, 0], role: 'turn' }],
        segments: [...scheme.segments, { id: 'l1', from: 'n1', to: 'x' }, { id: 'l2', from: 'x', to: 'n2' }],
      }),
    );
    expect(rules(job)).toContain('loop');
  });

  test('a cap away from every outside face that is drawn', () => {
    const job = {
      ...exampleJob(),
      exits: [
        {
          id: 'x',
          name: 'east wall',
          kind: 'wall' as const,
          min: [9, 0, 0] as Vec3,
          max: [9.1, 3, 3] as Vec3,
        },
      ],
    };
    expect(inferRoute(job, 'wall').findings.map((finding) => finding.rule)).toEqual(['exit-not-shown']);
  });

  test('a cap with a screen', () => {
    expect(rules(runThrough(riserAndRun, {}, 'open-screened'))).toContain('screened-cap');
  });

  test('ids are stable for the same rule at the same place', () => {
    expect(inferRoute(exampleJob(), 'roof').findings.map((finding) => finding.id)).toEqual([
      'flexible-duct:rd5',
      'smaller-than-collar:r1+rd2+rd3+rd4+rd5+rd6',
    ]);
  });
});

test('inferring the same scheme again gives the very same route', () => {
  const job = exampleJob();
  expect(inferRoute(job, 'roof')).toBe(inferRoute({ ...job, title: 'renamed' }, 'roof'));
});
