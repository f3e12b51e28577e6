import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  FOOT,
  formatDiameter,
  formatLength,
  formatNumber,
  INCH,
  type InchStyle,
  inchStyles,
  locales,
  metricLengths,
  type Parsed,
  parseDiameter,
  parseLength,
  parseNumber,
  parseQuantity,
  type QuantityKind,
  quantity,
  type Style,
  type System,
  styleOf,
} from '../../src/units/index.ts';

const value = (read: Parsed) => {
  if (!read.ok) throw new Error(read.message);
  return read.value;
};
const systems: readonly System[] = ['imperial', 'metric'];
const styles = fc
  .record({
    locale: fc.constantFrom(null, ...locales),
    inches: fc.constantFrom<InchStyle>(1, ...inchStyles),
    metric: fc.constantFrom(...metricLengths),
  })
  .map(styleOf);

function halfOfLength(metres: number, system: System, { inches, metric }: Style): number {
  if (system === 'metric') return metric === 'mm' && Math.abs(metres) >= 9.9995 ? 0.005 : 0.0005;
  if (inches === 'decimal inches') return INCH / 200;
  return inches === 'decimal feet' ? FOOT / 200 : INCH / inches / 2;
}

describe('what is written is read back as what it was, to what is shown', () => {
  test('lengths, to half of the fraction or the last figure that the style writes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.constantFrom(...systems),
        styles,
        fc.boolean(),
        (metres, system, style, inchesOnly) => {
          const text = formatLength(metres, system, { style, inchesOnly });
          const error = Math.abs(value(parseLength(text, system, { negative: true, style })) - metres);
          expect(error).toBeLessThanOrEqual(halfOfLength(metres, system, style) + 1e-9);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('the sizes of ducts, to a sixteenth of an inch or half a mm', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 1, noNaN: true }),
        fc.constantFrom(...systems),
        styles,
        (metres, system, style) => {
          const text = formatDiameter(metres, system, style);
          const error = Math.abs(value(parseDiameter(text, system, style)) - metres);
          expect(error).toBeLessThanOrEqual((system === 'imperial' ? INCH / 16 : 0.0005) + 1e-12);
        },
      ),
    );
  });

  test('numbers without a unit', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.double({ min: -1e7, max: 1e7, noNaN: true }), fc.integer({ min: -1e7, max: 1e7 })),
        fc.integer({ min: 0, max: 4 }),
        styles,
        (number, decimals, style) => {
          const read = parseNumber(formatNumber(number, decimals, style), style);
          expect(Math.abs(value(read) - number)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * 1.001);
        },
      ),
      { numRuns: 1000 },
    );
  });

  /** SI range, and half of the last figure that is shown in each system's unit, in SI. */
  const kinds: Record<QuantityKind, { max: number; half: Record<System, number> }> = {
    flow: { max: 2, half: { imperial: 0.5 * 0.000472, metric: 0.5 / 3600 } },
    pressure: { max: 2000, half: { imperial: 0.005 * 249.1, metric: 0.5 } },
    velocity: { max: 40, half: { imperial: 5 * 0.00508, metric: 0.05 } },
    lossRate: { max: 50, half: { imperial: 0.005 * 8.173, metric: 0.05 } },
    temperature: { max: 80, half: { imperial: 0.5 / 1.8, metric: 0.05 } },
    angle: { max: 360, half: { imperial: 0.05, metric: 0.05 } },
    area: { max: 1, half: { imperial: 0.05 * 0.00064516, metric: 0.5e-4 } },
    floorArea: { max: 500, half: { imperial: 0.5 * FOOT ** 2, metric: 0.5 } },
    run: { max: 200, half: { imperial: 0.05 * FOOT, metric: 0.005 } },
    elevation: { max: 5000, half: { imperial: 0.5 * FOOT, metric: 0.5 } },
    volume: { max: 5000, half: { imperial: 0.5 * FOOT ** 3, metric: 0.5 } },
    heat: { max: 50_000, half: { imperial: 50 * 0.29308, metric: 50 } },
    density: { max: 2, half: { imperial: 0.00005 * 16.0185, metric: 0.0005 } },
  };

  test.each(Object.entries(kinds))('%s', (kind, { max, half }) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max, noNaN: true }),
        fc.constantFrom(...systems),
        styles,
        (si, system, style) => {
          const { text } = quantity(kind as QuantityKind, si, system, style);
          const back = value(parseQuantity(kind as QuantityKind, text, system, { style }));
          expect(Math.abs(back - si)).toBeLessThanOrEqual(half[system] * 1.001 + 1e-12);
        },
      ),
    );
  });
});

test('the figure alone is read as the text with its unit is', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.constantFrom(...systems), (si, system) => {
      const { text, figure } = quantity('flow', si, system);
      expect(parseQuantity('flow', figure, system)).toEqual(parseQuantity('flow', text, system));
    }),
  );
});

test('any text is a finite length or a sentence', () => {
  const marks = fc.constantFrom(...'0123456789 .,\'"/-ftinmc½″′', 'mm', ' ft ', '1/2', '3');
  const texts = fc.oneof(
    fc.string(),
    fc.array(marks, { maxLength: 12 }).map((parts) => parts.join('')),
  );
  fc.assert(
    fc.property(texts, fc.constantFrom(...systems), (text, system) => {
      const read = parseLength(text, system);
      if (read.ok) expect(read.value).toBeGreaterThanOrEqual(0);
      else expect(read.message).toMatch(/^[A-Z“].*\.$/s);
      if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
    }),
    { numRuns: 1000 },
  );
});

test('no number is read as a thousand times another, whatever the locale', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 999 }),
      fc.integer({ min: 0, max: 999 }),
      fc.constantFrom(',', '.'),
      styles,
      (whole, thousandths, sign, style) => {
        const text = `${whole}${sign}${String(thousandths).padStart(3, '0')}`;
        const read = parseNumber(text, style);
        if (sign === style.decimal) expect(value(read)).toBeCloseTo(whole + thousandths / 1000, 9);
        else expect(read.ok).toBe(false);
      },
    ),
  );
});
