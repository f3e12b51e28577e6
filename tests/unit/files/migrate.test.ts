import { expect, test } from 'vitest';
import { type Migration, migrate } from '../../../src/files/migrate.ts';

const steps = new Map<number, Migration>([
  [1, { changes: ['the name is now the title'], step: ({ name, ...rest }) => ({ ...rest, title: name }) }],
  [2, { changes: ['louder'], step: (raw) => ({ ...raw, title: `${String(raw.title)}!` }) }],
]);

test('an older document is brought up one version at a time', () => {
  expect(migrate({ format: 'gentlebend', version: 1, name: 'a' }, 3, steps)).toEqual({
    ok: true,
    from: 1,
    changes: ['the name is now the title', 'louder'],
    raw: { format: 'gentlebend', version: 3, title: 'a!' },
  });
});

test('a document of the current version is left alone', () => {
  const raw = { format: 'gentlebend', version: 3 };
  expect(migrate(raw, 3, steps)).toEqual({ ok: true, from: 3, raw, changes: [] });
});

test('a version without a step is refused', () => {
  expect(migrate({ format: 'gentlebend', version: 3 }, 4, steps)).toMatchObject({
    ok: false,
    problem: { path: 'version', message: 'no way is known from version 3 to 4' },
  });
});
