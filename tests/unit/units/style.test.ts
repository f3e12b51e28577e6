import { afterEach, describe, expect, test } from 'vitest';
import {
  currentStyle,
  formatDay,
  formatDiameter,
  formatFlow,
  formatLarge,
  formatLength,
  formatMoment,
  formatNumber,
  formatTrimmed,
  inStyle,
  onStyle,
  type Parsed,
  parseDiameter,
  parseLength,
  parseNumber,
  parseQuantity,
  plainChoice,
  plainStyle,
  quantity,
  type StyleChoice,
  setStyle,
  styleOf,
} from '../../../src/units/index.ts';

const styled = (choice: Partial<StyleChoice>) => styleOf({ ...plainChoice, ...choice });
const inLocale = (locale: string) => styled({ locale });
const said = (read: Parsed) => (read.ok ? read.value : read.message);

afterEach(() => setStyle(plainStyle));

describe('a figure is written as its locale writes it', () => {
  test.each([
    ['en-US', '62.5', '12,345.5'],
    ['de-DE', '62,5', '12.345,5'],
    ['fr-FR', '62,5', '12\u202f345,5'],
    ['sv-SE', '62,5', '12\u00a0345,5'],
    ['en-IN', '62.5', '12,345.5'],
    ['ar-EG', '62.5', '12,345.5'],
  ])('%s (from Unicode CLDR)', (locale, small, large) => {
    expect(formatNumber(62.5, 1, inLocale(locale))).toBe(small);
    expect(formatLarge(12_345.5, 1, inLocale(locale))).toBe(large);
  });

  test('four figures stay together, so that nobody reads a thousand as one', () => {
    expect(formatLarge(1200, 0, inLocale('de-DE'))).toBe('1200');
    expect(formatLarge(1200, 0, inLocale('en-US'))).toBe('1200');
  });

  test('nothing is grouped and a point is the decimal sign where no locale is chosen', () => {
    expect(formatLarge(12_345.5, 1)).toBe('12345.5');
  });

  test('a number that stands in a field is not grouped, so that it is read back', () => {
    expect(formatNumber(12_345, 0, inLocale('de-DE'))).toBe('12345');
  });

  test('nothing is written as minus nothing', () => {
    expect(formatNumber(-0.01, 1)).toBe('0.0');
    expect(formatNumber(-1.5, 1, inLocale('de-DE'))).toBe('−1,5');
  });

  test('decimals that say nothing can be left out', () => {
    expect(formatTrimmed(1.5, 2, inLocale('de-DE'))).toBe('1,5');
    expect(formatTrimmed(2, 2, inLocale('de-DE'))).toBe('2');
  });

  test('a tag that the system does not know counts as none', () => {
    expect(formatLarge(12_345.5, 1, inLocale('no such tag'))).toBe('12345.5');
  });
});

describe('a point or a comma that could be either sign', () => {
  test.each([
    ['en-US', '1.200', 1.2],
    ['de-DE', '1,200', 1.2],
    ['fr-FR', '1,200', 1.2],
    ['en-US', '1,200', '“1,200” can be read as 1200 or as 1.2: leave the comma out.'],
    ['de-DE', '1.200', '“1.200” can be read as 1200 or as 1,2: leave the point out.'],
    ['fr-FR', '1.200', '“1.200” can be read as 1200 or as 1,2: leave the point out.'],
  ])('%s: %s is the decimal sign where the locale says so, and else is refused', (locale, text, expected) => {
    expect(said(parseNumber(text, inLocale(locale)))).toBe(expected);
  });

  test.each(['en-US', 'de-DE', 'fr-FR', 'de-CH'])('%s: is clear where it can be one sign alone', (locale) => {
    const read = (text: string) => said(parseNumber(text, inLocale(locale)));
    expect(read('1,5')).toBe(1.5);
    expect(read('1.5')).toBe(1.5);
    expect(read('0,250')).toBe(0.25);
    expect(read('1.234,5')).toBe(1234.5);
    expect(read('1,234.5')).toBe(1234.5);
    expect(read('1.234.567')).toBe(1_234_567);
    expect(read('12\u202f345,5')).toBe(12_345.5);
    expect(read('1½')).toBe(1.5);
  });

  test.each([
    ['en-US', '1,200 cfm', 0.5663],
    ['de-DE', '1.200 m³/h', 1 / 3],
  ])('%s: groups in a unit that runs to thousands: %s', (locale, text, expected) => {
    expect(said(parseQuantity('flow', text, 'metric', { style: inLocale(locale) }))).toBeCloseTo(
      expected as number,
      4,
    );
  });

  test('is not taken for a thousand where the locale groups with another sign', () => {
    expect(parseQuantity('flow', '1.200 m³/h', 'metric', { style: inLocale('fr-FR') }).ok).toBe(false);
  });

  test('a length is refused with what it could be, in the figures of the locale', () => {
    expect(said(parseLength('1.200 m', 'metric', { style: inLocale('de-DE') }))).toBe(
      '“1.200 m” can be read as 1200 or as 1,2: write one of these, without the point.',
    );
    expect(said(parseLength('1,200 m', 'metric', { style: inLocale('de-DE') }))).toBe(1.2);
  });
});

