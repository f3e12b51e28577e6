import { describe, expect, it } from 'vitest';
import {
  type House,
  leakageFlow,
  makeUpFlow,
  makeUpOpening,
  OPENING_C,
} from '../../../src/hydraulics/house.ts';

const house: House = { volume: 400, ach50: 3, leakageExponent: 0.65, otherExhaust: 0.06, makeUpAir: null };

describe('leakage', () => {
  it('at 50 Pa a house changes its air as often as the blower door found', () => {
    expect((leakageFlow(house, 50) * 3600) / house.volume).toBeCloseTo(3, 12);
  });

  it('doubling the pressure raises the leakage by two to the exponent', () => {
    expect(leakageFlow(house, 10) / leakageFlow(house, 5)).toBeCloseTo(2 ** 0.65, 12);
  });
});

describe('make-up air', () => {
  it('the opening and the leakage together replace exactly what leaves at the limit', () => {
    const area = makeUpOpening(house, 0.25, 3, 1.2);
    const through = area * Math.sqrt((2 * 3) / (OPENING_C * 1.2));
    expect(through + leakageFlow(house, 3)).toBeCloseTo(0.25 + house.otherExhaust, 12);
  });

  it('a leaky house needs none', () => {
    expect(makeUpFlow({ ...house, ach50: 30 }, 0.1, 5)).toBe(0);
  });
});
