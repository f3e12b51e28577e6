import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstFit, packed } from '../../../../src/advice/parts/packing.ts';

/** The fewest stock lengths by trying every way to share the pieces out: no order, no bound, no rule. */
function fewest(sizes: readonly number[], capacity: number): number {
  let best = sizes.length;
  const rooms: number[] = [];
  const share = (i: number) => {
    if (i === sizes.length) {
      best = Math.min(best, rooms.length);
      return;
    }
    const size = sizes[i] as number;
    for (let k = 0; k < rooms.length; k += 1) {
      if ((rooms[k] as number) < size) continue;
      rooms[k] = (rooms[k] as number) - size;
      share(i + 1);
      rooms[k] = (rooms[k] as number) + size;
    }
    rooms.push(capacity - size);
    share(i + 1);
    rooms.pop();
  };
  share(0);
  return best;
}

const descending = (sizes: readonly number[]) => [...sizes].sort((a, b) => b - a);

/** Every piece once, and no stock length overfull. */
function isPacking(
  bins: readonly (readonly number[])[],
  sizes: readonly number[],
  capacity: number,
): boolean {
  const all = bins.flat().sort((a, b) => a - b);
  return (
    all.length === sizes.length &&
    all.every((i, k) => i === k) &&
    bins.every((bin) => bin.reduce((sum, i) => sum + (sizes[i] as number), 0) <= capacity)
  );
}

describe('packing pieces into stock lengths', () => {
  it('takes as few as an exhaustive search does', () => {
    const small = fc.array(fc.integer({ min: 8, max: 60 }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(small, fc.integer({ min: 60, max: 130 }), (sizes, capacity) => {
        const { bins, proved } = packed(sizes, capacity);
        expect([bins.length, proved]).toEqual([fewest(sizes, capacity), true]);
        expect(isPacking(bins, sizes, capacity)).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  it('is never worse than first-fit decreasing, however many pieces', () => {
    const many = fc.array(fc.integer({ min: 1, max: 1524 }), { minLength: 1, maxLength: 220 });
    fc.assert(
      fc.property(many, (sizes) => {
        const { bins } = packed(sizes, 1524);
        expect(bins.length).toBeLessThanOrEqual(firstFit(descending(sizes), 1524).length);
        expect(bins.length).toBeGreaterThanOrEqual(sizes.reduce((sum, size) => sum + size, 0) / 1524);
        expect(isPacking(bins, sizes, 1524)).toBe(true);
      }),
      { numRuns: 120 },
    );
  });

  it('finds what first-fit decreasing misses', () => {
    // 10 holds 4+3+3 twice; first-fit decreasing puts the fours together and needs a third.
    const sizes = [4, 4, 3, 3, 3, 3];
    expect(firstFit(sizes, 10)).toHaveLength(3);
    expect(packed(sizes, 10)).toMatchObject({ bins: { length: 2 }, proved: true });
  });

  it('says where it gave up proving, and is then still no worse than first-fit decreasing', () => {
    // Thirds that no two rules fill: a search cut off at once proves nothing.
    const sizes = [51, 51, 51, 51, 51, 27, 27, 27, 27, 26, 26, 26, 26, 23, 23, 23, 23, 23];
    const hard = packed(sizes, 100, 1);
    expect(hard.bins.length).toBeLessThanOrEqual(firstFit(descending(sizes), 100).length);
    if (!hard.proved) expect(packed(sizes, 100).bins.length).toBeLessThanOrEqual(hard.bins.length);
  });

  it('gathers what is left where the number of stock lengths is the same', () => {
    const { bins } = packed([6, 3, 3], 10);
    const left = bins.map((bin) => 10 - bin.reduce((sum, i) => sum + ([6, 3, 3][i] as number), 0));
    expect(descending(left)).toEqual([7, 1]);
  });

  it('packs nothing into nothing, and refuses a piece that no stock length holds', () => {
    expect(packed([], 10)).toEqual({ bins: [], proved: true });
    expect(() => packed([11], 10)).toThrow(RangeError);
    expect(() => packed([0], 10)).toThrow(RangeError);
    expect(() => packed([1.5], 10)).toThrow(RangeError);
  });
});
