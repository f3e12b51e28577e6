import { describe, expect, it } from 'vitest';
import { snapStep } from '../../../../src/canvas/tools/snap-step.ts';

const inch = 0.0254;

describe('the grid that the pointer is held to', () => {
  it.each([
    ['imperial', 80, 3 * inch],
    ['imperial', 400, inch],
    ['metric', 100, 0.1],
    ['metric', 1000, 0.01],
  ] as const)('is round in %s units at %d px a metre', (units, scale, step) => {
    expect(snapStep(scale, units)).toBeCloseTo(step, 12);
  });

  it('never lies so wide that a pointer is between its corners', () => {
    for (const units of ['imperial', 'metric'] as const)
      for (let scale = 4; scale <= 3400; scale *= 1.1)
        expect(snapStep(scale, units) * scale).toBeLessThanOrEqual(11);
  });

  it('does not get coarser when the sheet is zoomed in', () => {
    const along = Array.from({ length: 60 }, (_, i) => snapStep(4 * 1.12 ** i, 'imperial'));
    expect(along).toEqual([...along].sort((a, b) => b - a));
  });
});
