import { describe, expect, test } from 'vitest';
import * as units from '../../../src/units/index.ts';

const value = (read: units.Parsed) => {
  if (!read.ok) throw new Error(read.message);
  return read.value;
};
const message = (read: units.Parsed) => (read.ok ? `read as ${read.value}` : read.message);

describe('the constants are the exact definitions', () => {
  test('an inch of water is 249.08891 Pa (conventional, 4 °C; published.json E-032 gives 249.09)', () => {
    expect(units.INCH_OF_WATER).toBeCloseTo(249.08891, 9);
  });

  test('a cubic foot a minute is 0.0004719474432 m3/s (exact from the foot of 0.3048 m; from memory)', () => {
    expect(units.CFM).toBeCloseTo(0.0004719474432, 16);
  });

  test('a foot a minute is 0.00508 m/s (exact from the foot of 0.3048 m; from memory)', () => {
    expect(units.FPM).toBeCloseTo(0.00508, 15);
  });
});

describe('airflow', () => {
  test.each([
    ['300 cfm', 0.14158423296],
    ['300', 0.14158423296],
    ['1,200 cfm', 0.56633693184],
    ['300 CFM', 0.14158423296],
    ['510 m³/h', 0.141666666667],
    ['510 m3/hr', 0.141666666667],
    ['140 L/s', 0.14],
    ['0.14 m3/s', 0.14],
    ['0,14 m^3/s', 0.14],
  ])('is read from %s', (text, expected) => {
    expect(value(units.parseFlow(text, 'imperial'))).toBeCloseTo(expected, 11);
  });

  test('a bare number is m³/h in the metric system', () => {
    expect(value(units.parseFlow('3600', 'metric'))).toBe(1);
  });

  test('is written in whole cfm or whole m³/h', () => {
    expect(units.formatFlow(0.1147, 'imperial')).toBe('243 cfm');
    expect(units.formatFlow(0.1147, 'metric')).toBe('413 m³/h');
  });

  test('below 0 is refused', () => {
    expect(message(units.parseFlow('-3', 'imperial'))).toBe('An airflow cannot be below 0: write 300 cfm.');
  });

  test('in a unit of pressure is refused', () => {
    expect(message(units.parseFlow('3 Pa', 'imperial'))).toBe(
      '“3 Pa” does not end in a unit of airflow: write 300 cfm.',
    );
  });

  test('with an unclear comma is refused in a metric unit', () => {
    expect(message(units.parseFlow('1,200 L/s', 'metric'))).toBe(
      '“1,200 L/s” can be read as 1200 or as 1.2: leave the comma out.',
    );
  });
});

describe('pressure', () => {
  test.each(['0.25 in w.g.', '0.25 in. wc', '0.25 inH2O', '.25"', '0.25 inches w.g.', '1/4 in w.g.', '0.25'])(
    'a quarter inch is read from %s',
    (text) => {
      expect(value(units.parsePressure(text, 'imperial'))).toBeCloseTo(62.2722275, 9);
    },
  );

  test.each([
    ['62 Pa', 62],
    ['-12 Pa', -12],
    ['0.1 kPa', 100],
    ['10 mmH2O', 98.0665],
    ['1 mbar', 100],
  ])('is read from %s', (text, expected) => {
    expect(value(units.parsePressure(text, 'metric'))).toBeCloseTo(expected, 9);
  });

  test.each([
    [62.27, 'imperial', '0.25 in w.g.'],
    [5, 'imperial', '0.020 in w.g.'],
    [62.27, 'metric', '62 Pa'],
    [6.227, 'metric', '6.2 Pa'],
    [9.96, 'metric', '10 Pa'],
    [-0.01, 'metric', '0.0 Pa'],
  ] as const)('%d Pa is written in the %s system as %s', (pascals, system, text) => {
    expect(units.formatPressure(pascals, system)).toBe(text);
  });
});

test('a comma that would make a small pressure a thousand inches is refused', () => {
  expect(message(units.parsePressure('1,250 in w.g.', 'imperial'))).toBe(
    '“1,250 in w.g.” can be read as 1250 or as 1.25: leave the comma out.',
  );
});

