import { produce } from 'immer';
import { describe, expect, it, test } from 'vitest';
import { type Proposal, proposals, proposing, turnsLookedAt } from '../../../src/advice/proposals.ts';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob, jobOf, runThrough, withScheme } from '../../support/route-job.ts';

function kindsOf(all: readonly Proposal[]): string[] {
  return [...new Set(all.map((proposal) => proposal.kind))].sort();
}

function flows(job: Job, schemeId: string): number[] {
  return solveScheme(job, schemeId).speeds.map(({ outcome }) => (outcome.solved ? outcome.flow : 0));
}

function ofKind(job: Job, kind: Proposal['kind'], schemeId = job.schemes[0]?.id ?? ''): Proposal[] {
  return proposals(job, schemeId).filter((proposal) => proposal.kind === kind);
}

describe('for the bad way out of the example', () => {
  const job = exampleJob();
  const all = proposals(job, 'roof');

  it('finds every kind of change that helps', () => {
    expect(kindsOf(all)).toEqual([
      'better cap',
      'fewer turns',
      'gentler bend',
      'larger diameter',
      'no reducer',
      'other cap',
      'smooth duct',
      'stretched duct',
      'two 45s',
    ]);
  });

  it('proposes a gentler bend at each of the five turns', () => {
    const turns = all.filter(({ kind, nodes }) => kind === 'gentler bend' && nodes.length === 1);
    expect(turns.map(({ nodes }) => nodes[0]).sort()).toEqual(['r2', 'r3', 'r4', 'r5', 'r6']);
  });

  it('ranks by the air gained, and leaves out what gains less than half a percent', () => {
    const gains = all.filter(({ remedy }) => !remedy).map(({ gain }) => gain);
    expect(gains).toEqual([...gains].sort((a, b) => b - a));
    const [, , , before = 0] = flows(job, 'roof');
    expect(Math.min(...gains) / before).toBeGreaterThan(0.005);
  });

  it('predicts exactly the numbers that applying it gives', () => {
    for (const proposal of all) {
      const applied = produce(job, proposal.recipe);
      expect(proposal.gains.map(({ before }) => before)).toEqual(flows(job, 'roof'));
      expect(proposal.gains.map(({ after }) => after)).toEqual(flows(applied, 'roof'));
      expect(proposal.gain).toBe((flows(applied, 'roof')[3] ?? 0) - (flows(job, 'roof')[3] ?? 0));
    }
  });

  it('touches only the scheme it is for, and leaves the job itself as it was', () => {
    const snapshot = structuredClone(job);
    for (const proposal of proposals(job, 'roof')) {
      const applied = produce(job, proposal.recipe);
      expect(applied.schemes[0]).toBe(job.schemes[0]);
      expect(applied.hoods).toBe(job.hoods);
    }
    expect(job).toEqual(snapshot);
  });

  it('gives every proposal an id of its own, the same every time', () => {
    const ids = all.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(proposals(structuredClone(job), 'roof').map(({ id }) => id)).toEqual(ids);
  });

  it('gives a reason of one sentence with what it costs now and what it would cost', () => {
    const bend = all.find(({ id }) => id === 'gentler-bend:r2');
    expect(bend?.reason).toMatch(
      /^Turn 1 of 5, the 90° bend above the hood cabinet, costs 0\.\d+ in w\.g\., \d+ % of the pressure; a smooth .* costs 0\.\d+ in w\.g\.$/,
    );
    for (const { reason } of all) expect(reason).toMatch(/\d.*[^.]\.$/);
  });

  it('speaks the units of the job', () => {
    const metric = proposals({ ...job, units: 'metric' }, 'roof');
    for (const { reason } of metric) expect(reason).not.toMatch(/in w\.g\.|"|fpm/);
    expect(metric.some(({ reason }) => / Pa,/.test(reason))).toBe(true);
  });

  it('brings no error and no danger that was not there', () => {
    const grave = (j: Job) =>
      inferRoute(j, 'roof')
        .findings.filter(({ severity }) => severity === 'error' || severity === 'danger')
        .map(({ id }) => id);
    for (const { recipe } of all) {
      expect(grave(job)).toEqual(expect.arrayContaining(grave(produce(job, recipe))));
    }
  });

  it('can be judged at another speed', () => {
    const low = proposals(job, 'roof', { speed: 0 });
    for (const { gain, gains } of low) expect(gain).toBe((gains[0]?.after ?? 0) - (gains[0]?.before ?? 0));
  });
});

describe('bends', () => {
  const tight: Vec3[] = [
    [0, 0, 1.8],
    [0, 0, 2.08],
    [0, 3, 2.08],
  ];

  it('takes the gentlest bend that fits its legs', () => {
    const [proposal] = ofKind(runThrough(tight, { bend: 'mitred' }), 'gentler bend');
    expect(proposal?.title).toBe('Smooth radius bend of r/D 1 at the turn');
  });

  it('takes what fits side by side where two turns share a short leg', () => {
    const jog: Vec3[] = [
      [0, 0, 0],
      [0, 0, 2],
      [0.55, 0, 2],
      [0.55, 3, 2],
    ];
    const together = ofKind(runThrough(jog, { bend: 'mitred' }), 'gentler bend').find(
      ({ nodes }) => nodes.length === 2,
    );
    const bends = together?.solution.route.nodes;
    expect([bends?.get('n1')?.bend?.radiusRatio, bends?.get('n2')?.bend?.radiusRatio]).toEqual([1.5, 1]);
  });

  it('proposes nothing where the gentlest is there already', () => {
    const roomy: Vec3[] = [
      [0, 0, 1.8],
      [0, 0, 2.8],
      [0, 3, 2.8],
    ];
    expect(ofKind(runThrough(roomy, { bend: { kind: 'smooth', radiusRatio: 1.5 } }), 'gentler bend')).toEqual(
      [],
    );
  });
});

describe('two bends instead of one', () => {
  const square: Vec3[] = [
    [0, 0, 0],
    [0, 0, 2],
    [0, 3, 2],
  ];
  const [proposal] = ofKind(runThrough(square, { bend: 'mitred' }), 'two 45s');

  it('share the angle equally, are of the same make, and end where the one did', () => {
    const nodes = [...(proposal?.solution.route.nodes.values() ?? [])];
    const bends = nodes.flatMap(({ bend }) => (bend ? [bend] : []));
    expect(bends.map(({ kind }) => kind)).toEqual(['mitred', 'mitred']);
    for (const { angle } of bends) expect(angle).toBeCloseTo(45, 9);
    expect(nodes.find(({ kind }) => kind === 'cap')?.at).toEqual([0, 3, 2]);
  });

  it('shorten the run by what the corner was longer than its cut', () => {
    const length = [...(proposal?.solution.route.segments.values() ?? [])].reduce(
      (n, leg) => n + leg.length,
      0,
    );
    const diagonal = 1.2 * 0.2032;
    expect(5 - length).toBeCloseTo(2 * (diagonal / Math.SQRT2) - diagonal, 9);
  });
});

describe('a moved turn', () => {
  const low: Vec3[] = [
    [0, 0, 0],
    [0, 0, 0.25],
    [0, 3, 0.25],
    [0, 3, 2],
  ];
  const [proposal] = ofKind(runThrough(low, { bend: 'mitred' }), 'moved turn');

  it('rises just far enough for the gentlest bend, and the leg beyond follows up to the riser', () => {
    const at = (id: string) => proposal?.solution.route.nodes.get(id)?.at;
    expect(at('n1')?.[2]).toBeCloseTo(0.31, 9);
    expect(at('n2')).toEqual([0, 3, at('n1')?.[2]]);
    expect(at('n3')).toEqual([0, 3, 2]);
    expect(proposal?.solution.route.nodes.get('n1')?.bend?.radiusRatio).toBe(1.5);
  });

  it('is not proposed where the bend fits as it is', () => {
    const roomy: Vec3[] = low.map(([x, y, z]) => [x, y, z === 0.25 ? 0.5 : z]);
    expect(ofKind(runThrough(roomy, { bend: 'mitred' }), 'moved turn')).toEqual([]);
  });

  it('does not push a cap off its face', () => {
    const face = {
      id: 'x',
      name: 'wall',
      kind: 'wall' as const,
      min: [-1, 2.9, 0] as Vec3,
      max: [1, 3.1, 0.28] as Vec3,
    };
    const straightOut = low.slice(0, 3);
    const free = runThrough(straightOut, { bend: 'mitred' });
    expect(ofKind(free, 'moved turn')).toHaveLength(1);
    expect(ofKind({ ...free, exits: [face] }, 'moved turn')).toEqual([]);
  });
});

describe('duct', () => {
  const straight: Vec3[] = [
    [0, 0, 0],
    [0, 0, 5],
  ];

  it('carries the collar size on where the first leg is smaller', () => {
    const [proposal] = ofKind(
      runThrough(straight, { duct: { shape: 'round', diameter: 0.1524 } }),
      'no reducer',
    );
    expect(proposal?.nodes).toEqual(['n0']);
    expect(proposal?.segments).toEqual(['d1']);
  });

  it('says the same change once: 8 in for a whole run of 6 in is not proposed twice', () => {
    const all = proposals(runThrough(straight, { duct: { shape: 'round', diameter: 0.1524 } }), 'scheme-1');
    const gains = all.map(({ gain }) => gain.toPrecision(10));
    expect(new Set(gains).size).toBe(gains.length);
  });

  it('pulls slack duct tight, but has nothing to say of duct that is tight', () => {
    const slack = withScheme(runThrough(straight, { material: 'flexible' }), (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) => ({ ...segment, stretch: 0.8 })),
    }));
    expect(ofKind(slack, 'stretched duct')).toHaveLength(1);
    expect(ofKind(runThrough(straight, { material: 'flexible' }), 'stretched duct')).toEqual([]);
  });
});

