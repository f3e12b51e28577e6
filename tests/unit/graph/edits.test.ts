import { describe, expect, test } from 'vitest';
import * as edits from '../../../src/graph/edits/index.ts';
import { drawn, edited, nodeOf, places, type schemeOf, segmentOf, unsound } from '../../support/drawn.ts';

const ids = (rows: readonly { id: string }[]) => rows.map((row) => row.id);
const ends = (scheme: ReturnType<typeof schemeOf>) => scheme.segments.map((s) => `${s.id} ${s.from}-${s.to}`);

describe('ids', () => {
  test('a fresh id is one more than the highest number taken', () => {
    expect(edits.freshId('n', [{ id: 'n2' }, { id: 'n10' }, { id: 'd50' }, { id: 'nook' }])).toBe('n11');
  });

  test('an edit of an id that is not there throws and changes nothing', () => {
    const job = drawn();
    expect(() => edited((draft) => edits.extendRun(draft, 's1', 'n9', [0, 0, 0]), job)).toThrow(
      'no node "n9"',
    );
    expect(job).toEqual(drawn());
  });
});

describe('drawing', () => {
  test('a run grows by one node and one segment', () => {
    const { scheme, given } = edited((job) => edits.extendRun(job, 's1', 'n3', [1, 5, 2.35]));
    expect(given).toEqual({ node: 'n5', segment: 'd4' });
    expect(segmentOf(scheme, 'd4')).toEqual({ id: 'd4', from: 'n3', to: 'n5' });
    expect(nodeOf(scheme, 'n5')).toEqual({ id: 'n5', at: [1, 5, 2.35], role: 'turn' });
  });

  test('a leg is made of what the run before it is made of', () => {
    const { scheme } = edited((job) => {
      edits.setDuct(job, 's1', ['d3'], { shape: 'round', diameter: 0.1524 });
      edits.setMaterial(job, 's1', ['d3'], 'stainless');
      edits.extendRun(job, 's1', 'n4', [4, 4, 2.35]);
    });
    expect(segmentOf(scheme, 'd4')).toMatchObject({
      duct: { shape: 'round', diameter: 0.1524 },
      material: 'stainless',
    });
  });

  test('a cap moves on to the new end of its run', () => {
    const { scheme } = edited((job) => edits.extendRun(job, 's1', 'n4', [4, 4, 2.35]));
    expect(nodeOf(scheme, 'n4')).toEqual({ id: 'n4', at: places.n4, role: 'turn' });
    expect(nodeOf(scheme, 'n5')).toMatchObject({ role: 'cap', cap: 'wall-flap' });
  });

  test('a leg to where the run already is leaves no trace', () => {
    const { job, given } = edited((draft) => edits.extendRun(draft, 's1', 'n3', [1, 2, 2.35]));
    expect(given).toBeNull();
    expect(job).toEqual(drawn());
  });

  test('a run closes on a node that is there', () => {
    const { scheme, given } = edited((job) => edits.closeToNode(job, 's1', 'n4', 'n2'));
    expect(given).toBe('d4');
    expect(segmentOf(scheme, 'd4')).toMatchObject({ from: 'n4', to: 'n2' });
    expect(nodeOf(scheme, 'n4')).toEqual({ id: 'n4', at: places.n4, role: 'turn' });
  });

  test('two nodes are not joined twice, nor a node with itself', () => {
    expect(edited((job) => edits.closeToNode(job, 's1', 'n3', 'n2')).given).toBeNull();
    expect(edited((job) => edits.closeToNode(job, 's1', 'n3', 'n3')).given).toBeNull();
  });

  test('a hood is one that the scheme does not show yet', () => {
    const { scheme, given } = edited((job) => {
      job.hoods.push({ ...structuredClone(drawn().hoods[0] as (typeof job.hoods)[0]), id: 'h2' });
      return edits.addHood(job, 's1', [0, 0, 1.75]);
    });
    expect(nodeOf(scheme, given ?? '')).toEqual({ id: 'n5', at: [0, 0, 1.75], role: 'hood', hood: 'h2' });
  });

  test('a hood that comes with it is added to the job once', () => {
    const { job } = edited((draft) => {
      const hood = { ...structuredClone(drawn().hoods[0] as (typeof draft.hoods)[0]), id: 'h7' };
      edits.addHood(draft, 's1', [0, 0, 1.75], hood);
      edits.addHood(draft, 's1', [2, 0, 1.75], hood);
    });
    expect(ids(job.hoods)).toEqual(['h1', 'h7']);
  });

  test('without a hood in the job there is none to place', () => {
    const { given } = edited((job) => {
      job.hoods = [];
      return edits.addHood(job, 's1', [0, 0, 1.75]);
    });
    expect(given).toBeNull();
  });
});

