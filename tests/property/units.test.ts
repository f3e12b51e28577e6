import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  FOOT,
  formatLength,
  INCH,
  type Parsed,
  parseLength,
  parseQuantity,
  type QuantityKind,
  quantity,
  type System,
} from '../../src/units/index.ts';

const value = (read: Parsed) => {
  if (!read.ok) throw new Error(read.message);
  return read.value;
};
const systems: readonly System[] = ['imperial', 'metric'];
const negative = { negative: true };

describe('what is written is read back as what it was, to what is shown', () => {
  test('lengths in feet and inches, to half of the fraction', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.constantFrom(1, 2, 4, 8, 16, 32, 64),
        fc.boolean(),
        (metres, precision, inchesOnly) => {
          const text = formatLength(metres, 'imperial', { precision: precision as 8, inchesOnly });
          const error = Math.abs(value(parseLength(text, 'imperial', negative)) - metres);
          expect(error).toBeLessThanOrEqual(INCH / precision / 2 + 1e-12);
        },
      ),
    );
  });

  test('lengths in mm and m', () => {
    fc.assert(
      fc.property(fc.double({ min: -500, max: 500, noNaN: true }), (metres) => {
        const error = Math.abs(
          value(parseLength(formatLength(metres, 'metric'), 'metric', negative)) - metres,
        );
        expect(error).toBeLessThanOrEqual((Math.abs(metres) < 9.9995 ? 0.0005 : 0.005) + 1e-9);
      }),
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
      fc.property(fc.double({ min: 0, max, noNaN: true }), fc.constantFrom(...systems), (si, system) => {
        const { text } = quantity(kind as QuantityKind, si, system);
        const back = value(parseQuantity(kind as QuantityKind, text, system));
        expect(Math.abs(back - si)).toBeLessThanOrEqual(half[system] * 1.001 + 1e-12);
      }),
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