describe('apostrophes', () => {
  test('group thousands where the locale groups with them', () => {
    const style = inLocale('de-CH');
    expect(said(parseQuantity('volume', "12'345 m³", 'metric', { style }))).toBe(12_345);
    expect(said(parseQuantity('volume', '12’345 m³', 'metric', { style }))).toBe(12_345);
  });

  test('are feet in a length everywhere', () => {
    expect(said(parseLength("3' 4", 'imperial', { style: inLocale('de-CH') }))).toBeCloseTo(1.016, 12);
    expect(said(parseQuantity('run', "18'", 'metric', { style: inLocale('de-CH') }))).toBeCloseTo(5.4864, 9);
  });
});

test('lakhs are read back in a locale that groups in twos', () => {
  const style = inLocale('en-IN');
  expect(formatLarge(1_234_567, 0, style)).toBe('12,34,567');
  expect(said(parseNumber('12,34,567', style))).toBe(1_234_567);
  expect(parseNumber('12,34,567', inLocale('en-US')).ok).toBe(false);
});

describe('lengths follow the chosen precision', () => {
  test.each([
    [2, '3\'-4 1/2"'],
    [8, '3\'-4 1/2"'],
    [16, '3\'-4 9/16"'],
    [64, '3\'-4 35/64"'],
    ['decimal inches', '40.55"'],
    ['decimal feet', '3.38 ft'],
  ] as const)('%s', (inches, text) => {
    expect(formatLength(1.03, 'imperial', { style: styled({ inches }) })).toBe(text);
  });

  test.each([
    ['mm', '1234 mm'],
    ['cm', '123,4 cm'],
    ['m', '1,234 m'],
  ] as const)('%s, in a locale with a decimal comma', (metric, text) => {
    expect(formatLength(1.234, 'metric', { style: styled({ metric, locale: 'de-DE' }) })).toBe(text);
  });

  test('a bare number is in the unit that is written', () => {
    const bare = (choice: Partial<StyleChoice>, system: 'imperial' | 'metric') =>
      said(parseLength('1.5', system, { style: styled(choice) }));
    expect(bare({ metric: 'm' }, 'metric')).toBe(1.5);
    expect(bare({ metric: 'cm' }, 'metric')).toBe(0.015);
    expect(bare({ metric: 'mm' }, 'metric')).toBe(0.0015);
    expect(bare({ inches: 'decimal feet' }, 'imperial')).toBeCloseTo(0.4572, 12);
    expect(bare({ inches: 'decimal inches' }, 'imperial')).toBeCloseTo(0.0381, 12);
  });

  test('a size that is bought is never rounded to another, and is typed in inches or mm', () => {
    const coarse = styled({ inches: 2, metric: 'm' });
    expect(formatDiameter(0.08255, 'imperial', coarse)).toBe('3 1/4"');
    expect(formatDiameter(0.125, 'metric', coarse)).toBe('125 mm');
    expect(said(parseDiameter('125', 'metric', coarse))).toBe(0.125);
    expect(said(parseDiameter('8', 'imperial', styled({ inches: 'decimal feet' })))).toBe(0.2032);
    expect(formatDiameter(0.2032, 'imperial', styled({ inches: 'decimal feet' }))).toBe('8.00"');
  });
});

describe('the style in use', () => {
  test('is what everything is written in where none is named', () => {
    setStyle(styled({ locale: 'de-DE', metric: 'm' }));
    expect(formatLength(1.5, 'metric')).toBe('1,500 m');
    expect(quantity('pressure', 6.25, 'metric').text).toBe('6,3 Pa');
    expect(said(parseLength('2', 'metric'))).toBe(2);
  });

  test('tells who listens, once a change', () => {
    let told = 0;
    const stop = onStyle(() => told++);
    setStyle(inLocale('de-DE'));
    setStyle(inLocale('de-DE'));
    stop();
    setStyle(plainStyle);
    expect(told).toBe(1);
  });

  test('gives way to another for a piece of work, and comes back after a mistake in it', () => {
    setStyle(inLocale('de-DE'));
    expect(inStyle(plainStyle, () => formatFlow(20, 'metric'))).toBe('72000 m³/h');
    expect(formatFlow(20, 'metric')).toBe('72.000 m³/h');
    expect(() =>
      inStyle(plainStyle, () => {
        throw new Error('broken');
      }),
    ).toThrow('broken');
    expect(currentStyle().locale).toBe('de-DE');
  });
});

describe('a date', () => {
  const noon = new Date(2026, 10, 25, 14, 5);

  test.each([
    ['de-DE', '25.11.2026', '25.11.2026, 14:05'],
    ['en-GB', '25 Nov 2026', '25 Nov 2026, 14:05'],
  ])('is written as its locale writes it: %s (from Unicode CLDR)', (locale, day, moment) => {
    expect(formatDay(noon, inLocale(locale))).toBe(day);
    expect(formatMoment(noon, inLocale(locale))).toBe(moment);
  });

  test('is written from year to minute where no locale is chosen', () => {
    expect(formatDay(noon)).toBe('2026-11-25');
    expect(formatMoment(noon)).toBe('2026-11-25 14:05');
  });

  test('that is none is a dash', () => {
    expect(formatDay(new Date(Number.NaN))).toBe('–');
  });
});

test('samples in sentences have the decimal sign of the locale', () => {
  const style = inLocale('de-DE');
  expect(said(parseLength('duct', 'metric', { style }))).toBe(
    '“duct” is not a length: write 1020 mm or 1,02 m.',
  );
  expect(said(parseQuantity('pressure', 'duct', 'imperial', { style }))).toBe(
    '“duct” is not a pressure: write 0,25 in w.g.',
  );
});
