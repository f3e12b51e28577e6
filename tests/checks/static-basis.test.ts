import { describe, expect, test } from 'vitest';
import { airOf } from '../../src/hydraulics/air.ts';
import { partDrop } from '../../src/hydraulics/element.ts';
import { fanTotalPressure } from '../../src/hydraulics/fan.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import type { FanCurve } from '../../src/hydraulics/types.ts';
import { loss, roundDuct } from '../support/networks.ts';
import { off } from '../support/reference.ts';

/*
 * Source: the definition of static pressure in a standard airflow test, total pressure at the
 * outlet less the velocity pressure there. An open end loses exactly that velocity pressure, so on
 * a bare duct of the collar's size nothing but friction is left for the static pressure.
 */
describe('a hood with a static-pressure curve on a bare straight duct of its collar', () => {
  const air = airOf(1.1, 1.85e-5);
  for (const [diameter, length] of [
    [0.1524, 3],
    [0.2032, 6],
    [0.254, 15],
    [0.3, 1],
  ] as const) {
    test(`${length} m of ${diameter} m: works at a static pressure equal to the friction alone, to 1e-9`, () => {
      const collarArea = (Math.PI / 4) * diameter ** 2;
      const fan: FanCurve = {
        points: [
          [0, 260],
          [0.12, 200],
          [0.2, 120],
          [0.28, 0],
        ],
        basis: 'static',
        collarArea,
        density: 1.2,
      };
      const duct = roundDuct(length, diameter);
      const solution = solveNetwork({
        air,
        nodes: [{ id: 'room', pressure: 0 }, { id: 'collar' }, { id: 'out', pressure: 0 }],
        edges: [
          { id: 'hood', from: 'room', to: 'collar', parts: [], fan },
          { id: 'duct', from: 'collar', to: 'out', parts: [duct, loss(1, diameter)] },
        ],
      });
      if (!solution.converged) throw new Error(solution.reason);
      const q = solution.flows.get('duct') as number;
      const velocityPressure = (air.density / 2) * (q / collarArea) ** 2;
      const staticPressure = (solution.pressures.get('collar') as number) - velocityPressure;
      expect(off(staticPressure, partDrop(duct, q, air))).toBeLessThan(1e-9);
      expect(off(fanTotalPressure(fan, q, air) - velocityPressure, partDrop(duct, q, air))).toBeLessThan(
        1e-9,
      );
    });
  }
});
