import { describe, expect, test } from 'vitest';
import type { Diagnosis } from '../../../../src/advice/faults/diagnose.ts';
import { idealDiagnosis } from '../../../support/ideal-diagnosis.ts';
import {
  everySpeed,
  examine,
  firstIn,
  type Measured,
  measuredTwenty,
  ranked,
  rankOf,
  twenty,
} from '../../../support/planted-faults.ts';
import { seeded } from '../../../support/random.ts';

/** Each seed plants twenty faults of every kind, of random sizes and places, on two routes, every reading 5 % off. */
const seeds = Array.from({ length: 50 }, (_, k) => k + 1);

/** How many of twenty are among the first two, seed by seed. */
const found = (cases: readonly Measured[][], rank: (one: Measured) => number): number[] =>
  cases.map((of20) => of20.filter((one) => rank(one) <= 2).length);

const byRank = (one: Measured) => rankOf(ranked(one), one.fault.cause);
const mean = (counts: readonly number[]) => counts.reduce((sum, count) => sum + count, 0) / counts.length;

/** "18: 7, 19: 23, 20: 20": seeds by how many of their twenty were found. */
const spreadOf = (counts: readonly number[]) =>
  [...new Set(counts)]
    .sort((a, b) => a - b)
    .map((count) => `${count}: ${counts.filter((each) => each === count).length}`)
    .join(', ');

/*
 * What first readings hold of the cause, over 50 seeds of 20 faults, each set of readings taken at all four speeds.
 * "Best possible" is Bayes' rule with the very distribution that the faults were planted from (`idealDiagnosis`).
 *
 *                                            best possible          this program
 *   air at hood and cap, static at collar    17.0 of 20 (13 to 20)  16.1 (14 to 19)
 *   the same with sound                      17.1       (14 to 20)  16.2 (13 to 19)
 *   air at hood, static at collar and cap    19.5       (18 to 20)  19.3 (18 to 20)
 *   the same with sound                      19.6       (18 to 20)  19.4 (18 to 20)
 *   the same at lowest and highest speed     19.4       (17 to 20)  19.1 (16 to 20)
 *   the same at the highest speed alone      19.1       (17 to 20)  17.6 (16 to 20)
 *
 * A flap, a crushed duct, a smaller section and a blocked cap are all losses after the collar that rise with the
 * square of the air. Neither air nor the pressure before them can say which it is; the pressure before the cap says
 * on which side of it the loss sits. That is why the panel asks for it first, in place of the air at the cap.
 */
describe('a planted fault is among the first two causes', () => {
  test('in at least 17 of 20 with every seed, by what the panel asks for first', {
    timeout: 600_000,
  }, ({ annotate }) => {
    const counts = found(
      seeds.map((seed) => measuredTwenty(seed, firstIn)),
      byRank,
    );
    void annotate(`of 20, over ${seeds.length} seeds: ${mean(counts)} on average (${spreadOf(counts)})`);
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(17);
    expect(mean(counts)).toBeGreaterThanOrEqual(19);
  });

  test('not so by the air and the pressure at the collar alone: no ranking of these could, and this one is near the best', {
    timeout: 600_000,
  }, ({ annotate }) => {
    const probes = () => everySpeed('hood air', 'cap air', 'collar static');
    const cases = seeds.slice(0, 20).map((seed) => measuredTwenty(seed, probes));
    const ideal = idealDiagnosis(probes);
    const best = found(cases, (one) => ideal(one).indexOf(one.fault.cause) + 1);
    const ours = found(cases, byRank);
    void annotate(
      `best possible ${mean(best)} (${spreadOf(best)}), this program ${mean(ours)} (${spreadOf(ours)})`,
    );
    expect(Math.min(...best)).toBeLessThan(17);
    expect(mean(best)).toBeLessThan(18);
    expect(mean(ours)).toBeGreaterThanOrEqual(mean(best) - 1.5);
  });

  test('and first more often by the measurements that the program asks for', {
    timeout: 600_000,
  }, ({ annotate }) => {
    const random = seeded(20261125);
    const cases = twenty(random).map((planted) => ({ planted, said: examine(planted, random, 2) }));
    const within = (count: number, pick: (said: readonly Diagnosis[]) => Diagnosis | undefined) =>
      cases.filter(({ planted, said }) => rankOf(pick(said)?.suspects ?? [], planted.fault.cause) <= count)
        .length;
    const last = (said: readonly Diagnosis[]) => said.at(-1);
    void annotate(`of 20: ${within(1, (said) => said[0])} first at first, ${within(1, last)} in the end`);
    expect(within(2, last)).toBeGreaterThanOrEqual(18);
    expect(within(1, last)).toBeGreaterThanOrEqual(within(1, (said) => said[0]));
  });
});
