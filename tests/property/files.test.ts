import fc from 'fast-check';
import { expect, test } from 'vitest';
import { findFault } from '../../src/files/json.ts';
import { readJob } from '../../src/files/read.ts';
import { readShared, shareFragment } from '../../src/files/share.ts';
import { writeJob } from '../../src/files/write.ts';
import type { Job, Node, Segment } from '../../src/graph/document.ts';
import { bends, caps, materials } from '../../src/hydraulics/catalogue.ts';
import { sampleJob } from '../unit/files/sample.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((n) => n + 0);
const positive = number(0.001, 2);
const oneOf = (rows: readonly { id: string }[]) => fc.constantFrom(...rows.map((row) => row.id));
const text = fc.string({ unit: 'grapheme', maxLength: 40 });
const point = fc.tuple(number(-50, 50), number(-50, 50), number(-50, 50));
const duct = fc.oneof(
  fc.record({ shape: fc.constant('round' as const), diameter: positive }),
  fc.record({
    shape: fc.constantFrom('rectangular' as const, 'oval' as const),
    width: positive,
    height: positive,
  }),
);

/** Any job of one scheme: a chain of nodes with every optional part there or not. */
const jobs: fc.Arbitrary<Job> = fc
  .record({
    title: text,
    notes: text,
    units: fc.constantFrom('imperial' as const, 'metric' as const),
    points: fc.array(point, { minLength: 2, maxLength: 8 }),
    duct,
    material: oneOf(materials),
    bend: oneOf(bends),
    cap: oneOf(caps),
    leg: fc.record({ duct, material: oneOf(materials), stretch: number(0.1, 1) }, { requiredKeys: [] }),
    prices: fc.dictionary(
      fc.string({ minLength: 1, maxLength: 12 }).filter((key) => key !== '__proto__'),
      number(0, 1e6),
      { noNullPrototype: true },
    ),
  })
  .map(({ points, duct, material, bend, cap, leg, ...rest }) => {
    const nodes: Node[] = points.map((at, i) => {
      if (i === 0) return { id: 'n0', at, role: 'hood', hood: 'h1' };
      if (i === points.length - 1) return { id: `n${i}`, at, role: 'cap', cap };
      return { id: `n${i}`, at, role: 'turn', bend: { kind: bend } };
    });
    const segments: Segment[] = points
      .slice(1)
      .map((_, i) => ({ id: `d${i}`, from: `n${i}`, to: `n${i + 1}`, ...leg }));
    const scheme = { id: 's1', name: 'Only', defaults: { duct, material }, nodes, segments };
    return { ...sampleJob(), ...rest, schemes: [scheme] };
  });

test('saving a job and loading it again is identity', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      expect(readJob(writeJob(job), { repair: false })).toEqual({ ok: true, job, repairs: [] });
    }),
  );
});

test('saving is stable: what was loaded is written to the same text', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      const once = writeJob(job);
      const read = readJob(once);
      expect(read.ok && writeJob(read.job)).toBe(once);
    }),
  );
});

test('a job that goes into a link and comes out of it is the same job', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      const read = readShared(shareFragment(job, { underlays: true }));
      expect(read).toEqual({ ok: true, job, repairs: [] });
    }),
  );
});

test('a link takes any letters at all: a job, or a reason', () => {
  const letters = fc.string({ unit: fc.constantFrom(...'abAB01-_.#=%'), maxLength: 80 });
  fc.assert(
    fc.property(fc.oneof(letters, fc.string()), (text) => {
      for (const address of [text, `#job=${text}`, `#job=1.${text}`]) {
        const read = readShared(address);
        expect(read.ok ? [] : read.problems.map(({ message }) => message.length > 0)).toEqual([true]);
      }
    }),
  );
});

const sampleText = writeJob(sampleJob());

test('the reader takes any text at all: a job, or problems that name something', () => {
  const mutation = fc.record({
    at: fc.nat(sampleText.length),
    remove: fc.nat(30),
    insert: fc.oneof(
      fc.string({ maxLength: 6 }),
      fc.constantFrom('{', '}', '[', ']', ',', ':', '"', '-', '1e999', 'null'),
    ),
  });
  const texts = fc
    .array(mutation, { minLength: 1, maxLength: 4 })
    .map((mutations) =>
      mutations.reduce(
        (text, { at, remove, insert }) => text.slice(0, at) + insert + text.slice(at + remove),
        sampleText,
      ),
    );
  fc.assert(
    fc.property(fc.oneof(texts, fc.string()), fc.boolean(), (text, repair) => {
      const result = readJob(text, { repair });
      if (!result.ok) expect(result.problems.every((problem) => problem.message.length > 0)).toBe(true);
      expect(result.ok || result.problems.length > 0).toBe(true);
    }),
    { numRuns: 500 },
  );
});

test('the reader takes any JSON at any place of a job', () => {
  const paths = leavesOf(sampleJob());
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
      const raw = structuredClone(sampleJob()) as unknown;
      let owner = raw as Record<string, unknown>;
      for (const key of path.slice(0, -1)) owner = owner[key] as Record<string, unknown>;
      owner[path.at(-1) ?? ''] = value;
      const result = readJob(JSON.stringify(raw));
      if (result.ok)
        expect(readJob(writeJob(result.job), { repair: false })).toEqual({ ...result, repairs: [] });
      else expect(result.problems.length).toBeGreaterThan(0);
    }),
    { numRuns: 1000 },
  );
});

test('the finder of faults in JSON agrees with the platform on what is JSON', () => {
  const almost = fc
    .tuple(fc.json(), fc.nat(60), fc.constantFrom('', '"', ',', '}', ']', '\\', '01', '.', '\n', '\u0001'))
    .map(([json, at, insert]) => json.slice(0, at) + insert + json.slice(at));
  fc.assert(
    fc.property(fc.oneof(fc.json(), almost), (text) => {
      expect(findFault(text) === null).toBe(isJson(text));
    }),
    { numRuns: 1000 },
  );
});

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** Paths of every value in a document, inner ones too. */
function leavesOf(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, item]) => leavesOf(item, [...path, key]));
  return path.length === 0 ? inner : [path, ...inner];
}
