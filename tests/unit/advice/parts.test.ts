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
  it('has the straight duct that the bends leave, and the legs that it lies in', () => {
    const job = runThrough(bent, { bend: { kind: 'smooth', radiusRatio: 1.5 } });
    const [duct] = ofKind(job, 'duct');
    // The tangents of a square bend are its radius: 1.5 x 0.2032 m off either leg.
    expect(duct?.quantity).toBeCloseTo(5 - 2 * 1.5 * 0.2032, 9);
    expect(duct?.segments).toEqual(['d1', 'd2']);
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

  it('asks for a coupling at each joint between two lengths of spiral pipe, and for none at a crimp', () => {
    const straight = (length: number, material: string) =>
      ofKind(
        runThrough(
          [
            [0, 0, 0],
            [0, length, 0],
          ],
          { material },
        ),
        'coupling',
      );
    expect(straight(3, 'spiral')).toEqual([]);
    expect(straight(3.1, 'spiral')[0]?.quantity).toBe(1);
    expect(straight(9.2, 'spiral')[0]?.quantity).toBe(3);
    expect(straight(9.2, 'galvanized')).toEqual([]);
  });

  it('joins rectangular duct by slips and drives at every joint, also to its fittings', () => {
    const duct = { shape: 'rectangular' as const, width: 0.254, height: 0.0826 };
    const job = runThrough(bent, { duct, bend: 'rectangular-mitred' });
    const hood = job.hoods.map((one) => ({ ...one, collar: duct }));
    // Two lengths in the first leg and two in the second: hood, one between, bend, bend, one between; the end is open.
    const [joints] = ofKind({ ...job, hoods: hood }, 'coupling');
    expect([joints?.row, joints?.quantity]).toEqual(['slip-and-drive', 5]);
  });

  it('fastens and seals every joint: three rivets and a band of sealant round each', () => {
    // Hood, one joint between two lengths, cap: three joints round 8 in pipe.
    const job = runThrough(
      [
        [0, 0, 0],
        [0, 2, 0],
      ],
      {},
      'wall-flap',
    );
    expect(ofKind(job, 'fastener')[0]?.quantity).toBe(9);
    expect(ofKind(job, 'sealant')[0]?.quantity).toBeCloseTo(3 * Math.PI * 0.2032 * 0.1, 9);
    expect(ofKind(job, 'tape')).toEqual([]);
  });

  it('weighs duct by its girth, its wall and its metal', () => {
    const job = runThrough([
      [0, 0, 0],
      [0, 2, 0],
    ]);
    // Two pieces, each with a lap of 38.1 mm; 26 gauge sheet of 0.551 mm, steel 7850 kg/m3, 5 % for seams.
    const kilograms = Math.PI * 0.2032 * 0.000551 * 7850 * 1.05 * (2 + 2 * 0.0381);
    expect(ofKind(job, 'duct')[0]?.weight).toBeCloseTo(kilograms, 9);
    expect(ofKind(job, 'hanger')[0]?.weight).toBeUndefined();
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
    const { segments, nodes } = inferRoute(job, 'scheme-1');
    const straight = [...segments.values()].reduce((sum, leg) => sum + leg.straight, 0);
    const radius = nodes.get('n1')?.bend?.radius ?? 0;
    expect(radius).toBeGreaterThan(0);
    expect(ofKind(job, 'duct')[0]?.quantity).toBeCloseTo((straight + (radius * Math.PI) / 2) / 0.8, 6);
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
