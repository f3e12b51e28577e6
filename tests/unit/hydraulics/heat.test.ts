import { describe, expect, it } from 'vitest';
import { alongLeg, dewPoint, insulationAgainstDew, overallTransfer } from '../../../src/hydraulics/heat.ts';

const attic = { length: 4, perimeter: Math.PI * 0.2, hydraulicDiameter: 0.2, insulation: 0, ambient: -10 };

describe('dew point', () => {
  it('saturated air is at its dew point', () => {
    expect(dewPoint(20, 1)).toBeCloseTo(20, 10);
  });

  it('air at 20 °C and half saturated has its dew point at 9.3 °C (psychrometric tables, from memory)', () => {
    expect(dewPoint(20, 0.5)).toBeCloseTo(9.3, 1);
  });
});

describe('air in a cold space', () => {
  it('two half legs cool the air exactly as one whole leg does', () => {
    const whole = alongLeg(attic, 30, 0.12).outlet;
    const half = { ...attic, length: 2 };
    expect(alongLeg(half, alongLeg(half, 30, 0.12).outlet, 0.12).outlet).toBeCloseTo(whole, 12);
  });

  it('air never gets colder than its surroundings', () => {
    expect(alongLeg({ ...attic, length: 500 }, 30, 0.01).outlet).toBeGreaterThanOrEqual(-10);
  });

  it('insulation slows the loss of heat', () => {
    expect(overallTransfer({ ...attic, insulation: 0.05 })).toBeLessThan(overallTransfer(attic) / 3);
  });

  it('the insulation that is asked for brings the wall to the dew point and no less does', () => {
    const dew = dewPoint(30, 0.6);
    const needed = insulationAgainstDew(attic, 30, 0.12, dew);
    if (needed === null) throw new Error('an insulation exists');
    expect(alongLeg({ ...attic, insulation: needed }, 30, 0.12).wall).toBeGreaterThan(dew);
    expect(alongLeg({ ...attic, insulation: needed * 0.95 }, 30, 0.12).wall).toBeLessThan(dew);
  });
});
