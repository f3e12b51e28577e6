import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Block, Job, Scheme, Vec3 } from '../../src/graph/document.ts';
import { type Box, gapBetween, wayOut } from '../../src/graph/fit/gap.ts';
import type { Tube } from '../../src/graph/fit/tube.ts';
import { fitFindings } from '../../src/graph/fit.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { add, cross, distance, norm, normalize, scale, subtract } from '../../src/graph/vector.ts';
import { drawn } from '../support/drawn.ts';

const coordinate = fc.double({ min: -3, max: 3, noNaN: true });
const place = fc.tuple(coordinate, coordinate, coordinate) as fc.Arbitrary<Vec3>;
const side = fc.double({ min: 0.02, max: 2, noNaN: true });
const half = fc.double({ min: 0, max: 0.4, noNaN: true });

const aBox: fc.Arbitrary<Box> = fc
  .tuple(place, side, side, side)
  .map(([min, x, y, z]) => ({ min, max: add(min, [x, y, z]) }));
const aTube: fc.Arbitrary<Tube> = fc
  .tuple(place, place, half, half, half)
  .filter(([a, b]) => distance(a, b) > 0.3)
  .map(([a, b, one, other, rounding]) => {
    const along = normalize(subtract(b, a));
    const first = normalize(cross(along, Math.abs(along[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
    return { a, b, across: [first, cross(along, first)], half: [one, other], rounding };
  });

const outside = (at: Vec3, { min, max }: Box) =>
  Math.hypot(...([0, 1, 2] as const).map((k) => Math.max(min[k] - at[k], at[k] - max[k], 0)));

/**
 * Least distance to a box from a grid of places in the core, less the rounding, and from places on the
 * outside of the duct, which ends where it ends; and the step of the grid.
 */
function sampled(tube: Tube, box: Box): { rounded: number; flat: number; step: number } {
  const run = subtract(tube.b, tube.a);
  const n = 16;
  let rounded = Number.POSITIVE_INFINITY;
  let flat = Number.POSITIVE_INFINITY;
  const place = (t: number, one: number, other: number) =>
    add(add(tube.a, scale(run, t)), add(scale(tube.across[0], one), scale(tube.across[1], other)));
  for (let i = 0; i <= n; i += 1)
    for (let j = 0; j <= n; j += 1)
      for (let k = 0; k <= n; k += 1) {
        const one = tube.half[0] * ((2 * j) / n - 1);
        const other = tube.half[1] * ((2 * k) / n - 1);
        rounded = Math.min(rounded, outside(place(i / n, one, other), box) - tube.rounding);
        const turn = (2 * Math.PI * (j + k * n)) / (n * n);
        const [u, v] = [one + tube.rounding * Math.cos(turn), other + tube.rounding * Math.sin(turn)];
        flat = Math.min(flat, outside(place(i / n, u, v), box));
      }
  const step = Math.hypot(norm(run), 2 * tube.half[0], 2 * tube.half[1]) / n;
  return { rounded: Math.max(0, rounded), flat, step };
}

test('the gap between sloping duct and a block is what a grid of places in the duct finds, to the step of the grid', () => {
  fc.assert(
    fc.property(aTube, aBox, (tube, box) => {
      const { rounded, flat, step } = sampled(tube, box);
      const gap = gapBetween(tube, box);
      expect(gap).toBeLessThanOrEqual(flat + 1e-6);
      expect(gap).toBeGreaterThanOrEqual(rounded - step);
    }),
    { numRuns: 300 },
  );
});

test('duct that moves out by the way that it is told is clear, and half of that is not enough', () => {
  fc.assert(
    fc.property(aTube, aBox, (tube, box) => {
      fc.pre(gapBetween(tube, box) === 0);
      const way = wayOut(tube, box);
      fc.pre(way.distance > 0.002);
      const moved = (by: number): Tube => {
        const delta: Vec3 = [0, 0, 0];
        delta[way.axis] = way.sense * by;
        return { ...tube, a: add(tube.a, delta), b: add(tube.b, delta) };
      };
      expect(gapBetween(moved(way.distance / 2), box)).toBe(0);
      const clear = gapBetween(moved(way.distance + 1e-4), box);
      expect(clear).toBeGreaterThan(0);
      expect(clear).toBeLessThan(0.0011);
    }),
  );
});

test('a room moved with its route says the same of the fit', () => {
  // Sums of 64ths are exact, so that a touch is a touch wherever it is.
  const sixtyFourths = (low: number, high: number) =>
    fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
  const where = fc.tuple(sixtyFourths(-3, 5), sixtyFourths(-3, 4), sixtyFourths(1, 3));
  const size = fc.tuple(sixtyFourths(0.0625, 2), sixtyFourths(0.0625, 2), sixtyFourths(0.0625, 2));
  const kind = fc.constantFrom<Block['kind']>('joist', 'chase', 'cabinet', 'wall', 'obstacle');
  const delta = fc.tuple(sixtyFourths(-8, 8), sixtyFourths(-8, 8), sixtyFourths(-8, 8));
  const blocks = fc.array(fc.record({ where, size, kind }), { maxLength: 12 });
  fc.assert(
    fc.property(blocks, delta, (boxes, by) => {
      const room = (moved: Vec3): Job => {
        const job = structuredClone(drawn());
        const scheme = job.schemes[0] as Scheme;
        for (const node of scheme.nodes)
          node.at = add(node.at.map((x) => Math.round(x * 64) / 64) as Vec3, moved);
        const made = boxes.map((box, i): Block => {
          const min = add(box.where, moved);
          return { id: `b${i}`, name: '', kind: box.kind, min, max: add(min, box.size) };
        });
        return { ...job, blocks: made };
      };
      const told = (job: Job) =>
        fitFindings(job, inferRoute(job, 's1')).map(({ rule, segments, nodes, blocks: met }) => ({
          rule,
          segments,
          nodes,
          met: [...(met ?? [])].sort(),
        }));
      expect(told(room(by))).toEqual(told(room([0, 0, 0])));
    }),
  );
});

test('a room of any size and place, turned and sloping duct in it, gets findings with words and no exception', () => {
  const wild = fc.oneof(fc.integer({ min: -4, max: 4 }), fc.double({ noNaN: true, noDefaultInfinity: true }));
  const anywhere = fc.tuple(wild, wild, wild) as fc.Arbitrary<Vec3>;
  const section = fc.constantFrom<Scheme['defaults']['duct']>(
    { shape: 'round', diameter: 0.2 },
    { shape: 'rectangular', width: 0.3, height: 0.1 },
    { shape: 'oval', width: 0.1, height: 0.3 },
  );
  const kind = fc.constantFrom<Block['kind']>('joist', 'chase', 'cabinet', 'wall', 'obstacle', 'beam');
  const blocks = fc.array(fc.tuple(anywhere, anywhere, kind), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(blocks, anywhere, anywhere, section, (boxes, second, third, duct) => {
      const job = structuredClone(drawn());
      const scheme = job.schemes[0] as Scheme;
      scheme.defaults = { duct, material: 'galvanized', bend: { kind: 'smooth', radiusRatio: 1.5 } };
      (scheme.nodes[1] as Scheme['nodes'][0]).at = second;
      (scheme.nodes[2] as Scheme['nodes'][0]).at = third;
      const corner = (pick: (...of: number[]) => number, one: Vec3, other: Vec3) =>
        one.map((x, i) => pick(x, other[i] as number)) as Vec3;
      const made = boxes.map(([one, other, of], i): Block => {
        return {
          id: `b${i}`,
          name: '',
          kind: of,
          min: corner(Math.min, one, other),
          max: corner(Math.max, one, other),
        };
      });
      const whole: Job = {
        ...job,
        blocks: made,
        exits: [{ id: 'x', name: '', kind: 'wall', min: [0, 2, 0], max: [4, 3, 4] }],
      };
      for (const { message, id, blocks: met } of fitFindings(whole, inferRoute(whole, 's1'))) {
        expect(message).toMatch(/^[A-Z].+\.$/);
        expect(message).not.toMatch(/NaN|undefined|Infinity/);
        expect(id).toMatch(/^fit-/);
        expect(met?.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 300 },
  );
});
