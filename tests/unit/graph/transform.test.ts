import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/graph/document.ts';
import * as edits from '../../../src/graph/edits/index.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { largestRadius } from '../../../src/graph/reshape.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { stretchFrom } from '../../../src/graph/stretch.ts';
import { drawn, edited, nodeOf, places, segmentOf, unsound } from '../../support/drawn.ts';

const everything = { nodes: ['n1', 'n2', 'n3', 'n4'], segments: [] };
const flow = (job: ReturnType<typeof drawn>) => {
  const outcome = solveScheme(job, 's1').speeds[0]?.outcome;
  return outcome?.solved ? outcome.flow : Number.NaN;
};

describe('moving, mirroring, turning, aligning', () => {
  test('a segment that is picked stands for its ends', () => {
    const { scheme } = edited((job) =>
      edits.moveSelectionBy(job, 's1', { nodes: [], segments: ['d3'] }, [0, 1, 0]),
    );
    expect(scheme.nodes.map(({ at }) => at[1])).toEqual([0, 0, 3, 3]);
  });

  test('a mirrored run delivers the same air', () => {
    const { job, scheme } = edited((draft) => edits.mirrorSelection(draft, 's1', everything, 0, 1));
    expect(nodeOf(scheme, 'n4')?.at).toEqual([-2, 2, 2.35]);
    expect(flow(job)).toBeCloseTo(flow(drawn()), 12);
  });

  test('four quarter turns come back to the very same places', () => {
    const { scheme } = edited((job) => {
      for (let i = 0; i < 4; i += 1) edits.rotateSelection(job, 's1', everything, [0, 0], 90);
    });
    expect(scheme.nodes.map(({ at }) => at.map((x) => x + 0))).toEqual(Object.values(places));
  });

  test('a quarter turn goes from east to north', () => {
    const { scheme } = edited((job) => edits.rotateSelection(job, 's1', everything, [1, 2], 90));
    expect(nodeOf(scheme, 'n4')?.at).toEqual([1, 5, 2.35]);
  });

  test('a turn by any angle keeps lengths', () => {
    const { job } = edited((draft) => edits.rotateSelection(draft, 's1', everything, [0, 0], 37));
    const before = inferRoute(drawn(), 's1').segments;
    for (const [id, leg] of inferRoute(job, 's1').segments)
      expect(leg.length).toBeCloseTo(before.get(id)?.length ?? 0, 8);
  });

  test('blocks go round with what is picked', () => {
    const { job } = edited((draft) => {
      edits.addBlock(draft, { name: '', kind: 'joist', min: [1, 0, 2], max: [3, 0.5, 3] });
      edits.rotateSelection(draft, 's1', { nodes: [], segments: [], blocks: ['b1'] }, [0, 0], 90);
    });
    expect(job.blocks[0]).toMatchObject({ min: [-0.5, 1, 2], max: [0, 3, 3] });
  });

  test.each([
    ['low', 0],
    ['middle', 1],
    ['high', 2],
  ] as const)('aligned %s, nodes share a coordinate', (mode, where) => {
    const { scheme, given } = edited((job) =>
      edits.alignSelection(job, 's1', { nodes: ['n2', 'n3'], segments: [] }, 1, mode),
    );
    expect(given).toBe(where);
    expect(['n2', 'n3'].map((id) => nodeOf(scheme, id)?.at[1])).toEqual([where, where]);
    expect(nodeOf(scheme, 'n4')?.at).toEqual(places.n4);
  });
});

describe('joints', () => {
  test('a split run has two ends at one place, and joining them gives the run back', () => {
    const split = edited((job) => edits.splitRun(job, 's1', 'n3'));
    expect(split.given).toEqual(['n5']);
    expect(segmentOf(split.scheme, 'd3')?.from).toBe('n5');
    expect(inferRoute(split.job, 's1').nodes.get('n3')?.kind).toBe('open end');
    const { job } = edited((draft) => edits.joinNodes(draft, 's1', 'n5', 'n3'), split.job);
    expect(job).toEqual(drawn());
  });

  test('ends that lie apart are joined by a leg', () => {
    const { scheme, given } = edited((job) => {
      edits.deleteSelection(job, 's1', { nodes: [], segments: ['d2'] });
      return edits.joinNodes(job, 's1', 'n2', 'n3');
    });
    expect(given).toEqual({ segment: 'd4' });
    expect(segmentOf(scheme, 'd4')).toMatchObject({ from: 'n2', to: 'n3' });
  });

  test('a branch leaves from a junction, made of what it leaves', () => {
    const { scheme, given, job } = edited((draft) => {
      edits.setMaterial(draft, 's1', ['d2'], 'stainless');
      return edits.branchFrom(draft, 's1', 'd2', 0.5, [3, 1, 2.35]);
    });
    expect(nodeOf(scheme, given.node)?.at).toEqual([1, 1, 2.35]);
    expect(segmentOf(scheme, given.segment ?? '')).toMatchObject({ from: given.node, material: 'stainless' });
    expect(inferRoute(job, 's1').nodes.get(given.node)?.kind).toBe('junction');
  });
});

describe('risers', () => {
  test('at the end of a run the run goes up, and its cap with it', () => {
    const { scheme } = edited((job) => edits.setRiser(job, 's1', 'n4', 1.2));
    expect(nodeOf(scheme, 'n5')).toMatchObject({ at: [4, 2, 3.55], role: 'cap' });
  });

  test('inside a run all that lies beyond is lifted', () => {
    const { scheme, given } = edited((job) => edits.setRiser(job, 's1', 'n3', -0.4));
    expect(given).toEqual({ node: 'n5', segment: 'd4' });
    expect(nodeOf(scheme, 'n3')?.at).toEqual(places.n3);
    expect([nodeOf(scheme, 'n5')?.at, nodeOf(scheme, 'n4')?.at]).toEqual([
      [1, 2, 1.95],
      [4, 2, 1.95],
    ]);
    expect(segmentOf(scheme, 'd3')).toMatchObject({ from: 'n5', to: 'n4' });
  });

  test('of no height leave no trace', () => {
    expect(edited((job) => edits.setRiser(job, 's1', 'n3', 0)).given).toBeNull();
  });
});

