import { expect, test } from 'vitest';
import { repaired } from '../../../src/app/notices.ts';

const older = [
  { path: 'version', message: 'brought from version 1 to 2' },
  { path: 'version', message: 'the name is now the title' },
];

test('a file of an older version says so, and what was changed', () => {
  const notice = repaired('kitchen.gentlebend.json', older);
  expect(notice.title).toBe('kitchen.gentlebend.json is of an older version');
  expect(notice.details).toEqual(older);
  expect(notice.text).not.toMatch(/put right/);
});

test('what was repaired in an older file is told with it', () => {
  const drop = { path: 'underlays[0]', message: 'the underlay was dropped: it cannot be read' };
  const notice = repaired('kitchen.gentlebend.json', [...older, drop]);
  expect(notice.text).toMatch(/put right/);
  expect(notice.details).toContainEqual(drop);
});

test('a file of the present version is only repaired', () => {
  const notice = repaired('kitchen.gentlebend.json', [{ path: 'colour', message: 'was left out' }]);
  expect(notice.title).toBe('kitchen.gentlebend.json was repaired');
});
