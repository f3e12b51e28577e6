import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boundsOf,
  fit as fitted,
  MAX_SCALE,
  MIN_SCALE,
  overlaps,
  toScreen,
  toSheet,
  visibleBounds,
  zoomAt,
} from '../../../src/drawing/viewport.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const views = fc.record({
  scale: between(MIN_SCALE, MAX_SCALE),
  panX: between(-5000, 5000),
  panY: between(-5000, 5000),
});
const pixels = fc.record({ x: between(0, 2000), y: between(0, 1200) });

describe('the viewport', () => {
  it('shows up on the sheet as up on the screen', () => {
    const view = { scale: 100, panX: 40, panY: 500 };
    expect(toScreen({ u: 1, v: 2 }, view)).toEqual({ x: 140, y: 300 });
  });

  it('takes a pixel to the sheet and back to the same pixel', () => {
    fc.assert(
      fc.property(views, pixels, (view, pixel) => {
        const back = toScreen(toSheet(pixel, view), view);
        expect(back.x).toBeCloseTo(pixel.x, 6);
        expect(back.y).toBeCloseTo(pixel.y, 6);
      }),
    );
  });

  it('keeps the point under the pointer when it zooms', () => {
    fc.assert(
      fc.property(views, pixels, between(0.05, 20), (view, pointer, factor) => {
        const held = toSheet(pointer, view);
        const after = toScreen(held, zoomAt(view, pointer, factor));
        expect(after.x).toBeCloseTo(pointer.x, 5);
        expect(after.y).toBeCloseTo(pointer.y, 5);
      }),
    );
  });

  it('stops zooming at its limits without moving the point under the pointer', () => {
    const view = { scale: MAX_SCALE, panX: 10, panY: 20 };
    expect(zoomAt(view, { x: 300, y: 200 }, 2)).toEqual(view);
  });

  it('fits a drawing inside its margins and touches them on one axis', () => {
    const size = { width: 800, height: 600 };
    const view = fitted({ minU: -1, minV: 2, maxU: 3, maxV: 4 }, size, 50);
    const a = toScreen({ u: -1, v: 4 }, view);
    const b = toScreen({ u: 3, v: 2 }, view);
    expect(a.x).toBeCloseTo(50, 9);
    expect(b.x).toBeCloseTo(750, 9);
    expect(a.y).toBeGreaterThan(50);
    expect(a.y + b.y).toBeCloseTo(600, 9);
  });

  it('sees exactly what lies between the corners of its element', () => {
    const view = { scale: 100, panX: -100, panY: 700 };
    expect(visibleBounds(view, { width: 800, height: 600 })).toEqual({
      minU: 1,
      minV: 1,
      maxU: 9,
      maxV: 7,
    });
  });

  it('counts rectangles that touch as overlapping and those apart as not', () => {
    const box = { minU: 0, minV: 0, maxU: 1, maxV: 1 };
    expect(overlaps(box, { ...box, minU: 1, maxU: 2 })).toBe(true);
    expect(overlaps(box, { ...box, minU: 1.01, maxU: 2 })).toBe(false);
  });

  it('has no bounds for no points', () => {
    expect(boundsOf([])).toBeNull();
  });
});
