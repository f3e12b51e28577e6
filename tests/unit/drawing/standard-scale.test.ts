import { describe, expect, it } from 'vitest';
import { fittingScale, standardScales } from '../../../src/drawing/standard-scale.ts';
import { words } from '../../../src/words/index.ts';

describe('standard scales', () => {
  it('give the largest at which a drawing fits', () => {
    expect(fittingScale('metric', (scale) => scale >= 30)).toBe(50);
    expect(fittingScale('imperial', (scale) => scale >= 30)).toBe(32);
  });

  it('give the smallest of all for a drawing that fits at none', () => {
    expect(fittingScale('metric', () => false)).toBe(5000);
  });

  it('are named as the trade names them', () => {
    expect(words.drawings.scaleInBlock(50)).toBe('1:50');
    expect(words.drawings.scaleInBlock(48)).toBe('1/4″ = 1′-0″');
  });

  it('of inches to a foot all have their name', () => {
    const nameless = standardScales.imperial.filter((scale) =>
      words.drawings.scaleInBlock(scale).startsWith('1:'),
    );
    expect(nameless).toEqual([]);
  });
});
