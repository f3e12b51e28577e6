import { describe, expect, test } from 'vitest';
import { formatDiameter, formatLength, parseDiameter, parseLength } from '../../../src/units/index.ts';

const metres = (text: string, system: 'imperial' | 'metric' = 'imperial', options = {}) => {
  const read = parseLength(text, system, options);
  if (!read.ok) throw new Error(read.message);
  return read.value;
};

const sentence = (text: string, system: 'imperial' | 'metric' = 'imperial') => {
  const read = parseLength(text, system);
  return read.ok ? `read as ${read.value}` : read.message;
};

describe('a length is read from what people type', () => {
  test.each([
    ['6"', 0.1524],
    ['6 in', 0.1524],
    ['6 in.', 0.1524],
    ["6''", 0.1524],
    ['6 INCHES', 0.1524],
    ['150mm', 0.15],
    ['15 cm', 0.15],
    ['1.02 m', 1.02],
    ['1,02 m', 1.02],
    ['0,250 m', 0.25],
    ['1 m 20 cm', 1.2],
    ['1 metre', 1],
    ['1 020 mm', 1.02],
    ['1,020.5 mm', 1.0205],
    ["3'", 0.9144],
    ['3\' 4 1/2"', 1.0287],
    ['3\'-4 1/2"', 1.0287],
    ['3\'4.5"', 1.0287],
    ["3'4", 1.016],
    ['3 ft 4 1/2 in', 1.0287],
    ['3 feet, 4 inches', 1.016],
    ['3.5 ft', 1.0668],
    ['4 1/2', 0.1143],
    ['1/2"', 0.0127],
    ['40-1/2"', 1.0287],
    ['.5"', 0.0127],
    ['+6"', 0.1524],
    ['0', 0],
  ])('%s', (text, expected) => {
    expect(metres(text)).toBeCloseTo(expected, 12);
  });

  test.each([
    ['3′ 4½″', 1.0287],
    ['3’-4 ½”', 1.0287],
    ['¾"', 0.01905],
    ['2⅛"', 0.053975],
    ['4 1⁄2"', 0.1143],
    ['40–1/2"', 1.0287],
    ['1\u202f020\u00a0mm', 1.02],
  ])('with typographic marks: %s', (text, expected) => {
    expect(metres(text)).toBeCloseTo(expected, 12);
  });

  test('a bare number is inches in the imperial system and mm in the metric', () => {
    expect(metres('8', 'imperial')).toBe(0.2032);
    expect(metres('203', 'metric')).toBe(0.203);
  });

  test('a bare number is in the unit that is asked for', () => {
    expect(metres('8', 'imperial', { bare: 'ft' })).toBeCloseTo(2.4384, 12);
  });

  test('a marked number is what its mark says in either system', () => {
    expect(metres('6"', 'metric')).toBe(0.1524);
    expect(metres('150 mm', 'imperial')).toBe(0.15);
  });

  test('whole inches come out to the last digit, as the catalogue writes them', () => {
    for (const [text, exact] of [
      ['3"', 0.0762],
      ['6"', 0.1524],
      ['7"', 0.1778],
      ['12"', 0.3048],
    ] as const)
      expect(metres(text)).toBe(exact);
  });

  test('a length below 0 is read where it is allowed', () => {
    expect(metres('-1\' 6"', 'imperial', { negative: true })).toBeCloseTo(-0.4572, 12);
    expect(metres('−2.5 m', 'metric', { negative: true })).toBe(-2.5);
  });
});

describe('what is not a length is refused with a sentence', () => {
  test.each([
    ['', 'Type a length, such as 3\' 4 1/2" or 40.5".'],
    ['duct', '“duct” is not a length: write 3\' 4 1/2" or 40.5".'],
    ['-6"', 'A length cannot be below 0: write 3\' 4 1/2" or 40.5".'],
    ['5"3"', '“5"3"” gives in twice: write 3\' 4 1/2" or 40.5".'],
    ['4" 3\'', '“4" 3\'” puts ft after in: write 3\' 4 1/2" or 40.5".'],
    ["3' 20 cm", '“3\' 20 cm” puts cm after ft: write 3\' 4 1/2" or 40.5".'],
    ['1,200 m', '“1,200 m” can be read as 1200 or as 1.2: write one of these, without the comma.'],
    ['3\' 4" or so', '“3\' 4" or so” is not a length at “or so”: write 3\' 4 1/2" or 40.5".'],
  ])('%s', (text, message) => {
    expect(sentence(text)).toBe(message);
  });

  test.each(['1/0', '1.2.3', '12,', '3 4 5', '1 m 2', '6 furlongs', '1e3', '--3', '3" 4', 'NaN', 'Infinity'])(
    '%s',
    (text) => {
      expect(parseLength(text, 'imperial').ok).toBe(false);
    },
  );

  test('a number too long to hold', () => {
    expect(sentence('9'.repeat(400))).toContain('not a length');
  });

  test('the sample is in the system that is asked for', () => {
    expect(sentence('duct', 'metric')).toBe('“duct” is not a length: write 1020 mm or 1.02 m.');
  });
});

describe('a diameter', () => {
  test.each(['8', '8"', '⌀8"', 'Ø 8 in', '8" dia.', '203.2 mm'])('is read from %s', (text) => {
    expect(parseDiameter(text, 'imperial')).toEqual({ ok: true, value: 0.2032 });
  });

  test('of nothing is refused', () => {
    expect(parseDiameter('0', 'imperial')).toEqual({ ok: false, message: 'A diameter must be more than 0.' });
  });

  test.each([
    [0.2032, 'imperial', '8"'],
    [0.2032, 'metric', '203 mm'],
    [0.08255, 'imperial', '3 1/4"'],
    [0.4572, 'imperial', '18"'],
  ] as const)('%d m is written in the %s system as %s', (value, system, text) => {
    expect(formatDiameter(value, system)).toBe(text);
  });
});

describe('a length is written as the trade writes it', () => {
  test.each([
    [1.0287, '3\'-4 1/2"'],
    [0.9144, '3\'-0"'],
    [1.539875, '5\'-0 5/8"'],
    [0.015875, '5/8"'],
    [0.1143, '4 1/2"'],
    [0.0127, '1/2"'],
    [0, '0"'],
    [0.9143, '3\'-0"'],
    [-1.0287, '−3\'-4 1/2"'],
    [-0.0001, '0"'],
    [Number.NaN, '–'],
  ])('%d m in the imperial system is %s', (value, text) => {
    expect(formatLength(value, 'imperial')).toBe(text);
  });

  test.each([
    [1.0287, '1029 mm'],
    [0, '0 mm'],
    [-0.0001, '0 mm'],
    [9.9994, '9999 mm'],
    [9.9996, '10.00 m'],
    [12.345, '12.35 m'],
    [Number.POSITIVE_INFINITY, '–'],
  ])('%d m in the metric system is %s', (value, text) => {
    expect(formatLength(value, 'metric')).toBe(text);
  });

  test('to the fraction that is asked for', () => {
    expect(formatLength(0.0015875, 'imperial', { atLeast: 16 })).toBe('1/16"');
    expect(formatLength(1.0287, 'imperial', { atMost: 1 })).toBe('3\'-5"');
  });

  test('in inches alone where asked', () => {
    expect(formatLength(1.0287, 'imperial', { inchesOnly: true })).toBe('40 1/2"');
  });
});
