import { describe, expect, test } from 'vitest';
import { airOf } from '../../src/hydraulics/air.ts';
import { partDrop } from '../../src/hydraulics/element.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import type { Air, LossPart } from '../../src/hydraulics/types.ts';
import { loss, roundDuct, totalCurve } from '../support/networks.ts';
import { off, reference } from '../support/reference.ts';

interface Element {
  readonly kind: string;
  readonly D_m?: number;
  readonly L_m?: number;
  readonly roughness_m?: number;
  readonly K?: number;
  readonly velocity_D_m?: number;
  readonly dp_Pa: number;
}
interface Run {
  readonly id: string;
  readonly Q_m3_s: number;
  readonly rho: number;
  readonly mu: number;
  readonly elements: readonly Element[];
  readonly total_pressure_drop_Pa: number;
}
interface OperatingPoint {
  readonly run: string;
  readonly fan: string;
  readonly fan_points_Q_m3_s_P_Pa: readonly (readonly [number, number])[];
  readonly Q_m3_s: number;
  readonly dp_Pa: number;
}
interface Runs {
  readonly source: string;
  readonly runs: readonly Run[];
  readonly operatingPoints: readonly OperatingPoint[];
}

const file = reference<Runs>('runs.json');
const part = (e: Element): LossPart =>
  e.kind === 'straight'
    ? roundDuct(e.L_m as number, e.D_m as number, e.roughness_m)
    : loss(e.K as number, e.velocity_D_m as number);
const airFor = (run: Run): Air => airOf(run.rho, run.mu);

/** The reference's friction is laminar up to Re 2040 and Colebrook from there; ours has a bridge from 2000 to 4000. */
function reynolds(run: Run): number[] {
  return run.elements.map((e) => {
    const d = (e.D_m ?? e.velocity_D_m) as number;
    return (4 * run.Q_m3_s * run.rho) / (Math.PI * run.mu * d);
  });
}

describe(`series runs against: ${file.source}`, () => {
  for (const run of file.runs) {
    test(`${run.id}: every element and the total to 1e-6, with the K values as given`, () => {
      for (const re of reynolds(run)) expect(re < 2000 || re > 4000).toBe(true);
      let total = 0;
      for (const element of run.elements) {
        const drop = partDrop(part(element), run.Q_m3_s, airFor(run));
        expect(off(drop, element.dp_Pa)).toBeLessThan(1e-6);
        total += drop;
      }
      expect(off(total, run.total_pressure_drop_Pa)).toBeLessThan(1e-6);
    });
  }
});

describe(`operating points against: ${file.source}`, () => {
  for (const point of file.operatingPoints) {
    test(`${point.run} with fan ${point.fan}, straight lines between its points: flow and pressure to 1e-6`, () => {
      const run = file.runs.find((candidate) => candidate.id === point.run) as Run;
      const solution = solveNetwork({
        air: airFor(run),
        nodes: [{ id: 'room', pressure: 0 }, { id: 'collar' }, { id: 'out', pressure: 0 }],
        edges: [
          {
            id: 'fan',
            from: 'room',
            to: 'collar',
            parts: [],
            fan: totalCurve(point.fan_points_Q_m3_s_P_Pa, 'linear', run.rho),
          },
          { id: 'run', from: 'collar', to: 'out', parts: run.elements.map(part) },
        ],
      });
      if (!solution.converged) throw new Error(solution.reason);
      expect(off(solution.flows.get('run') as number, point.Q_m3_s)).toBeLessThan(1e-6);
      expect(off(solution.pressures.get('collar') as number, point.dp_Pa)).toBeLessThan(1e-6);
    });
  }
});
