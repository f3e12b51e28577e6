import { expect, test } from 'vitest';
import { currentVersion, type Migration, migrate, migrations } from '../../../src/files/migrate.ts';

const steps = new Map<number, Migration>([
  [1, ({ name, ...rest }) => ({ ...rest, title: name })],
  [2, (raw) => ({ ...raw, title: `${String(raw.title)}!` })],
]);

test('an older document is brought up one version at a time', () => {
  expect(migrate({ format: 'gentlebend', version: 1, name: 'a' }, 3, steps)).toEqual({
    ok: true,
    from: 1,
    raw: { format: 'gentlebend', version: 3, title: 'a!' },
  });
});

test('a document of the current version is left alone', () => {
  const raw = { format: 'gentlebend', version: 3 };
  expect(migrate(raw, 3, steps)).toEqual({ ok: true, from: 3, raw });
});

test('a version without a step is refused', () => {
  expect(migrate({ format: 'gentlebend', version: 3 }, 4, steps)).toMatchObject({
    ok: false,
    problem: { path: 'version', message: 'no way is known from version 3 to 4' },
  });
});

test('every version that was ever written has a step to the next', () => {
  for (let version = 1; version < currentVersion; version += 1) expect(migrations.has(version)).toBe(true);
  expect(migrate({ format: 'gentlebend', version: 1 }).ok).toBe(true);
});
