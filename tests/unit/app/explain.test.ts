import { describe, expect, it } from 'vitest';
import { rovingStep } from '../../../src/app/explain/roving.ts';

describe('among many figures', () => {
  it('the arrows go round, Home and End to the ends, other keys nowhere', () => {
    expect(rovingStep('ArrowRight', 2, 3)).toBe(0);
    expect(rovingStep('ArrowUp', 0, 3)).toBe(2);
    expect(rovingStep('End', 0, 3)).toBe(2);
    expect(rovingStep('Enter', 0, 3)).toBeUndefined();
  });
});