describe('a node put into a segment', () => {
  const insert = (v: number) => edited((job) => edits.insertNode(job, 's1', 'd2', [1, v, 2.35]));

  test('makes two of it, in order', () => {
    const { scheme, given } = insert(0.8);
    expect(given).toEqual({ node: 'n5', before: 'd2', after: 'd4' });
    expect(ends(scheme)).toEqual(['d1 n1-n2', 'd2 n2-n5', 'd4 n5-n3', 'd3 n3-n4']);
  });

  test('beyond a fitting leaves the fitting on the first half', () => {
    const { scheme } = insert(0.8);
    expect(segmentOf(scheme, 'd2')?.fittings).toEqual([{ kind: 'backdraught-damper', at: 0.5 }]);
    expect(segmentOf(scheme, 'd4')?.fittings).toBeUndefined();
  });

  test('before a fitting leaves the fitting where it is in space', () => {
    const { scheme } = insert(0.2);
    expect(segmentOf(scheme, 'd2')?.fittings).toBeUndefined();
    expect(segmentOf(scheme, 'd4')?.fittings?.[0]?.at).toBeCloseTo(0.3, 12);
  });

  test('at an end is the node that is there', () => {
    const { job, given } = insert(2);
    expect(given.node).toBe('n3');
    expect(job).toEqual(drawn());
  });

  test('makes both halves of what the segment was made of', () => {
    const { scheme } = edited((job) => {
      edits.setMaterial(job, 's1', ['d2'], 'flexible');
      edits.setStretch(job, 's1', ['d2'], 0.9);
      edits.insertNode(job, 's1', 'd2', [1, 1, 2.35]);
    });
    expect(segmentOf(scheme, 'd4')).toMatchObject({ material: 'flexible', stretch: 0.9 });
  });
});

describe('deleting', () => {
  const remove = (nodes: string[], segments: string[] = []) =>
    edited((job) => edits.deleteSelection(job, 's1', { nodes, segments }));

  test('a turn joins its neighbours', () => {
    const { scheme } = remove(['n3']);
    expect(ends(scheme)).toEqual(['d1 n1-n2', 'd2 n2-n4']);
  });

  test('a turn keeps the fittings of both legs at their share of the way', () => {
    const { scheme } = remove(['n3']);
    const [fitting] = segmentOf(scheme, 'd2')?.fittings ?? [];
    expect(fitting?.at).toBeCloseTo((0.5 / 5) * Math.hypot(3, 2), 12);
  });

  test('two turns in a row leave one leg', () => {
    const { scheme } = remove(['n2', 'n3']);
    expect(ends(scheme)).toEqual(['d1 n1-n4']);
  });

  test('the joined leg goes the way that the first one went', () => {
    const { scheme } = edited((job) => {
      edits.reverseSegment(job, 's1', 'd2');
      edits.reverseSegment(job, 's1', 'd3');
      edits.deleteSelection(job, 's1', { nodes: ['n3'], segments: [] });
    });
    expect(ends(scheme)).toEqual(['d1 n1-n2', 'd3 n4-n2']);
  });

  test('an end takes its leg with it', () => {
    const { scheme } = remove(['n4']);
    expect(ids(scheme.nodes)).toEqual(['n1', 'n2', 'n3']);
    expect(ids(scheme.segments)).toEqual(['d1', 'd2']);
  });

  test('a segment in the middle leaves the gap open', () => {
    const { scheme } = remove([], ['d2']);
    expect(ids(scheme.nodes)).toEqual(['n1', 'n2', 'n3', 'n4']);
    expect(ids(scheme.segments)).toEqual(['d1', 'd3']);
  });

  test('the last leg at a node takes the node, but not a hood', () => {
    const { scheme } = remove([], ['d1', 'd2', 'd3']);
    expect(ids(scheme.nodes)).toEqual(['n1']);
  });

  test('everything leaves nothing', () => {
    const { scheme } = remove(['n1', 'n2', 'n3', 'n4'], ['d1', 'd2', 'd3']);
    expect([...scheme.nodes, ...scheme.segments]).toEqual([]);
  });

  test('a corner of a triangle does not double the side across from it', () => {
    const { job, scheme } = edited((draft) => {
      edits.closeToNode(draft, 's1', 'n4', 'n2');
      edits.deleteSelection(draft, 's1', { nodes: ['n3'], segments: [] });
    });
    expect(ends(scheme)).toEqual(['d1 n1-n2', 'd4 n4-n2']);
    expect(unsound(job)).toEqual([]);
  });
});

