import { expect, test } from 'vitest';
import { countPlaywright, countVitest } from '../../../scripts/tally.mjs';

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((s) => ({ status: s })),
});

test('passed and failed tests are counted over all files, skipped ones in neither', () => {
  const report = {
    testResults: [file('passed', 'passed', 'skipped'), file('failed', 'passed', 'failed', 'failed')],
  };
  expect(countVitest(report)).toEqual({ passed: 2, failed: 2 });
});

test('a file that could not be loaded is one failure', () => {
  expect(countVitest({ testResults: [file('failed')] })).toEqual({ passed: 0, failed: 1 });
});

test('a browser test that passed only when tried again has failed, and so has a run with an error', () => {
  const report = { stats: { expected: 5, unexpected: 1, flaky: 2, skipped: 3 }, errors: [{}] };
  expect(countPlaywright(report)).toEqual({ passed: 5, failed: 4 });
});
