import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colourAt,
  colourScale,
  inkOnFill,
  legendStops,
  roundEnd,
  textOn,
} from '../../../src/drawing/colour.ts';
import { FPM, INCH_OF_WATER_PER_100_FT } from '../../../src/units/index.ts';

const luminance = (colour: string) => {
  const [r = 0, g = 0, b = 0] = (colour.match(/\d+/g) ?? []).map(Number);
  const linear = (c: number) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4);
  return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
};

const hex = (colour: string) => `rgb(${[1, 3, 5].map((i) => Number.parseInt(colour.slice(i, i + 2), 16))})`;

describe('the colour scale', () => {
  it('ends at a round number of feet a minute in a job in imperial units', () => {
    const scale = colourScale([2240 * FPM, 700 * FPM], 'velocity', 'imperial');
    expect(scale.unit).toBe('fpm');
    expect(scale.max / FPM).toBeCloseTo(3000, 9);
    expect(scale.ticks.map((tick) => tick.text)).toEqual(['0', '1000', '2000', '3000']);
  });

  it('ends at a round number of metres a second in a metric job', () => {
    const scale = colourScale([11.3], 'velocity', 'metric');
    expect(scale.unit).toBe('m/s');
    expect(scale.max).toBe(15);
  });

  it('covers every value that it was made from', () => {
    const values = fc.array(fc.double({ min: 1e-6, max: 1e4, noNaN: true }), { minLength: 1 });
    fc.assert(
      fc.property(values, fc.constantFrom('imperial', 'metric'), (list, units) => {
        const { max } = colourScale(list, 'loss', units);
        expect(max).toBeGreaterThanOrEqual(Math.max(...list) * (1 - 1e-9));
        expect(max).toBeLessThanOrEqual(Math.max(Math.max(...list) * 1.6, 0.5 * INCH_OF_WATER_PER_100_FT));
      }),
    );
  });

  it('keeps its usual end while the air is slower, so that colours can be compared', () => {
    const ends = [[], [300 * FPM], [1990 * FPM]].map((list) => colourScale(list, 'velocity', 'imperial').max);
    for (const end of ends) expect(end / FPM).toBeCloseTo(2000, 9);
  });

  it('places each tick at its share of the scale', () => {
    const scale = colourScale([2.2], 'loss', 'metric');
    for (const tick of scale.ticks) expect(tick.share).toBeCloseTo(tick.value / scale.max, 12);
  });

  it('gets lighter all the way, so that it reads without hue', () => {
    const lights = legendStops(40).map((stop) => luminance(stop.colour));
    for (let i = 1; i < lights.length; i++) expect(lights[i]).toBeGreaterThan(lights[i - 1] as number);
  });

  it('keeps the end colours beyond its ends', () => {
    const scale = colourScale([3], 'velocity', 'metric');
    expect(colourAt(scale, 99)).toBe(colourAt(scale, scale.max));
    expect(colourAt(scale, 0)).toBe(legendStops(2)[0]?.colour);
  });

  it('colours air that runs backwards by its speed', () => {
    const scale = colourScale([3], 'velocity', 'metric');
    expect(colourAt(scale, -2)).toBe(colourAt(scale, 2));
  });

  it('chooses text that stands out by at least 4.5 to 1 on every colour', () => {
    const text = { dark: luminance(hex(inkOnFill.dark)), light: luminance(hex(inkOnFill.light)) };
    for (const { colour } of legendStops(60)) {
      const [a, b] = [luminance(colour), text[textOn(colour)]];
      expect((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05), colour).toBeGreaterThanOrEqual(4.5);
    }
  });

  it.each([
    [1, 1],
    [1.01, 1.5],
    [7, 8],
    [8.5, 10],
    [0.034, 0.04],
    [1510, 2000],
  ])('rounds %d up to %d', (value, end) => {
    expect(roundEnd(value)).toBeCloseTo(end, 12);
  });
});