describe('moving', () => {
  test('nodes move by the same vector', () => {
    const { scheme } = edited((job) => edits.moveNodes(job, 's1', ['n2', 'n3'], [0.5, 0, 0.1]));
    expect(nodeOf(scheme, 'n2')?.at).toEqual([1.5, 0, 2.45]);
    expect(nodeOf(scheme, 'n3')?.at).toEqual([1.5, 2, 2.45]);
    expect(nodeOf(scheme, 'n4')?.at).toEqual(places.n4);
  });

  test('a leg that becomes shorter than its fitting is far keeps the fitting at its end', () => {
    const { scheme } = edited((job) => edits.setNodePosition(job, 's1', 'n3', [1, 0.3, 2.35]));
    expect(segmentOf(scheme, 'd2')?.fittings?.[0]?.at).toBeCloseTo(0.3, 12);
  });

  test('a new length takes along all that is downstream', () => {
    const { scheme, given } = edited((job) => edits.setLength(job, 's1', 'd2', 3));
    expect(given.toSorted()).toEqual(['n3', 'n4']);
    expect(nodeOf(scheme, 'n2')?.at).toEqual(places.n2);
    expect(nodeOf(scheme, 'n3')?.at).toEqual([1, 3, 2.35]);
    expect(nodeOf(scheme, 'n4')?.at).toEqual([4, 3, 2.35]);
  });

  test('downstream is away from the hood, whichever way the leg was drawn', () => {
    const { scheme } = edited((job) => {
      edits.reverseSegment(job, 's1', 'd2');
      edits.setLength(job, 's1', 'd2', 3);
    });
    expect(nodeOf(scheme, 'n2')?.at).toEqual(places.n2);
    expect(nodeOf(scheme, 'n3')?.at).toEqual([1, 3, 2.35]);
  });

  test('in a loop only the far end of the leg moves', () => {
    const { given } = edited((job) => {
      edits.closeToNode(job, 's1', 'n4', 'n2');
      return edits.setLength(job, 's1', 'd2', 3);
    });
    expect(given).toEqual(['n3']);
  });

  test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])('a length of %d is refused', (length) => {
    const { job, given } = edited((draft) => edits.setLength(draft, 's1', 'd2', length));
    expect(given).toEqual([]);
    expect(job).toEqual(drawn());
  });

  test('merging two nodes brings their legs together', () => {
    const { job, scheme, given } = edited((draft) => {
      const loose = edits.addNode(draft, 's1', [0, 5, 2.35]);
      const leg = edits.extendRun(draft, 's1', loose, [0, 6, 2.35]);
      return edits.mergeNodes(draft, 's1', leg?.node ?? '', 'n3');
    });
    expect(given).toBe(true);
    expect(ends(scheme)).toContain('d4 n5-n3');
    expect(unsound(job)).toEqual([]);
  });

  test('merging the ends of a leg removes the leg', () => {
    const { job, scheme } = edited((draft) => edits.mergeNodes(draft, 's1', 'n3', 'n2'));
    expect(ends(scheme)).toEqual(['d1 n1-n2', 'd3 n2-n4']);
    expect(unsound(job)).toEqual([]);
  });

  test('merging keeps a fitting on a leg that becomes shorter', () => {
    const { job, scheme } = edited((draft) => {
      const near = edits.addNode(draft, 's1', [1, 0.2, 2.35]);
      edits.extendRun(draft, 's1', near, [5, 5, 2.35]);
      edits.mergeNodes(draft, 's1', 'n3', near);
    });
    expect(segmentOf(scheme, 'd2')?.fittings?.[0]?.at).toBeCloseTo(0.2, 12);
    expect(unsound(job)).toEqual([]);
  });

  test('a cap that is merged into the end of its run stays a cap', () => {
    const { scheme } = edited((job) => edits.mergeNodes(job, 's1', 'n4', 'n3'));
    expect(nodeOf(scheme, 'n3')).toEqual({ id: 'n3', at: places.n3, role: 'cap', cap: 'wall-flap' });
  });

  test('a turned segment keeps its fitting in place', () => {
    const { scheme } = edited((job) => edits.reverseSegment(job, 's1', 'd2'));
    expect(segmentOf(scheme, 'd2')).toMatchObject({ from: 'n3', to: 'n2', fittings: [{ at: 1.5 }] });
  });
});

