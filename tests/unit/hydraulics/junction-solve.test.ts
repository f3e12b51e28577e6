import { describe, expect, it } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { type Junction, solveWithJunctions } from '../../../src/hydraulics/junction-solve.ts';
import { junctionLoss } from '../../../src/hydraulics/losses/junctions.ts';
import type { Network } from '../../../src/hydraulics/types.ts';
import { imbalance, loss, roundDuct, totalCurve } from '../../support/networks.ts';
import { between, seeded } from '../../support/random.ts';

const air = airOf(1.2, 1.8e-5);
const area = (d: number) => (Math.PI / 4) * d * d;

interface Case {
  readonly main: number;
  readonly side: number;
  /** Between the branch and the main run, degrees. */
  readonly angle: number;
  /** How strong the side's fan is beside the main's. */
  readonly strength: number;
}

/** Two fans, one straight into the main and one into a branch, and one way out. */
function joining({ main, side, angle, strength }: Case): [Network, Junction] {
  const rad = (angle * Math.PI) / 180;
  const fan = (k: number) =>
    totalCurve(
      [
        [0, 300 * k],
        [0.15, 220 * k],
        [0.3, 0],
      ],
      'monotone-cubic',
    );
  const network: Network = {
    nodes: [{ id: 'room', pressure: 0 }, { id: 'a' }, { id: 'b' }, { id: 'j' }, { id: 'out', pressure: 0 }],
    edges: [
      { id: 'fan a', from: 'room', to: 'a', parts: [], fan: fan(1) },
      { id: 'fan b', from: 'room', to: 'b', parts: [], fan: fan(strength) },
      { id: 'main', from: 'a', to: 'j', parts: [roundDuct(3, main), loss(0.5, main)] },
      { id: 'side', from: 'b', to: 'j', parts: [roundDuct(2, side), loss(0.5, side)] },
      { id: 'trunk', from: 'j', to: 'out', parts: [roundDuct(5, main), loss(1.2, main)] },
    ],
    air,
  };
  const junction: Junction = {
    id: 'j',
    ports: [
      { edge: 'main', inward: true, area: area(main), away: [-1, 0, 0] },
      { edge: 'side', inward: true, area: area(side), away: [-Math.cos(rad), Math.sin(rad), 0] },
      { edge: 'trunk', inward: false, area: area(main), away: [1, 0, 0] },
    ],
  };
  return [network, junction];
}

function solved(of: Case) {
  const [network, junction] = joining(of);
  const solution = solveWithJunctions(network, [junction]);
  if (!solution.network.converged) throw new Error(solution.network.reason);
  const way = (edge: string) => {
    const found = solution.ways.find((candidate) => candidate.edge === edge);
    if (!found) throw new Error(`no loss on ${edge}`);
    return found;
  };
  const { flows, pressures } = solution.network;
  return { ...solution, network, flows, pressures, way };
}

describe('losses where ducts join', () => {
  it('agree with the flows that they were looked up for', () => {
    const { way, flows } = solved({ main: 0.2, side: 0.15, angle: 90, strength: 1 });
    const ratio = (flows.get('side') as number) / (flows.get('trunk') as number);
    const asked = { angle: 90, flowRatio: ratio, areaRatio: (0.15 / 0.2) ** 2, converging: true };
    expect(way('side').c).toBeCloseTo(junctionLoss(asked).branchC, 7);
    expect(way('main').c).toBeCloseTo(junctionLoss(asked).straightC, 7);
  });

  it('are charged with the velocity pressure of the whole flow, between the ducts that meet', () => {
    const { way, flows, pressures, network } = solved({ main: 0.2, side: 0.15, angle: 45, strength: 1 });
    const speed = (flows.get('trunk') as number) / area(0.2);
    expect(way('side').loss).toBeCloseTo((way('side').c * 1.2 * speed * speed) / 2, 9);
    const parts = network.edges.find(({ id }) => id === 'side')?.parts ?? [];
    const own = solveWithJunctions(
      {
        nodes: [
          { id: 'b', pressure: pressures.get('b') as number },
          { id: 'j', pressure: (pressures.get('j') as number) + way('side').loss },
        ],
        edges: [{ id: 'side', from: 'b', to: 'j', parts }],
        air,
      },
      [],
    ).network;
    expect(own.converged && own.flows.get('side')).toBeCloseTo(flows.get('side') as number, 8);
  });

  it('take air from both: each fan moves less than through a junction without a loss', () => {
    const [network, junction] = joining({ main: 0.2, side: 0.2, angle: 90, strength: 1 });
    const without = solveWithJunctions(network, []).network;
    const within = solveWithJunctions(network, [junction]).network;
    if (!without.converged || !within.converged) throw new Error('both converge');
    expect(within.flows.get('trunk')).toBeLessThan(without.flows.get('trunk') as number);
  });

  it('may help a weak stream along: its branch then gains pressure', () => {
    const { way } = solved({ main: 0.2, side: 0.2, angle: 30, strength: 0.8 });
    const weak = solved({ main: 0.2, side: 0.2, angle: 30, strength: 0.36 });
    expect(weak.way('side').c).toBeLessThan(way('side').c);
    expect(weak.way('side').loss).toBeLessThan(0);
  });

  it('of a wye are less than of a square tee', () => {
    const at = (angle: number) => solved({ main: 0.2, side: 0.15, angle, strength: 1 }).way('side').loss;
    expect(at(45)).toBeLessThan(at(90));
  });

  it('settle, balance at every node and say how many rounds it took, in five hundred random junctions', () => {
    const random = seeded(91);
    let worst = 0;
    let rounds = 0;
    for (let i = 0; i < 500; i++) {
      const main = between(random, 0.12, 0.25);
      const found = solved({
        main,
        side: main * between(random, 0.4, 1),
        angle: between(random, 15, 90),
        strength: between(random, 0.3, 1.6),
      });
      worst = Math.max(worst, imbalance(found.network, found.flows));
      rounds = Math.max(rounds, found.rounds);
      expect(found.change).toBeLessThan(1e-9);
    }
    expect(worst).toBeLessThan(1e-9);
    expect(rounds).toBeGreaterThan(2);
    expect(rounds).toBeLessThan(300);
  });

  it('are one solve and no loss where nothing joins', () => {
    const [network] = joining({ main: 0.2, side: 0.2, angle: 90, strength: 1 });
    expect(solveWithJunctions(network, [])).toMatchObject({ rounds: 1, ways: [] });
  });

  it('are left out, with the reason, where two ducts bring air and two take it away', () => {
    const way = (edge: string, inward: boolean, away: [number, number, number]) => ({
      edge,
      inward,
      area: 0.03,
      away,
    });
    const duct = [roundDuct(3, 0.2)];
    const { leftOut } = solveWithJunctions(
      {
        nodes: [
          { id: 'p', pressure: 50 },
          { id: 'q', pressure: 50 },
          { id: 'j' },
          { id: 'r', pressure: 0 },
          { id: 's', pressure: 0 },
        ],
        edges: [
          { id: '1', from: 'p', to: 'j', parts: duct },
          { id: '2', from: 'q', to: 'j', parts: duct },
          { id: '3', from: 'j', to: 'r', parts: duct },
          { id: '4', from: 'j', to: 's', parts: duct },
        ],
        air,
      },
      [
        {
          id: 'j',
          ports: [
            way('1', true, [-1, 0, 0]),
            way('2', true, [0, -1, 0]),
            way('3', false, [1, 0, 0]),
            way('4', false, [0, 1, 0]),
          ],
        },
      ],
    );
    expect(leftOut.get('j')).toMatch(/several ducts/);
  });
});
