import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gridStep, multiples, rulerText, scaleBar } from '../../../src/drawing/grid.ts';
import { MAX_SCALE } from '../../../src/drawing/viewport.ts';
import { FOOT, INCH } from '../../../src/units/index.ts';

const units = fc.constantFrom('imperial', 'metric');

describe('the grid', () => {
  it('keeps its lines apart at every zoom, and its numbers further', () => {
    fc.assert(
      fc.property(fc.double({ min: 6, max: MAX_SCALE, noNaN: true }), units, (scale, system) => {
        const { minor, major } = gridStep(scale, system);
        expect(minor * scale).toBeGreaterThanOrEqual(8);
        expect(major * scale).toBeGreaterThanOrEqual(56);
      }),
    );
  });

  it('has a whole number of faint lines to each stronger one', () => {
    fc.assert(
      fc.property(fc.double({ min: 6, max: MAX_SCALE, noNaN: true }), units, (scale, system) => {
        const { minor, major } = gridStep(scale, system);
        expect(major / minor).toBeCloseTo(Math.round(major / minor), 9);
      }),
    );
  });

  it('lies on inches and feet in a job in imperial units', () => {
    expect(gridStep(100, 'imperial')).toEqual({ minor: 6 * INCH, major: 2 * FOOT });
  });

  it('has a line at both ends of a range that begins and ends on one', () => {
    expect(multiples(-0.2, 0.2, 0.1)).toEqual([
      expect.closeTo(-0.2, 12),
      expect.closeTo(-0.1, 12),
      0,
      expect.closeTo(0.1, 12),
      expect.closeTo(0.2, 12),
    ]);
  });

  it.each([
    [4 * FOOT, 'imperial', "4'"],
    [-4.5 * FOOT, 'imperial', `−4'-6"`],
    [0, 'imperial', "0'"],
    [1.25, 'metric', '1.25'],
  ] as const)('writes %d m in %s on a ruler as %s', (metres, system, text) => {
    expect(rulerText(metres, system)).toBe(text);
  });

  it('has a scale bar of a round length that says how long it is', () => {
    expect(scaleBar({ scale: 100, panX: 0, panY: 0 }, 'metric', 110)).toEqual({ length: 1, text: '1 m' });
    const bar = scaleBar({ scale: 100, panX: 0, panY: 0 }, 'imperial', 110);
    expect(bar.text).toBe('2 ft');
    expect(bar.length).toBeCloseTo(2 * FOOT, 12);
  });
});
