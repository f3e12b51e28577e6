import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  colebrook,
  frictionFactor,
  frictionFactorSlope,
  LAMINAR_LIMIT,
  TURBULENT_LIMIT,
} from '../../../src/hydraulics/friction.ts';

const roughness = fc.double({ min: 0, max: 0.05, noNaN: true });
/** What the pressure drop of straight duct is proportional to. */
const group = (re: number, e: number): number => frictionFactor(re, e) * re * re;

describe('friction factor', () => {
  test('the root satisfies the Colebrook-White equation', () => {
    fc.assert(
      fc.property(fc.double({ min: 4000, max: 1e8, noNaN: true }), roughness, (re, e) => {
        const x = 1 / Math.sqrt(colebrook(re, e));
        expect(Math.abs(x + 2 * Math.log10(e / 3.7 + (2.51 * x) / re))).toBeLessThan(1e-13 * x);
      }),
    );
  });

  test('laminar flow has 64/Re, whatever the roughness', () => {
    expect(frictionFactor(1000, 0)).toBe(0.064);
    expect(frictionFactor(1000, 0.05)).toBe(0.064);
  });

  test('the pressure drop rises with the flow everywhere, through the bridge too', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 10_000, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.5, noNaN: true }),
        roughness,
        (re, more, e) => {
          expect(group(re * (1 + more), e)).toBeGreaterThan(group(re, e));
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('the drop has no jump and no kink at either end of the bridge', () => {
    for (const e of [0, 1e-4, 0.01, 0.05]) {
      for (const re of [LAMINAR_LIMIT, TURBULENT_LIMIT]) {
        const h = 1e-3;
        const before = (group(re, e) - group(re - h, e)) / h;
        const after = (group(re + h, e) - group(re, e)) / h;
        expect(Math.abs(after / before - 1)).toBeLessThan(1e-4);
      }
    }
  });

  test('the analytic slope is the finite difference', () => {
    fc.assert(
      fc.property(fc.double({ min: 100, max: 1e6, noNaN: true }), roughness, (re, e) => {
        const h = re * 1e-6;
        fc.pre([LAMINAR_LIMIT, TURBULENT_LIMIT].every((limit) => Math.abs(re - limit) > 2 * h));
        const difference = (frictionFactor(re + h, e) - frictionFactor(re - h, e)) / (2 * h);
        const tolerance = 1e-8 * frictionFactor(re, e);
        expect(Math.abs(frictionFactorSlope(re, e) - difference) * re).toBeLessThan(1e3 * tolerance);
      }),
    );
  });

  test('a rougher duct has more friction', () => {
    expect(colebrook(1e5, 0.001)).toBeGreaterThan(colebrook(1e5, 0.0001));
  });

  test('a negative Reynolds number or an impossible roughness is not a number', () => {
    expect(colebrook(-1, 0)).toBeNaN();
    expect(colebrook(1e5, 1)).toBeNaN();
    expect(frictionFactor(1e5, -0.1)).toBeNaN();
    expect(frictionFactorSlope(-1, 0)).toBeNaN();
  });
});
