import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { fanProblem, fanSlope, fanTotalPressure, freeDelivery } from '../../../src/hydraulics/fan.ts';
import type { FanCurve } from '../../../src/hydraulics/types.ts';
import { off } from '../../support/reference.ts';

const air = airOf(1.2, 1.8e-5);
const curve: FanCurve = {
  points: [
    [0, 260],
    [0.12, 200],
    [0.2, 110],
    [0.28, 0],
  ],
  basis: 'total',
  collarArea: 0.0324,
  density: 1.2,
};
const shapes = ['monotone-cubic', 'linear'] as const;

describe('a fan curve', () => {
  for (const interpolation of shapes) {
    const shaped = { ...curve, interpolation };
    test(`${interpolation}: passes through its points`, () => {
      for (const [q, p] of curve.points) expect(fanTotalPressure(shaped, q, air)).toBeCloseTo(p, 9);
    });

    test(`${interpolation}: falls wherever its points fall, before and beyond them too`, () => {
      fc.assert(
        fc.property(
          fc.double({ min: -0.5, max: 1, noNaN: true }),
          fc.double({ min: 1e-4, max: 0.2, noNaN: true }),
          (q, more) => {
            expect(fanTotalPressure(shaped, q + more, air)).toBeLessThan(fanTotalPressure(shaped, q, air));
            expect(fanSlope(shaped, q, air)).toBeLessThan(0);
          },
        ),
      );
    });
  }

  test('the slope is the finite difference', () => {
    for (const q of [-0.1, 0.05, 0.15, 0.25, 0.4]) {
      const difference =
        (fanTotalPressure(curve, q + 1e-6, air) - fanTotalPressure(curve, q - 1e-6, air)) / 2e-6;
      expect(off(fanSlope(curve, q, air), difference)).toBeLessThan(1e-6);
    }
  });

  test('the ends go on without a kink', () => {
    for (const q of [0, 0.28]) {
      expect(off(fanSlope(curve, q - 1e-9, air), fanSlope(curve, q + 1e-9, air))).toBeLessThan(1e-6);
    }
  });

  test('a static basis gets the velocity pressure of the collar back', () => {
    const velocityPressure = 0.6 * (0.12 / 0.0324) ** 2;
    expect(fanTotalPressure({ ...curve, basis: 'static' }, 0.12, air)).toBeCloseTo(200 + velocityPressure, 9);
  });

  test('pressure goes with density, flow does not (fan laws)', () => {
    const thin = airOf(0.96, 1.8e-5);
    expect(fanTotalPressure(curve, 0.12, thin)).toBeCloseTo(160, 9);
    expect(fanTotalPressure(curve, 0.28, thin)).toBeCloseTo(0, 9);
  });

  test('a static-basis fan, blown through past free delivery, gives ever less than the velocity pressure', () => {
    const own = (q: number): number =>
      fanTotalPressure({ ...curve, basis: 'static' }, q, air) - 0.6 * (q / 0.0324) ** 2;
    expect(own(0.6)).toBeLessThan(own(0.4));
    expect(own(0.4)).toBeLessThan(0);
  });

  test('free delivery is where the pressure in its own basis is nothing', () => {
    expect(freeDelivery(curve)).toBeCloseTo(0.28, 12);
    expect(freeDelivery({ ...curve, basis: 'static' })).toBeCloseTo(0.28, 12);
  });

  test('a curve that stops short is carried on to free delivery along its end slope', () => {
    const short: FanCurve = {
      ...curve,
      points: [
        [0, 260],
        [0.12, 200],
      ],
      interpolation: 'linear',
    };
    expect(freeDelivery(short)).toBeCloseTo(0.52, 12);
  });

  test('a power curve is P0 - b Q^c through its three points', () => {
    const c = 1.7;
    const at = (q: number): [number, number] => [q, 300 - 4000 * q ** c];
    const power: FanCurve = { ...curve, points: [at(0), at(0.1), at(0.15)], interpolation: 'power' };
    for (const q of [0.03, 0.12, 0.18])
      expect(off(fanTotalPressure(power, q, air), at(q)[1])).toBeLessThan(1e-9);
  });

  test('a rising part keeps its crest at the highest point', () => {
    const stalling: FanCurve = {
      ...curve,
      points: [
        [0, 180],
        [0.06, 230],
        [0.2, 120],
        [0.28, 0],
      ],
    };
    expect(fanSlope(stalling, 0.03, air)).toBeGreaterThan(0);
    expect(fanSlope(stalling, 0.06, air)).toBeCloseTo(0, 9);
    expect(fanTotalPressure(stalling, 0.05, air)).toBeLessThan(230);
  });

  test('a curve that nothing can be read from is refused with a reason', () => {
    expect(fanProblem(curve)).toBeUndefined();
    expect(fanProblem({ ...curve, points: [[0, 1]] })).toContain('two points');
    expect(
      fanProblem({
        ...curve,
        points: [
          [0.1, 10],
          [0.1, 5],
        ],
      }),
    ).toContain('do not rise');
    expect(
      fanProblem({
        ...curve,
        points: [
          [0, Number.NaN],
          [0.1, 5],
        ],
      }),
    ).toContain('not a number');
    expect(fanProblem({ ...curve, basis: 'static', collarArea: 0 })).toContain('collar');
    expect(fanProblem({ ...curve, interpolation: 'power' })).toContain('three points');
  });
});
