import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { afterEach, expect, it, vi } from 'vitest';
import { fingerprintOf } from '../../../../src/files/job-sheet/fingerprint.ts';
import { writeJob } from '../../../../src/files/write.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { exampleJob } from '../../../support/route-job.ts';

const fullOf = async (job: Job) => (await fingerprintOf(job))?.full;

afterEach(() => {
  vi.unstubAllGlobals();
});

it('is the SHA-256 of the written file, as any other program computes it', async () => {
  const job = exampleJob();
  expect(await fullOf(job)).toBe(createHash('sha256').update(writeJob(job)).digest('hex'));
});

it('is shortened to its first sixteen digits in groups of four', async () => {
  const found = await fingerprintOf(exampleJob());
  expect(found?.short).toMatch(/^[0-9a-f]{4}( [0-9a-f]{4}){3}$/);
  expect(found?.full.startsWith(found.short.replaceAll(' ', ''))).toBe(true);
});

it('is the same for the same job whatever the order of its fields', async () => {
  const job = exampleJob();
  const turned = Object.fromEntries(Object.entries(job).reverse()) as Job;
  expect(await fullOf(turned)).toBe(await fullOf(job));
});

it('is another for any change of the job, however small', async () => {
  const before = await fullOf(exampleJob());
  const changes: readonly ((job: Job) => void)[] = [
    (job) => {
      job.title += ' ';
    },
    (job) => {
      job.notes = `${job.notes}.`;
    },
    (job) => {
      job.units = job.units === 'metric' ? 'imperial' : 'metric';
    },
    (job) => {
      job.air.elevation += 1e-9;
    },
    (job) => {
      job.schemes.reverse();
    },
    (job) => {
      job.prices['duct/any'] = 1;
    },
  ];
  for (const change of changes) {
    const job = exampleJob();
    change(job);
    expect(await fullOf(job), change.toString()).not.toBe(before);
  }
});

it('is another wherever a node is moved to', async () => {
  const before = await fullOf(exampleJob());
  await fc.assert(
    fc.asyncProperty(
      fc.nat({ max: 3 }),
      fc.constantFrom(0, 1, 2),
      fc.double({ min: 1e-6, max: 5, noNaN: true }),
      async (index, axis, by) => {
        const job = exampleJob();
        const node = job.schemes[0]?.nodes[index];
        if (!node) throw new Error('the example has four nodes');
        node.at[axis as 0] += by;
        expect(await fullOf(job)).not.toBe(before);
      },
    ),
    { numRuns: 30 },
  );
});

it('is left out where the page may not compute it', async () => {
  vi.stubGlobal('crypto', {});
  expect(await fingerprintOf(exampleJob())).toBeNull();
});
