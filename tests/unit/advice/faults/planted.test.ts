import { expect, test } from 'vitest';
import type { Diagnosis } from '../../../../src/advice/faults/diagnose.ts';
import type { Fault } from '../../../../src/advice/faults/types.ts';
import { examine, kinds, randomFault, rankOf } from '../../../support/planted-faults.ts';
import { seeded } from '../../../support/random.ts';

interface Case {
  readonly fault: Fault;
  readonly said: readonly Diagnosis[];
}

/** Twenty faults of every kind and of random sizes and places, each reading 5 % off (one standard deviation). */
function twenty(seed: number): Case[] {
  const random = seeded(seed);
  return Array.from({ length: 20 }, (_, i) => {
    const cause = kinds[i % kinds.length] ?? 'leak';
    const scheme = i % 3 === 0 && cause !== 'crushed-flexible' ? 'wall' : 'roof';
    const fault = randomFault(random, cause, scheme);
    if (!fault) throw new Error(`${scheme} has no place for ${cause}`);
    return { fault, said: examine(scheme, fault, random, 2) };
  });
}

test('a planted fault is among the first two causes, by the measurements that are asked for', {
  timeout: 600_000,
}, ({ annotate }) => {
  const cases = twenty(20261125);
  const found = (pick: (said: readonly Diagnosis[]) => Diagnosis | undefined, within: number) =>
    cases.filter(({ fault, said }) => {
      const diagnosis = pick(said);
      return diagnosis !== undefined && rankOf(diagnosis, fault.cause) <= within;
    }).length;
  const atFirst = found((said) => said[0], 2);
  const asked = found((said) => said.at(-1), 2);
  void annotate(
    `of 20: ${atFirst} from air at hood and cap and static pressure at the collar alone, ${asked} with up to two more measurements that the program asks for, ${found((said) => said.at(-1), 1)} of them first`,
  );
  expect(asked).toBeGreaterThanOrEqual(17);
  expect(atFirst).toBeGreaterThanOrEqual(14);
});
