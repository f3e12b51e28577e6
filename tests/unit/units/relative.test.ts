import { describe, expect, test } from 'vitest';
import { INCH, isStep, parseDirection, parseRelativeLength } from '../../../src/units/index.ts';

const value = (parsed: ReturnType<typeof parseRelativeLength>) => (parsed.ok ? parsed.value : parsed.message);

describe('a length typed over another', () => {
  test.each([
    ['6"', 6 * INCH],
    ['+6"', 1 + 6 * INCH],
    ['@6"', 1 + 6 * INCH],
    ['-150mm', 0.85],
    ['−150 mm', 0.85],
    ['@-150mm', 0.85],
    ['@ +150 mm', 1.15],
    ['+1\' 2 1/2"', 1 + 14.5 * INCH],
    ['+4', 1 + 4 * INCH],
    ['=2 m', 2],
  ])('%s from 1 m', (text, expected) => {
    const parsed = parseRelativeLength(text, 'imperial', 1);
    expect(parsed.ok).toBe(true);
    expect(value(parsed)).toBeCloseTo(expected, 12);
  });

  test('is a step by its sign alone', () => {
    expect(['+6"', '@6"', '-6"', '6"', '=-6"'].map(isStep)).toEqual([true, true, true, false, false]);
  });

  test('may be below 0 only where it is a place', () => {
    expect(value(parseRelativeLength('-2 m', 'metric', 1))).toContain('less than nothing');
    expect(value(parseRelativeLength('=-2 m', 'metric', 1))).toContain('cannot be below 0');
    expect(value(parseRelativeLength('-2 m', 'metric', 1, { negative: true }))).toBe(-1);
    expect(value(parseRelativeLength('=-2 m', 'metric', 1, { negative: true }))).toBe(-2);
  });

  test('says what is wrong', () => {
    expect(value(parseRelativeLength('@', 'metric', 1))).toContain('no length after its sign');
    expect(value(parseRelativeLength('+six', 'metric', 1))).toContain('is not a length');
    expect(value(parseRelativeLength('+-3', 'metric', 1))).toContain('is not a length');
  });
});

describe('a direction', () => {
  test.each([
    ['45', 45],
    ['<45', 45],
    ['< 22.5°', 22.5],
    ['∠90', 90],
    ['-30', -30],
    ['<-30', -30],
    ['@15', 75],
    ['<+15', 75],
    ['@-15', 45],
  ])('%s, from 60°', (text, expected) => {
    expect(value(parseDirection(text, 'imperial', 60))).toBeCloseTo(expected, 12);
  });

  test('says what is wrong', () => {
    expect(value(parseDirection('<', 'metric'))).toContain('angle');
    expect(value(parseDirection('<north', 'metric'))).toContain('is not an angle');
  });
});