describe('parts', () => {
  const six = { shape: 'round', diameter: 0.1524 } as const;
  const eight = { shape: 'round', diameter: 0.2032 } as const;

  test('a section of the whole run is the scheme’s own', () => {
    const { scheme } = edited((job) => {
      edits.setDuct(job, 's1', ['d2'], { shape: 'rectangular', width: 0.254, height: 0.08255 });
      edits.setDuct(job, 's1', 'all', six);
    });
    expect(scheme.defaults.duct).toEqual(six);
    expect(scheme.segments.every((s) => s.duct === undefined)).toBe(true);
  });

  test('a segment that is given the scheme’s own section stops differing', () => {
    const { job } = edited((draft) => {
      edits.setDuct(draft, 's1', ['d2'], six);
      edits.setDuct(draft, 's1', ['d2'], eight);
    });
    expect(job).toEqual(drawn());
  });

  test('a material of the whole run is the scheme’s own', () => {
    const { scheme } = edited((job) => {
      edits.setMaterial(job, 's1', ['d2'], 'flexible');
      edits.setMaterial(job, 's1', 'all', 'stainless');
    });
    expect(scheme.defaults.material).toBe('stainless');
    expect(segmentOf(scheme, 'd2')?.material).toBeUndefined();
  });

  test('a bend is chosen and left to the scheme again', () => {
    const { scheme } = edited((job) => edits.setBend(job, 's1', 'n2', { kind: 'smooth', radiusRatio: 1.5 }));
    expect(nodeOf(scheme, 'n2')?.bend).toEqual({ kind: 'smooth', radiusRatio: 1.5 });
    const { job } = edited((draft) => {
      edits.setBend(draft, 's1', 'n2', { kind: 'smooth' });
      edits.setBend(draft, 's1', 'n2', null);
    });
    expect(job).toEqual(drawn());
  });

  test('a bend for the whole scheme takes off every other choice', () => {
    const { scheme } = edited((job) => {
      edits.setBend(job, 's1', 'n2', { kind: 'mitred' });
      edits.setEveryBend(job, 's1', { kind: 'smooth', radiusRatio: 1.5 });
    });
    expect(scheme.defaults.bend).toEqual({ kind: 'smooth', radiusRatio: 1.5 });
    expect(nodeOf(scheme, 'n2')?.bend).toBeUndefined();
  });

  test('a cap goes on the end of a run and nowhere else', () => {
    expect(edited((job) => edits.setCap(job, 's1', 'n4', 'roof-cap')).given).toBe(true);
    expect(edited((job) => edits.setCap(job, 's1', 'n2', 'roof-cap')).given).toBe(false);
    expect(edited((job) => edits.setCap(job, 's1', 'n1', 'roof-cap')).given).toBe(false);
  });

  test('another cap does not keep the opening of the one before', () => {
    const { scheme } = edited((job) => {
      edits.setCapOpening(job, 's1', 'n4', 0.02);
      edits.setCap(job, 's1', 'n4', 'roof-cap');
    });
    expect(nodeOf(scheme, 'n4')).toEqual({ id: 'n4', at: places.n4, role: 'cap', cap: 'roof-cap' });
  });

  test('parts in line stand in order along the segment', () => {
    const { scheme, given } = edited((job) => edits.addInline(job, 's1', 'd2', { kind: 'screen', at: 0.1 }));
    expect(given).toBe(0);
    expect(segmentOf(scheme, 'd2')?.fittings?.map((f) => f.kind)).toEqual(['screen', 'backdraught-damper']);
  });

  test('a part put beyond the end of its segment stands at the end', () => {
    const { scheme, given } = edited((job) => edits.addInline(job, 's1', 'd2', { kind: 'screen', at: 9 }));
    expect(segmentOf(scheme, 'd2')?.fittings?.[given]).toEqual({ kind: 'screen', at: 2 });
  });

  test('a part in line is changed and taken out', () => {
    const { scheme } = edited((job) => edits.changeInline(job, 's1', 'd2', 0, { angle: 20 }));
    expect(segmentOf(scheme, 'd2')?.fittings).toEqual([{ kind: 'backdraught-damper', at: 0.5, angle: 20 }]);
    const without = edited((job) => edits.removeInline(job, 's1', 'd2', 0)).scheme;
    expect(segmentOf(without, 'd2')).toEqual({ id: 'd2', from: 'n2', to: 'n3' });
  });

  test('a part in line goes from its data sheet back to the catalogue without a trace', () => {
    const { scheme } = edited((job) => {
      edits.changeInline(job, 's1', 'd2', 0, { user: { c: 2 } });
      edits.changeInline(job, 's1', 'd2', 0, { user: undefined });
    });
    expect(Object.keys(segmentOf(scheme, 'd2')?.fittings?.[0] ?? {})).toEqual(['kind', 'at']);
  });
});

