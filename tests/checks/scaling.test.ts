import { describe, expect, test } from 'vitest';
import { airAt } from '../../src/hydraulics/air.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import { loss, roundDuct } from '../support/networks.ts';

const air = airAt({ elevation: 0, temperature: 20, humidity: 0.5 });
const INCH = 0.0254;

/** Flow at a constant pressure through 25 m of duct with a coefficient at its end. */
function flowAt(pressure: number, diameter: number, c = 0): number {
  const solution = solveNetwork({
    air,
    nodes: [
      { id: 'in', pressure },
      { id: 'out', pressure: 0 },
    ],
    edges: [{ id: 'run', from: 'in', to: 'out', parts: [roundDuct(25, diameter), loss(c, diameter)] }],
  });
  if (!solution.converged) throw new Error(solution.reason);
  return solution.flows.get('run') as number;
}

describe('squeezing a friction-ruled run', () => {
  for (const pressure of [30, 60, 120]) {
    const squeezed = (c: number): number => flowAt(pressure, 6 * INCH, c) / flowAt(pressure, 8 * INCH, c);

    test(`8 in to 6 in at a constant ${pressure} Pa: friction alone leaves between (6/8)^(19/7), smooth by Blasius, and (6/8)^2.5, fully rough (from memory)`, () => {
      expect(squeezed(0)).toBeGreaterThan(0.75 ** (19 / 7));
      expect(squeezed(0)).toBeLessThan(0.75 ** 2.5);
    });

    test(`8 in to 6 in at a constant ${pressure} Pa: with an open end about half is left (common practice)`, () => {
      expect(squeezed(1)).toBeGreaterThan(0.46);
      expect(squeezed(1)).toBeLessThan(0.52);
    });
  }

  test('four times the pressure moves a little more than twice the air (friction falls with Reynolds number)', () => {
    const one = flowAt(100, 0.15);
    expect(flowAt(400, 0.15) / one).toBeGreaterThan(2);
    expect(flowAt(400, 0.15) / one).toBeLessThan(2.15);
  });
});
