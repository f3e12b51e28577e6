import { describe, expect, it } from 'vitest';
import { type Part, partsOf, partWords } from '../../../src/advice/parts.ts';
import type { Job, Vec3 } from '../../../src/graph/document.ts';
import { inferRoute } from '../../../src/graph/infer.ts';
import { exampleJob, runThrough, withScheme } from '../../support/route-job.ts';

function quantities(job: Job, schemeId = job.schemes[0]?.id ?? ''): Record<string, number> {
  return Object.fromEntries(partsOf(job, schemeId).map(({ key, quantity }) => [key, quantity]));
}

function ofKind(job: Job, kind: Part['kind'], schemeId = job.schemes[0]?.id ?? ''): readonly Part[] {
  return partsOf(job, schemeId).filter((part) => part.kind === kind);
}

const bent: Vec3[] = [
  [0, 0, 0],
  [0, 0, 2],
  [0, 3, 2],
];

describe('a parts list', () => {
  it('has the straight duct that the bends leave, with the lengths to cut', () => {
    const job = runThrough(bent, { bend: { kind: 'smooth', radiusRatio: 1.5 } });
    const [duct] = ofKind(job, 'duct');
    // The tangents of a square bend are its radius: 1.5 x 0.2032 m off either leg.
    expect(duct?.quantity).toBeCloseTo(5 - 2 * 1.5 * 0.2032, 9);
    expect(duct?.lengths?.map(({ segment }) => segment)).toEqual(['d1', 'd2']);
    expect(duct?.lengths?.reduce((sum, { length }) => sum + length, 0)).toBeCloseTo(duct?.quantity ?? 0, 9);
  });

  it('counts as many bends, reducers and caps as the route has', () => {
    const job = exampleJob();
    const route = inferRoute(job, 'roof');
    const made = [...route.nodes.values()].filter(({ bend }) => bend && bend.kind !== 'flexible').length;
    const count = (kind: Part['kind']) =>
      ofKind(job, kind, 'roof').reduce((sum, { quantity }) => sum + quantity, 0);
    expect(count('bend')).toBe(made);
    expect(count('transition')).toBe(1);
    expect(count('cap')).toBe(1);
    expect(count('in-line')).toBe(1);
  });

  it('puts like things on one line, however many legs they lie in', () => {
    const keys = partsOf(exampleJob(), 'roof').map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('asks for a coupling at each joint between two stock lengths of 5 ft', () => {
    const straight = (length: number) =>
      runThrough([
        [0, 0, 0],
        [0, length, 0],
      ]);
    expect(ofKind(straight(1.5), 'coupling')).toEqual([]);
    expect(ofKind(straight(1.6), 'coupling')[0]?.quantity).toBe(1);
    expect(ofKind(straight(4.6), 'coupling')[0]?.quantity).toBe(3);
  });

  it('hangs level duct by spacing and leaves risers to the floors', () => {
    const hangers = (end: Vec3) => ofKind(runThrough([[0, 0, 0], end]), 'hanger')[0]?.quantity ?? 0;
    expect(hangers([0, 2.4, 0])).toBe(1);
    expect(hangers([0, 2.5, 0])).toBe(2);
    expect(hangers([0, 0, 3])).toBe(0);
  });

  it('buys flexible duct by its stretched length, and no bend where it bends by itself', () => {
    const job = withScheme(runThrough(bent, { material: 'flexible', bend: 'flexible' }), (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) => ({ ...segment, stretch: 0.8 })),
    }));
    const straight = [...inferRoute(job, 'scheme-1').segments.values()].reduce(
      (n, leg) => n + leg.straight,
      0,
    );
    expect(ofKind(job, 'duct')[0]?.quantity).toBeCloseTo(straight / 0.8, 9);
    expect(ofKind(job, 'bend')).toEqual([]);
  });

  it('wraps duct by its outside', () => {
    const job = withScheme(
      runThrough([
        [0, 0, 0],
        [0, 2, 0],
      ]),
      (scheme) => ({
        ...scheme,
        segments: scheme.segments.map((segment) => ({ ...segment, insulation: 0.025 })),
      }),
    );
    expect(ofKind(job, 'insulation')[0]?.quantity).toBeCloseTo((Math.PI * 0.2032 + 4 * 0.025) * 2, 9);
  });

  it('has the make-up air of the job once', () => {
    const job = exampleJob();
    const house = job.house && { ...job.house, makeUpAir: { kind: 'opening' as const, area: 0.1 } };
    const [one, ...more] = ofKind({ ...job, ...(house ? { house } : {}) }, 'make-up air', 'wall');
    expect([one?.quantity, one?.size, more]).toEqual([1, 0.1, []]);
  });

  it('is the same for a scheme drawn the other way round', () => {
    const job = runThrough(bent);
    const turned = withScheme(job, (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) => ({ ...segment, from: segment.to, to: segment.from })),
    }));
    expect(quantities(turned)).toEqual(quantities(job));
  });

  it('calls a part what it is called across the counter, in either units', () => {
    const [duct] = ofKind(exampleJob(), 'duct', 'wall');
    expect(duct && partWords(duct, 'imperial')).toBe('8" round galvanized steel duct');
    expect(duct && partWords(duct, 'metric')).toMatch(/^203 mm round/);
  });
});
