import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import * as z from 'zod';
import { currentVersion, migrations } from '../../../src/files/migrate.ts';
import { readJob } from '../../../src/files/read.ts';
import { type Job, job as jobSchema } from '../../../src/graph/document.ts';
import { solveScheme } from '../../../src/graph/solve.ts';

/**
 * Files of every version that was ever written, kept byte by byte, and what was found in them when they were
 * frozen. They hold the program to its past: a file may be added here, and none changed or taken away. The
 * figures are this program's own and no check of the model; where the model itself becomes better on purpose,
 * they are recorded again.
 */
const folder = 'fixtures/versions';
const names = readdirSync(folder).filter((name) => name.endsWith('.gentlebend.json'));
const textOf = (name: string) => readFileSync(`${folder}/${name}`, 'utf8');

const frozen: Readonly<Record<string, string>> = {
  '1-every-field.gentlebend.json': '0c5e9c629215f9cecaf050c3d246600eb4632bbb633bd435ccc1dbf93230a053',
  '1-other-ways.gentlebend.json': '9344a48dedcedcf9844876fec0d3c2b214993e24112e03d60d895bb76c1d8019',
};

interface SpeedMeaning {
  readonly hood: string;
  readonly speed: string;
  /** m3/s */
  readonly flow: number;
  /** Pa */
  readonly totalPressure: number;
  readonly housePressure: number | null;
  readonly fittings: readonly string[];
}

interface Meaning {
  readonly job: string;
  readonly scheme: string;
  /** Legs, m. */
  readonly lengths: Readonly<Record<string, number>>;
  readonly speeds: readonly SpeedMeaning[];
}

const recorded = JSON.parse(readFileSync(`${folder}/meaning.json`, 'utf8')) as readonly Meaning[];

function readAll(): readonly { readonly name: string; readonly job: Job }[] {
  return names.map((name) => {
    const read = readJob(textOf(name));
    if (!read.ok) throw new Error(`${name}: ${read.problems.map(({ message }) => message).join('; ')}`);
    return { name, job: read.job };
  });
}

function meaningOf(name: string, job: Job): Meaning[] {
  return job.schemes.map(({ id }) => {
    const { route, speeds } = solveScheme(job, id);
    return {
      job: name,
      scheme: id,
      lengths: Object.fromEntries([...route.segments.values()].map((leg) => [leg.id, leg.length])),
      speeds: speeds.map(({ hood, name: speed, outcome }) => {
        if (!outcome.solved) throw new Error(outcome.reason);
        return {
          hood,
          speed,
          flow: outcome.flow,
          totalPressure: outcome.totalPressure,
          housePressure: outcome.house?.pressure ?? null,
          fittings: outcome.fittings.map(({ at, kind }) => `${at} ${kind}`),
        };
      }),
    };
  });
}

describe('a file of an earlier version', () => {
  it('is there for every version', () => {
    for (let version = 1; version <= currentVersion; version += 1)
      expect(names.filter((name) => name.startsWith(`${version}-`))).not.toEqual([]);
  });

  it('has not been touched', () => {
    const found = names.map((name) => [name, createHash('sha256').update(textOf(name)).digest('hex')]);
    expect(Object.fromEntries(found)).toEqual(frozen);
  });

  it('is read without anything being repaired or left out', () => {
    for (const name of names) {
      const read = readJob(textOf(name));
      const repaired = read.ok ? read.repairs.filter(({ path }) => path !== 'version') : read.problems;
      expect([name, repaired]).toEqual([name, []]);
    }
  });

  it('means what it meant: the same legs, fittings and air, to a thousandth', () => {
    const found = readAll().flatMap(({ name, job }) => meaningOf(name, job));
    expect(found.map(({ job, scheme }) => [job, scheme])).toEqual(
      recorded.map(({ job, scheme }) => [job, scheme]),
    );
    for (const [i, was] of recorded.entries()) {
      const now = found[i];
      expect(Object.keys(now?.lengths ?? {})).toEqual(Object.keys(was.lengths));
      for (const [leg, length] of Object.entries(was.lengths))
        expect(now?.lengths[leg], leg).toBeCloseTo(length, 6);
      for (const [j, before] of was.speeds.entries()) {
        const after = now?.speeds[j];
        expect(after).toMatchObject({ hood: before.hood, speed: before.speed, fittings: before.fittings });
        expect((after?.flow ?? 0) / before.flow).toBeCloseTo(1, 3);
        expect((after?.totalPressure ?? 0) / before.totalPressure).toBeCloseTo(1, 3);
        if (before.housePressure !== null)
          expect((after?.housePressure ?? 0) / before.housePressure).toBeCloseTo(1, 3);
      }
    }
  });
});

test('the steps from version to version are all there, up to the one that is written', () => {
  expect([...migrations.keys()]).toEqual(Array.from({ length: currentVersion - 1 }, (_, i) => i + 1));
  for (const { changes } of migrations.values()) expect(changes.length).toBeGreaterThan(0);
  expect(jobSchema.shape.version.value).toBe(currentVersion);
});

/** Fields by their place, a list's entries taken together: `schemes[].nodes[].at`. */
function fieldsOf(value: unknown, path = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((item) => fieldsOf(item, `${path}[]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => {
    const at = path === '' ? key : `${path}.${key}`;
    return [at, ...fieldsOf(item, at)];
  });
}

interface JsonSchema {
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly items?: JsonSchema | boolean;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
}

function fieldsInSchema(schema: JsonSchema, path = ''): string[] {
  const forms = [...(schema.anyOf ?? []), ...(schema.oneOf ?? [])].flatMap((form) =>
    fieldsInSchema(form, path),
  );
  const items = typeof schema.items === 'object' ? fieldsInSchema(schema.items, `${path}[]`) : [];
  const properties = Object.entries(schema.properties ?? {}).flatMap(([key, inner]) => {
    const at = path === '' ? key : `${path}.${key}`;
    return [at, ...fieldsInSchema(inner, at)];
  });
  return [...forms, ...items, ...properties];
}

/** Fields that were added to version 1 after its files were frozen, none of which an older program needed. */
const addedLater: readonly string[] = [
  'stock',
  'kitchen.requiredAirflow',
  'kitchen.requiredAirflow.flow',
  'kitchen.requiredAirflow.reason',
];

test('the files of version 1 use every field that the format had when they were frozen', () => {
  const used = new Set(
    names.filter((n) => n.startsWith('1-')).flatMap((n) => fieldsOf(JSON.parse(textOf(n)))),
  );
  const known = fieldsInSchema(z.toJSONSchema(jobSchema, { io: 'input' }) as JsonSchema);
  expect(known.length).toBeGreaterThan(100);
  expect([...new Set(known)].filter((field) => !used.has(field) && !addedLater.includes(field))).toEqual([]);
});
