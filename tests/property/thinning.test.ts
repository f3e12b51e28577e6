import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Dated, type Thinning, thinned, usualThinning } from '../../src/files/jobs/thin.ts';

const hour = 3600_000;
const day = 24 * hour;
const start = 1.7e12;

/** Versions of two years, most of them young, in any order. */
const versions: fc.Arbitrary<Dated[]> = fc
  .uniqueArray(
    fc.record({
      age: fc.oneof(
        fc.integer({ min: 0, max: 3 * hour }),
        fc.integer({ min: 0, max: 4 * day }),
        fc.integer({ min: 0, max: 730 * day }),
      ),
      kept: fc.boolean(),
      size: fc.integer({ min: 1, max: 50_000 }),
    }),
    { maxLength: 80, selector: ({ age }) => age },
  )
  .map((list) => list.map(({ age, kept, size }, i) => ({ id: `v${i}`, at: start - age, kept, size })));

const rest = (list: readonly Dated[], now: number, how?: Thinning) => {
  const dropped = new Set(thinned(list, now, how));
  return list.filter(({ id }) => !dropped.has(id));
};
const newest = (list: readonly Dated[]) => list.reduce((a, b) => (b.at > a.at ? b : a));

describe('thinning of versions', () => {
  test('what was kept on purpose and the newest always stay', () => {
    fc.assert(
      fc.property(versions, fc.integer({ min: 0, max: 900 * day }), (list, later) => {
        fc.pre(list.length > 0);
        const left = rest(list, start + later);
        expect(left).toEqual(expect.arrayContaining(list.filter(({ kept }) => kept)));
        expect(left).toContain(newest(list));
      }),
    );
  });

  test('all of the last hour stays', () => {
    fc.assert(
      fc.property(versions, (list) => {
        const young = list.filter(({ at }) => start - at < hour);
        expect(rest(list, start)).toEqual(expect.arrayContaining(young));
      }),
    );
  });

  test('thinning again at the same time drops nothing more', () => {
    fc.assert(
      fc.property(versions, (list) => {
        expect(thinned(rest(list, start), start)).toEqual([]);
      }),
    );
  });

  test('thinning now and then leaves what thinning once would', () => {
    fc.assert(
      fc.property(
        versions,
        fc.array(fc.integer({ min: 1, max: 60 * day }), { minLength: 1, maxLength: 5 }),
        (list, pauses) => {
          let [often, now] = [list, start];
          for (const pause of pauses) {
            often = rest(often, now);
            now += pause;
          }
          expect(rest(often, now)).toEqual(rest(list, now));
        },
      ),
    );
  });

  test('from each day of the last month that has versions, its newest stays', () => {
    fc.assert(
      fc.property(versions, (list) => {
        const left = new Set(rest(list, start).map(({ id }) => id));
        const month = list.filter(({ at }) => start - at < 30 * day);
        const days = new Map<number, Dated[]>();
        for (const version of month) {
          const number = Math.floor(version.at / day);
          days.set(number, [...(days.get(number) ?? []), version]);
        }
        for (const [, ofDay] of days) expect(left).toContain(newest(ofDay).id);
      }),
    );
  });

  test('no more stay than there is room for, by count and by size, and it is the oldest that go', () => {
    fc.assert(
      fc.property(
        versions,
        fc.record({ most: fc.integer({ min: 1, max: 20 }), bytes: fc.integer({ min: 1, max: 300_000 }) }),
        (list, room) => {
          const how = { ...usualThinning, ...room };
          const left = rest(list, start, how).filter(({ kept }) => !kept);
          const sum = left.reduce((bytes, { size }) => bytes + size, 0);
          expect(left.length).toBeLessThanOrEqual(room.most);
          if (left.length > 1) expect(sum).toBeLessThanOrEqual(room.bytes);
          const wide = rest(list, start).filter(({ kept }) => !kept);
          const youngest = wide.sort((a, b) => b.at - a.at).slice(0, left.length);
          expect(new Set(left)).toEqual(new Set(youngest));
        },
      ),
    );
  });
});
