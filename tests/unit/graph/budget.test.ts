import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/files/read.ts';
import { pressureBudget } from '../../../src/graph/budget.ts';
import { solveScheme } from '../../../src/graph/solve.ts';

const read = readJob(readFileSync('fixtures/example.gentlebend.json', 'utf8'));
if (!read.ok) throw new Error('the example can be read');
const { job } = read;
const cases = job.schemes.flatMap(({ id, name }) =>
  solveScheme(job, id).speeds.map((speed) => [`${name} at ${speed.name}`, speed] as const),
);

describe.each(cases)('the pressure budget of %s', (_, { outcome }) => {
  if (!outcome.solved) throw new Error('the example is solved');
  const budget = pressureBudget(outcome);

  it('adds up to what the fan gives', () => {
    expect(budget.reduce((sum, { loss }) => sum + loss, 0)).toBeCloseTo(outcome.totalPressure, 3);
    expect(budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 4);
  });

  it('charges every bend to the bends', () => {
    const bends = outcome.fittings.filter(({ kind }) => kind === 'bend');
    const part = budget.find(({ cause }) => cause === 'bends');
    expect(part?.loss).toBeCloseTo(
      bends.reduce((sum, { loss }) => sum + loss, 0),
      9,
    );
    expect(part?.nodes).toEqual(bends.map(({ at }) => at));
  });
});
