import { expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { type House, houseElements, leakageFlow, OUTDOORS, ROOM } from '../../../src/hydraulics/house.ts';
import { solveNetwork } from '../../../src/hydraulics/network.ts';

const house: House = { volume: 400, ach50: 3, leakageExponent: 0.65, otherExhaust: 0.06, makeUpAir: null };

/** Pressure of the room, Pa, with nothing running but what the house holds. */
function roomPressure(of: House): number {
  const { room, edges } = houseElements(of);
  const nodes = [{ id: OUTDOORS, pressure: 0 }, room];
  const solution = solveNetwork({ nodes, edges, air: airOf(1.2, 1.8e-5) });
  if (!solution.converged) throw new Error(solution.reason);
  return solution.pressures.get(ROOM) ?? Number.NaN;
}

test('other exhaust pulls the room down until the leakage replaces what leaves', () => {
  const pressure = roomPressure(house);
  expect(pressure).toBeLessThan(0);
  expect(leakageFlow(house, -pressure)).toBeCloseTo(house.otherExhaust, 9);
});

test('a make-up opening brings the room nearer to outdoors, and a larger one nearer still', () => {
  const opening = (area: number) => roomPressure({ ...house, makeUpAir: { kind: 'opening', area } });
  expect(opening(0.01)).toBeGreaterThan(roomPressure(house));
  expect(opening(0.03)).toBeGreaterThan(opening(0.01));
});

test('a make-up fan that supplies what the others take leaves the room at the pressure of outdoors', () => {
  expect(roomPressure({ ...house, makeUpAir: { kind: 'fan', flow: 0.06 } })).toBeCloseTo(0, 9);
});