test('a place enters the document without the noise of sums', () => {
  const { scheme } = edited((job) => {
    edits.setNodePosition(job, 's1', 'n3', [0.1 + 0.2, 0.6095999999999999, Math.SQRT1_2]);
  });
  expect(nodeOf(scheme, 'n3')?.at).toEqual([0.3, 0.6096, expect.closeTo(Math.SQRT1_2, 11)]);
});

describe('the radius of a bend', () => {
  const bent = edited((job) => edits.setBend(job, 's1', 'n3', { kind: 'smooth', radiusRatio: 1 })).job;

  test('becomes what is asked for', () => {
    const { job, given } = edited((draft) => edits.setRadius(draft, 's1', 'n3', 0.4), bent);
    expect(given?.limited).toBe(false);
    expect(inferRoute(job, 's1').nodes.get('n3')?.bend?.radius).toBeCloseTo(0.4, 12);
  });

  test('is held to the largest that its legs have room for, which does fit', () => {
    const largest = largestRadius(inferRoute(bent, 's1'), 'n3') ?? Number.NaN;
    const other = inferRoute(bent, 's1').nodes.get('n2')?.bend?.tangent ?? Number.NaN;
    expect(largest).toBeCloseTo(2 - other, 9);
    const { job, given } = edited((draft) => edits.setRadius(draft, 's1', 'n3', 50), bent);
    expect(given?.limited).toBe(true);
    expect(inferRoute(job, 's1').nodes.get('n3')?.bend?.radius).toBeCloseTo(largest, 9);
    expect(inferRoute(job, 's1').findings.map(({ rule }) => rule)).not.toContain('does-not-fit');
  });

  test('is no less than half a diameter', () => {
    expect(edited((draft) => edits.setRadius(draft, 's1', 'n3', 0.01), bent).given?.radiusRatio).toBe(0.5);
  });

  test('is not for a mitre, nor for a node without a bend', () => {
    const mitred = edited((job) => edits.setBend(job, 's1', 'n3', { kind: 'mitred' })).job;
    expect(edited((draft) => edits.setRadius(draft, 's1', 'n3', 0.4), mitred).given).toBeNull();
    expect(edited((draft) => edits.setRadius(draft, 's1', 'n4', 0.4), bent).given).toBeNull();
  });
});

describe('a whole run', () => {
  const branched = edited((job) => {
    edits.branchFrom(job, 's1', 'd3', 0.5, [2.5, 5, 2.35]);
    edits.insertNode(job, 's1', 'd2', [1, 1, 2.35]);
  }).job;
  const from = (reach: Parameters<typeof stretchFrom>[2]) =>
    stretchFrom(inferRoute(branched, 's1'), 'd2', reach);

  test('reaches to the next fitting, to the next junction, or all over', () => {
    expect(from('fitting')).toEqual(['d2', 'd6']);
    expect(from('junction')).toEqual(['d1', 'd2', 'd6', 'd3']);
    expect([...from('run')].sort()).toEqual(['d1', 'd2', 'd3', 'd4', 'd5', 'd6']);
  });

  test('changes size and material as far as it is told', () => {
    const duct = { shape: 'round', diameter: 0.1524 } as const;
    const { scheme } = edited(
      (job) => edits.setWholeRun(job, 's1', 'd2', 'fitting', { duct, material: 'stainless' }),
      branched,
    );
    expect(scheme.segments.filter((s) => s.material === 'stainless' && s.duct).map(({ id }) => id)).toEqual([
      'd2',
      'd6',
    ]);
  });

  test('turned round has its hood where its cap was, and its fittings where they were', () => {
    const { job, scheme, given } = edited((draft) => edits.reverseRun(draft, 's1', 'd2'));
    expect(given).toBe(true);
    expect(nodeOf(scheme, 'n4')).toEqual({ id: 'n4', at: places.n4, role: 'hood', hood: 'h1' });
    expect(nodeOf(scheme, 'n1')).toEqual({ id: 'n1', at: places.n1, role: 'cap', cap: 'wall-flap' });
    expect(segmentOf(scheme, 'd2')).toMatchObject({ from: 'n3', to: 'n2', fittings: [{ at: 1.5 }] });
    expect(inferRoute(job, 's1').order).toEqual(['d3', 'd2', 'd1']);
    expect(edited((draft) => edits.reverseRun(draft, 's1', 'd2'), job).job).toEqual(drawn());
  });

  test('that ends at a junction cannot be turned round', () => {
    const { job, given } = edited((draft) => edits.reverseRun(draft, 's1', 'd2'), branched);
    expect(given).toBe(false);
    expect(job).toEqual(branched);
  });
});

test('every edit leaves a sound drawing', () => {
  const origin: Vec3 = [0, 0, 0];
  const { job } = edited((draft) => {
    edits.splitRun(draft, 's1', 'n3');
    edits.duplicateSelection(draft, 's1', everything, origin);
    edits.setRiser(draft, 's1', 'n2', 0.5);
    edits.branchFrom(draft, 's1', 'd1', 0.3, [3, 3, 3]);
  });
  expect(unsound(job)).toEqual([]);
});
