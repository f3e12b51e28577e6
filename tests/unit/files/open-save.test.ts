import { expect, test } from 'vitest';
import { fileNameFor } from '../../../src/files/open-save.ts';

test.each([
  ['Out the north wall', 'out-the-north-wall.gentlebend.json'],
  ['  3/4" – Küche № 2 ', '3-4-kuche-no-2.gentlebend.json'],
  ['***', 'kitchen.gentlebend.json'],
])('the title %j gives the file name %j', (title, name) => {
  expect(fileNameFor(title)).toBe(name);
});