describe('caps', () => {
  const straight: Vec3[] = [
    [0, 0, 2],
    [0, 4, 2],
  ];

  it('replaces a small opening by a cap for the same wall with a flap and no screen', () => {
    const job = runThrough(straight, {}, 'wall-flap-small');
    const [proposal] = ofKind(job, 'better cap');
    const applied = proposal && produce(job, proposal.recipe);
    expect(applied?.schemes[0]?.nodes.at(-1)).toMatchObject({ role: 'cap', cap: 'wall-flap' });
  });
});

describe('corners', () => {
  const jog: Vec3[] = [
    [0, 0, 1.8],
    [0, 0, 2.6],
    [0, 2, 2.6],
    [2, 2, 2.6],
    [2, 4, 2.6],
  ];

  it('are cut by one straight leg', () => {
    const cuts = ofKind(runThrough(jog), 'fewer turns');
    expect(cuts.map(({ nodes }) => nodes[0])).toContain('n2');
  });

  it('are left alone where a beam stands in the way', () => {
    const beam = {
      id: 'b',
      name: 'beam',
      kind: 'beam' as const,
      min: [0.8, 0.5, 2.4] as Vec3,
      max: [1, 1.5, 2.8] as Vec3,
    };
    const cuts = ofKind({ ...runThrough(jog), blocks: [beam] }, 'fewer turns');
    expect(cuts.map(({ nodes }) => nodes[0])).not.toContain('n2');
  });

  it('never turn the duct as it leaves the collar or meets the cap', () => {
    const cuts = ofKind(runThrough(jog), 'fewer turns');
    expect(cuts.map(({ nodes }) => nodes[0])).not.toContain('n1');
    expect(cuts.map(({ nodes }) => nodes[0])).not.toContain('n3');
  });
});

test('nothing is proposed for a scheme that has no solution', () => {
  expect(proposals(jobOf([], []), 'scheme-1')).toEqual([]);
});

describe('of a very long run', () => {
  const zigzag = (legs: number) =>
    runThrough(
      Array.from({ length: legs + 1 }, (_, i): Vec3 => [Math.ceil(i / 2) * 1.2, Math.floor(i / 2) * 1.2, 2]),
    );

  it('only the costliest turns are looked at, fewer the longer it is', () => {
    expect([10, 100, 200, 400, 5000].map(turnsLookedAt)).toEqual([32, 32, 16, 8, 4]);
    const looked = proposals(zigzag(200), 'scheme-1').flatMap(({ kind, nodes }) =>
      kind === 'gentler bend' && nodes.length > 1 ? [nodes.length] : [],
    );
    for (const turns of looked) expect(turns).toBeLessThanOrEqual(16);
  });

  it('the search is given up in pieces whose number does not grow with the run', () => {
    const pieces = (legs: number) => {
      const search = proposing(zigzag(legs), 'scheme-1');
      let count = 1;
      while (!search.next().done) count += 1;
      return count;
    };
    expect(pieces(240)).toBeLessThan(pieces(60));
  });
});
