import { expect, test } from 'vitest';
import { readJob } from '../../../src/files/read.ts';
import { writeJob } from '../../../src/files/write.ts';
import { sampleJob } from './sample.ts';

test('a written job is read back the same', () => {
  expect(readJob(writeJob(sampleJob()), { repair: false })).toEqual({
    ok: true,
    job: sampleJob(),
    repairs: [],
  });
});

test('the text does not depend on the order that edits left the keys in', () => {
  const job = sampleJob();
  const turned = Object.fromEntries(Object.entries(job).reverse()) as typeof job;
  expect(writeJob(turned)).toBe(writeJob(job));
});

test('a point and a fan curve stand on one line each', () => {
  const text = writeJob(sampleJob());
  expect(text).toContain('"at": [1.2, 0.4, 1.75]');
  expect(text).toContain('"curve": [[0, 260], [0.12, 200], [0.28, 0]]');
});

test('the text is JSON and ends with a new line', () => {
  const text = writeJob(sampleJob());
  expect(JSON.parse(text)).toEqual(sampleJob());
  expect(text.endsWith('}\n')).toBe(true);
});
