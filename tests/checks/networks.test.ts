import { describe, expect, test } from 'vitest';
import { airOf } from '../../src/hydraulics/air.ts';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import type { FanCurve, Network } from '../../src/hydraulics/types.ts';
import { loss, roundDuct, totalCurve } from '../support/networks.ts';
import { off, reference } from '../support/reference.ts';

interface Answer {
  readonly flow: Record<string, number>;
  readonly head: Record<string, number>;
}
interface Case {
  readonly id: string;
  readonly title: string;
  readonly curves: Record<string, { kind: 'power3' | 'piecewise'; points_Q_m3s_P_Pa: [number, number][] }>;
  readonly nodes: readonly { id: string; type: 'open' | 'junction'; pressure_Pa?: number }[];
  readonly edges: readonly {
    id: string;
    type: 'fan' | 'duct';
    from: string;
    to: string;
    curve?: string;
    length_m?: number;
    diameter_m?: number;
    roughness_m?: number;
    K?: number;
  }[];
  readonly epanet: Answer;
  readonly colebrook: Answer;
}
interface Cases {
  readonly source: string;
  readonly air: { rho: number; mu: number };
  readonly networks: readonly Case[];
}

const cases = reference<Cases>('networks.json');
const air = airOf(cases.air.rho, cases.air.mu);

function networkOf(c: Case): Network {
  const curveOf = (name: string): FanCurve => {
    const curve = c.curves[name];
    if (!curve) throw new Error(`no curve ${name}`);
    return totalCurve(curve.points_Q_m3s_P_Pa, curve.kind === 'power3' ? 'power' : 'linear', air.density);
  };
  return {
    air,
    nodes: c.nodes.map((n) =>
      n.pressure_Pa === undefined ? { id: n.id } : { id: n.id, pressure: n.pressure_Pa },
    ),
    edges: c.edges.map((e) => {
      const ends = { id: e.id, from: e.from, to: e.to };
      if (e.curve !== undefined) return { ...ends, parts: [], fan: curveOf(e.curve) };
      const d = e.diameter_m as number;
      return { ...ends, parts: [roundDuct(e.length_m as number, d, e.roughness_m), loss(e.K as number, d)] };
    }),
  };
}

describe(`networks against: ${cases.source}`, () => {
  test('there are networks to compare', () => {
    expect(cases.networks.length).toBeGreaterThan(3);
  });
  for (const c of cases.networks) {
    const solution = solveNetwork(networkOf(c));
    if (!solution.converged) throw new Error(solution.reason);
    const worst = (answer: Answer, values: ReadonlyMap<string, number>, key: 'flow' | 'head'): number =>
      Math.max(
        ...Object.entries(answer[key])
          .filter(([, theirs]) => theirs !== 0)
          .map(([id, theirs]) => off(values.get(id) as number, theirs)),
      );
    test(`${c.id}, ${c.title}: every flow within 0.3 % of the engine`, () => {
      expect(worst(c.epanet, solution.flows, 'flow')).toBeLessThan(0.003);
    });
    test(`${c.id}, ${c.title}: every flow and pressure within 1e-8 of the exact solver`, () => {
      expect(worst(c.colebrook, solution.flows, 'flow')).toBeLessThan(1e-8);
      expect(worst(c.colebrook, solution.pressures, 'head')).toBeLessThan(1e-8);
    });
  }
});
