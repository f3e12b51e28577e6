import { describe, expect, test } from 'vitest';
import { type Clip, clip } from '../../../src/graph/edits/clipboard.ts';
import * as edits from '../../../src/graph/edits/index.ts';
import { drawn, edited, nodeOf, schemeOf, segmentOf, unsound } from '../../support/drawn.ts';

const all = { nodes: ['n1', 'n2', 'n3', 'n4'], segments: [] };
const copied = (picked: Parameters<typeof clip>[2], job = drawn()): Clip => {
  const made = clip(job, 's1', picked);
  if (!made) throw new Error('nothing copied');
  return JSON.parse(JSON.stringify(made));
};

describe('copying', () => {
  test('takes the segments between the nodes that are picked', () => {
    expect(copied({ nodes: ['n2', 'n3'], segments: [] }).segments.map(({ id }) => id)).toEqual(['d2']);
  });

  test('takes the ends of a segment with it, and what it is made of', () => {
    const { nodes, segments } = copied({ nodes: [], segments: ['d3'] });
    expect(nodes.map(({ id }) => id)).toEqual(['n3', 'n4']);
    expect(segments[0]).toMatchObject({ material: 'galvanized', duct: { shape: 'round', diameter: 0.2032 } });
  });

  test('takes nothing of a turn alone', () => {
    expect(clip(drawn(), 's1', { nodes: ['n2'], segments: [] })).toBeNull();
  });

  test('shares nothing with the drawing', () => {
    const job = drawn();
    const made = clip(job, 's1', all);
    expect(made?.nodes[0]?.at).not.toBe(job.schemes[0]?.nodes[0]?.at);
  });
});

describe('pasting', () => {
  test('makes the same run again beside it, under new ids', () => {
    const { job, scheme, given } = edited((draft) =>
      edits.paste(draft, 's1', copied({ nodes: [], segments: ['d2', 'd3'] }), [0, 0, 1]),
    );
    expect(given).toEqual({ nodes: ['n5', 'n6', 'n7'], segments: ['d4', 'd5'], blocks: [] });
    expect(segmentOf(scheme, 'd4')).toEqual({
      id: 'd4',
      from: 'n5',
      to: 'n6',
      fittings: [{ kind: 'backdraught-damper', at: 0.5 }],
    });
    expect(nodeOf(scheme, 'n7')).toEqual({ id: 'n7', at: [4, 2, 3.35], role: 'cap', cap: 'wall-flap' });
    expect(unsound(job)).toEqual([]);
  });

  test('keeps what the duct was made of in a scheme that is made of something else', () => {
    const other = edited((job) => {
      edits.addScheme(job, 's1', 'Flexible');
      edits.setMaterial(job, 's2', 'all', 'flexible');
      return edits.paste(job, 's2', copied({ nodes: [], segments: ['d2'] }), [0, 0, 0]);
    });
    const pasted = other.job.schemes[1]?.segments.find(({ id }) => id === other.given.segments[0]);
    expect(pasted?.material).toBe('galvanized');
    expect(pasted?.duct).toBeUndefined();
  });

  test('keeps its bends in a scheme that turns with others, and chooses none in its own', () => {
    const before = edited((job) => edits.setEveryBend(job, 's1', { kind: 'smooth' })).job;
    const bends = edited((job) => {
      edits.addScheme(job, 's1', 'Mitred');
      edits.setEveryBend(job, 's2', { kind: 'mitred' });
      const made = copied(all, before);
      return [edits.paste(job, 's1', made, [0, 0, 0]), edits.paste(job, 's2', made, [0, 0, 0])];
    }, before).job.schemes.map((scheme) => scheme.nodes.slice(-4).map(({ bend }) => bend?.kind));
    expect(bends).toEqual([
      [undefined, undefined, undefined, undefined],
      [undefined, 'smooth', 'smooth', undefined],
    ]);
  });

  test('a hood that hangs in the scheme makes another hood', () => {
    const { job, scheme } = edited((draft) => edits.paste(draft, 's1', copied(all), [3, 0, 0]));
    expect(job.hoods.map(({ id, name }) => `${id} ${name}`)).toEqual([
      'h1 Invented hood',
      'hood-1 Invented hood, another',
    ]);
    expect(nodeOf(scheme, 'n5')?.hood).toBe('hood-1');
    expect(unsound(job)).toEqual([]);
  });

  test('a hood that the scheme does not show yet is that hood', () => {
    const { job } = edited((draft) => {
      edits.deleteSelection(draft, 's1', { nodes: ['n1'], segments: ['d1'] });
      edits.paste(draft, 's1', copied(all), [0, 0, 0]);
    });
    expect(job.hoods).toHaveLength(1);
    expect(schemeOf(job).nodes.filter(({ hood }) => hood === 'h1')).toHaveLength(1);
  });

  test('a hood from another job comes with it', () => {
    const { job } = edited((draft) => {
      draft.hoods = [];
      draft.schemes[0]?.nodes.splice(0);
      draft.schemes[0]?.segments.splice(0);
      edits.paste(draft, 's1', copied(all), [0, 0, 0]);
    });
    expect(job).toEqual(drawn());
  });

  test('blocks come along', () => {
    const { job } = edited((draft) => {
      edits.addBlock(draft, { name: 'beam', kind: 'beam', min: [0, 0, 0], max: [1, 1, 1] });
      edits.duplicateSelection(draft, 's1', { nodes: [], segments: [], blocks: ['b1'] }, [2, 0, 0]);
    });
    expect(job.blocks[1]).toEqual({ id: 'b2', name: 'beam', kind: 'beam', min: [2, 0, 0], max: [3, 1, 1] });
  });

  test('duplicates what an edit in progress has made', () => {
    const { scheme } = edited((job) => {
      edits.extendRun(job, 's1', 'n4', [4, 5, 2.35]);
      return edits.duplicateSelection(job, 's1', { nodes: [], segments: ['d4'] }, [1, 0, 0]);
    });
    expect(nodeOf(scheme, 'n7')).toMatchObject({ at: [5, 5, 2.35], role: 'cap' });
  });
});
