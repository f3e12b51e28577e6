import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { partDrop, partProblem, partSlope } from '../../../src/hydraulics/element.ts';
import { colebrook } from '../../../src/hydraulics/friction.ts';
import type { LossPart } from '../../../src/hydraulics/types.ts';
import { roundDuct } from '../../support/networks.ts';

const air = airOf(1.2, 1.8e-5);
const area = (Math.PI / 4) * 0.2 ** 2;

const parts: Record<LossPart['kind'], LossPart> = {
  duct: roundDuct(10, 0.2),
  local: { kind: 'local', c: 0.4, area },
  'reynolds-local': {
    kind: 'reynolds-local',
    c: 0.2,
    area,
    hydraulicDiameter: 0.2,
    reynolds: [1e4, 2e4, 5e4, 1e5, 2e5],
    factor: [1.4, 1.26, 1.12, 1.04, 1],
  },
  flap: { kind: 'flap', openingPressure: 8, c: 0.6, area },
  power: { kind: 'power', coefficient: 0.03, exponent: 0.65 },
  measured: { kind: 'measured', loss: 40, atFlow: 0.2, density: 1.2 },
};

describe('every kind of loss part', () => {
  const flow = fc.double({ min: 1e-5, max: 2, noNaN: true });
  for (const [kind, part] of Object.entries(parts)) {
    test(`${kind}: the drop is odd in the flow, and nothing at rest`, () => {
      fc.assert(
        fc.property(flow, (q) => {
          expect(partDrop(part, -q, air)).toBe(-partDrop(part, q, air));
          expect(partDrop(part, q, air)).toBeGreaterThan(0);
        }),
      );
      expect(partDrop(part, 0, air)).toBe(0);
    });

    test(`${kind}: the slope is above zero, at rest too, and is the finite difference`, () => {
      expect(partSlope(part, 0, air)).toBeGreaterThan(0);
      fc.assert(
        fc.property(flow, (q) => {
          expect(partSlope(part, q, air)).toBeGreaterThan(0);
          const h = 1e-6 * q;
          const difference = (partDrop(part, q + h, air) - partDrop(part, q - h, air)) / (2 * h);
          const kink = part.kind === 'reynolds-local' ? 0.5 : 1e-4;
          expect(Math.abs(partSlope(part, q, air) / difference - 1)).toBeLessThan(kink);
        }),
      );
    });
  }
});

describe('loss parts', () => {
  const q = 0.25;
  const velocityPressure = 0.6 * (q / area) ** 2;

  test('straight duct follows Darcy-Weisbach with Colebrook friction', () => {
    const re = ((q / area) * 0.2 * 1.2) / 1.8e-5;
    const expected = ((colebrook(re, 9e-5 / 0.2) * 10) / 0.2) * velocityPressure;
    expect(partDrop(parts.duct, q, air) / expected).toBeCloseTo(1, 12);
  });

  test('a coefficient costs C velocity pressures; the linear creep near rest is off by less than 1e-10', () => {
    expect(Math.abs(partDrop(parts.local, q, air) / (0.4 * velocityPressure) - 1)).toBeLessThan(1e-10);
  });

  test('the creep of a coefficient is off by less than 1e-6 at Reynolds number 100', () => {
    const slow = (100 * 1.8e-5 * area) / (1.2 * 0.2);
    const square = 0.4 * 0.6 * (slow / area) ** 2;
    expect(Math.abs(partDrop(parts.local, slow, air) / square - 1)).toBeLessThan(1e-6);
  });

  test("a handbook's Reynolds factor is interpolated between its rows and held at the ends", () => {
    const flowAt = (re: number): number => (re * 1.8e-5 * area) / (1.2 * 0.2);
    const factorAt = (re: number): number => {
      const flow = flowAt(re);
      return partDrop(parts['reynolds-local'], flow, air) / (0.2 * 0.6 * (flow / area) ** 2);
    };
    expect(factorAt(3.5e4)).toBeCloseTo(1.19, 9);
    expect(factorAt(5e3)).toBeCloseTo(1.4, 8);
    expect(factorAt(1e6)).toBeCloseTo(1, 9);
  });

  test('the coefficient that a flap shows falls as the flow rises', () => {
    const shown = (flow: number): number => partDrop(parts.flap, flow, air) / (0.6 * (flow / area) ** 2);
    expect(shown(0.1)).toBeGreaterThan(shown(0.2));
    expect(shown(0.2)).toBeGreaterThan(shown(0.4));
  });

  test('an open flap holds back its opening pressure and its coefficient', () => {
    const flap = partDrop(parts.flap, 0.5, air);
    expect(flap).toBeCloseTo(8 + 0.6 * 0.6 * (0.5 / area) ** 2, 2);
  });

  test('leakage is the inverse of its power law', () => {
    const dp = partDrop(parts.power, 0.1, air);
    expect(0.03 * dp ** 0.65).toBeCloseTo(0.1, 10);
  });

  test('a measured loss passes through its point and scales with density', () => {
    expect(partDrop(parts.measured, 0.2, air)).toBeCloseTo(40, 9);
    expect(partDrop(parts.measured, 0.2, airOf(0.9, 1.8e-5))).toBeCloseTo(30, 9);
  });

  test('twice the length of duct has twice the friction', () => {
    expect(partDrop(roundDuct(20, 0.2), q, air) / partDrop(parts.duct, q, air)).toBeCloseTo(2, 14);
  });

  test('parts that no flow can be solved through are refused with a reason', () => {
    for (const part of Object.values(parts)) expect(partProblem(part)).toBeUndefined();
    expect(partProblem({ kind: 'local', c: -1, area })).toContain('coefficient');
    expect(partProblem({ kind: 'local', c: Number.NaN, area })).toContain('coefficient');
    expect(partProblem({ ...roundDuct(1, 0.2), area: 0 } as LossPart)).toContain('size');
    expect(partProblem({ kind: 'power', coefficient: 0.1, exponent: 2 })).toContain('exponent');
    const plunging = { reynolds: [1e4, 2e4], factor: [8, 1] };
    expect(partProblem({ ...parts['reynolds-local'], ...plunging } as LossPart)).toContain('falls faster');
  });
});
