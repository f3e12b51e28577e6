import { expect, test } from 'vitest';
import { lookUp, rangeOf, type Table } from '../../../src/hydraulics/losses/table.ts';

const line: Table = { axes: [{ name: 'r/D', unit: '', values: [0.5, 1, 2] }], values: [8, 4, 2] };
const plane: Table = {
  axes: [
    { name: 'angle', unit: 'deg', values: [0, 90] },
    { name: 'diameter', unit: 'm', values: [0.1, 0.2] },
  ],
  values: [
    [0, 0],
    [10, 30],
  ],
};

test('a printed value is given as printed and without a word', () => {
  expect(lookUp(line, { 'r/D': 1 })).toEqual({ value: 4, notes: [] });
});

test('between two printed values the reading is linear and says so', () => {
  expect(lookUp(line, { 'r/D': 1.5 })).toEqual({ value: 3, notes: ['interpolated between r/D 1 and 2'] });
});

test('beyond the ends the reading is the end and says what was asked', () => {
  expect(lookUp(line, { 'r/D': 3 })).toEqual({
    value: 2,
    notes: ["clamped to the table's end at r/D 2 (asked 3)"],
  });
  expect(lookUp(line, { 'r/D': 0 }).notes).toEqual(["clamped to the table's end at r/D 0.5 (asked 0)"]);
});

test('a table of two axes is read along both, with its units in the notes', () => {
  const reading = lookUp(plane, { angle: 45, diameter: 0.15 });
  expect(reading.value).toBeCloseTo(10, 12);
  expect(reading.notes).toEqual([
    'interpolated between angle 0° and 90°',
    'interpolated between diameter 100 mm and 200 mm',
  ]);
});

test('a table without axes is its one number', () => {
  expect(lookUp({ axes: [], values: 7 }, {})).toEqual({ value: 7, notes: [] });
});

test('a missing or meaningless coordinate is refused', () => {
  expect(() => lookUp(line, {})).toThrow(RangeError);
  expect(() => lookUp(line, { 'r/D': Number.NaN })).toThrow(RangeError);
  expect(() => rangeOf(line, 'angle')).toThrow(RangeError);
});