test('a velocity is read and written in fpm to 10 or in m/s', () => {
  expect(value(units.parseVelocity('1200 fpm', 'metric'))).toBeCloseTo(6.096, 12);
  expect(value(units.parseVelocity('6.1', 'metric'))).toBe(6.1);
  expect(units.formatVelocity(6.1, 'imperial')).toBe('1200 fpm');
  expect(units.formatVelocity(6.096, 'metric')).toBe('6.1 m/s');
});

test('a loss rate of 0.1 in w.g./100 ft is 0.817 Pa/m', () => {
  expect(value(units.parseLossRate('0.1 in w.g./100 ft', 'metric'))).toBeCloseTo(249.08891 / 304.8, 9);
  expect(units.formatLossRate(249.08891 / 304.8, 'imperial')).toBe('0.10 in w.g./100 ft');
  expect(units.formatLossRate(249.08891 / 304.8, 'metric')).toBe('0.82 Pa/m');
});

describe('temperature', () => {
  test.each([
    ['32 F', 0],
    ['212 °F', 100],
    ['-40', -40],
    ['21 °C', 21],
    ['293.15 K', 20],
  ])('is read from %s', (text, expected) => {
    expect(value(units.parseTemperature(text, 'imperial'))).toBeCloseTo(expected, 9);
  });

  test('is written in whole °F or in °C', () => {
    expect(units.formatTemperature(21, 'imperial')).toBe('70 °F');
    expect(units.formatTemperature(21.5, 'metric')).toBe('21.5 °C');
    expect(units.formatTemperature(0, 'metric')).toBe('0 °C');
    expect(units.formatTemperature(-0.01, 'metric')).toBe('0 °C');
  });
});

describe('angle', () => {
  test.each([
    ['45', 45],
    ['45°', 45],
    ['22.5 deg', 22.5],
    ['22 1/2°', 22.5],
    ['-30', -30],
  ])('is read from %s', (text, expected) => {
    expect(value(units.parseAngle(text, 'metric'))).toBe(expected);
  });

  test('is written without decimals that say nothing', () => {
    expect(units.formatAngle(45)).toBe('45°');
    expect(units.formatAngle(22.5)).toBe('22.5°');
    expect(units.formatAngle(89.96)).toBe('90°');
  });
});

test.each([
  ['50 sq in', 0.032258],
  ['50 in2', 0.032258],
  ['50 in²', 0.032258],
  ['320 cm²', 0.032],
  ['0.032 m2', 0.032],
  ['1 sq. ft.', 0.09290304],
])('an area is read from %s', (text, expected) => {
  expect(value(units.parseArea(text, 'imperial'))).toBeCloseTo(expected, 12);
});

test('a floor area is read and written in square feet or square metres', () => {
  expect(value(units.parseQuantity('floorArea', '1,800 sq ft', 'imperial'))).toBeCloseTo(167.2255, 4);
  expect(value(units.parseQuantity('floorArea', '165', 'metric'))).toBe(165);
  expect(units.quantity('floorArea', 165, 'imperial').text).toBe('1776 sq ft');
  expect(units.quantity('floorArea', 165, 'metric').text).toBe('165 m²');
});

test('a run of duct is written in feet with one decimal or metres with two', () => {
  expect(units.formatRun(5.61, 'imperial')).toBe('18.4 ft');
  expect(units.formatRun(5.61, 'metric')).toBe('5.61 m');
});

test('a quantity gives its figure, number and unit apart', () => {
  expect(units.quantity('flow', 0.141584, 'imperial')).toMatchObject({
    text: '300 cfm',
    figure: '300',
    unit: 'cfm',
  });
  expect(units.quantity('pressure', 100, 'metric').value).toBe(100);
});

test('what is not a finite number is written as a dash', () => {
  expect(units.formatFlow(Number.NaN, 'imperial')).toBe('–');
  expect(units.formatPressure(Number.POSITIVE_INFINITY, 'metric')).toBe('–');
});

test('a word that every object knows is no unit', () => {
  expect(units.parsePressure('3 constructor', 'imperial').ok).toBe(false);
});
