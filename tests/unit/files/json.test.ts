import { expect, test } from 'vitest';
import { findFault, parseJson } from '../../../src/files/json.ts';

function placeOf(text: string): string {
  const result = parseJson(text);
  return result.ok ? 'fine' : `${result.line}:${result.column} ${result.message}`;
}

test('a missing comma is told by line and column', () => {
  expect(placeOf('{\n  "a": 1\n  "b": 2\n}')).toBe('3:3 expected "," or "}", found text');
});

test('a comma before the closing bracket is told where a value should be', () => {
  expect(placeOf('[1, 2, ]')).toBe('1:8 expected a value, found "]"');
});

test('a name without quotes is told', () => {
  expect(placeOf('{ title: 1 }')).toBe('1:3 expected a name in double quotes, found "t"');
});

test('a file that stops in the middle is told at its end', () => {
  expect(placeOf('{"a": [1,\n2')).toBe('2:2 expected "," or "]", found the end of the file');
});

test('a string that is never closed is told where it begins', () => {
  expect(placeOf('{"a": "wall')).toBe(
    '1:7 expected a value, found a string that is not closed or holds a bad escape',
  );
});

test('text after the end is told', () => {
  expect(placeOf('{} x')).toBe('1:4 expected the end of the file, found "x"');
});

test('an empty file is told', () => {
  expect(placeOf('')).toBe('1:1 expected a value, found the end of the file');
});

test('a byte order mark is skipped', () => {
  expect(parseJson('\uFEFF{"a": 1}')).toEqual({ ok: true, value: { a: 1 } });
});

test('very deep nesting is told without an overflow', () => {
  expect(findFault('['.repeat(200_000))?.offset).toBe(200_000);
});

test('a long picture held as text is stepped through without an overflow', () => {
  const text = `{"image": "${'A'.repeat(3_000_000)}" "at": 1}`;
  expect(findFault(text)?.offset).toBe(text.indexOf(' "at"') + 1);
});