describe('schemes', () => {
  test('a copy is the same drawing under another name', () => {
    const { job, given } = edited((draft) => edits.duplicateScheme(draft, 's1'));
    const [first, copy] = job.schemes;
    expect(given).toBe('s2');
    expect(copy).toEqual({ ...first, id: 's2', name: 'Out the east wall copy' });
  });

  test('a second copy has a name of its own', () => {
    const { job } = edited((draft) => {
      edits.duplicateScheme(draft, 's1');
      edits.duplicateScheme(draft, 's1');
    });
    expect(new Set(job.schemes.map((s) => s.name)).size).toBe(3);
  });

  test('a new scheme starts with the hood alone', () => {
    const { job } = edited((draft) => edits.addScheme(draft, 's1', 'Up the roof'));
    expect(job.schemes[1]).toMatchObject({
      id: 's2',
      name: 'Up the roof',
      segments: [],
      nodes: [{ id: 'n1' }],
    });
  });

  test('a scheme is renamed, but not to nothing', () => {
    expect(edited((job) => edits.renameScheme(job, 's1', ' Shorter ')).scheme.name).toBe('Shorter');
    expect(edited((job) => edits.renameScheme(job, 's1', '  ')).given).toBe(false);
  });

  test('the last scheme stays', () => {
    const { job, given } = edited((draft) => edits.removeScheme(draft, 's1'));
    expect(given).toBe(false);
    expect(job).toEqual(drawn());
  });
});

describe('the job', () => {
  test('fields that are given are replaced and the others stay', () => {
    const { job } = edited((draft) => edits.replaceFields(draft, { title: 'Renamed', units: 'metric' }));
    expect(job).toEqual({ ...drawn(), title: 'Renamed', units: 'metric' });
  });

  test('a hood is replaced by the one with its id', () => {
    const { job } = edited((draft) => {
      const [hood] = drawn().hoods;
      if (hood) edits.replaceHood(draft, { ...hood, name: 'Renamed' });
    });
    expect(job.hoods.map((h) => h.name)).toEqual(['Renamed']);
  });
});
