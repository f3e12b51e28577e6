import { createHash } from 'node:crypto';
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { fingerprintOf } from '../../../../src/files/job-sheet/fingerprint.ts';
import { sha256 } from '../../../../src/files/job-sheet/sha256.ts';
import { writeJob } from '../../../../src/files/write.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { exampleJob } from '../../../support/route-job.ts';

const fullOf = (job: Job) => fingerprintOf(job).full;

it('is the SHA-256 of the written file, as any other program computes it', () => {
  const job = exampleJob();
  expect(fullOf(job)).toBe(createHash('sha256').update(writeJob(job)).digest('hex'));
});

it('is shortened to its first sixteen digits in groups of four', () => {
  const found = fingerprintOf(exampleJob());
  expect(found.short).toMatch(/^[0-9a-f]{4}( [0-9a-f]{4}){3}$/);
  expect(found.full.startsWith(found.short.replaceAll(' ', ''))).toBe(true);
});

it('is the same for the same job whatever the order of its fields', () => {
  const job = exampleJob();
  const turned = Object.fromEntries(Object.entries(job).reverse()) as Job;
  expect(fullOf(turned)).toBe(fullOf(job));
});

it('is another for any change of the job, however small', () => {
  const before = fullOf(exampleJob());
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
    expect(fullOf(job), change.toString()).not.toBe(before);
  }
});

it('is another wherever a node is moved to', () => {
  const before = fullOf(exampleJob());
  fc.assert(
    fc.property(
      fc.nat({ max: 3 }),
      fc.constantFrom(0, 1, 2),
      fc.double({ min: 1e-6, max: 5, noNaN: true }),
      (index, axis, by) => {
        const job = exampleJob();
        const node = job.schemes[0]?.nodes[index];
        if (!node) throw new Error('the example has four nodes');
        node.at[axis as 0] += by;
        expect(fullOf(job)).not.toBe(before);
      },
    ),
    { numRuns: 30 },
  );
});

const hexOf = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');

it('is computed as another program does, of any bytes', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(hexOf(sha256(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'));
    }),
  );
});

it('is computed as another program does, of every length about the end of a block', () => {
  for (let length = 0; length <= 130; length += 1) {
    const bytes = new Uint8Array(length).fill(0xa5);
    expect(hexOf(sha256(bytes)), `${length}`).toBe(createHash('sha256').update(bytes).digest('hex'));
  }
});

it('is computed as another program does, of a large file', () => {
  const bytes = Uint8Array.from({ length: 300_001 }, (_, i) => (i * 31) & 0xff);
  expect(hexOf(sha256(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'));
});
