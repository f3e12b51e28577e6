import { describe, expect, it } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { partDrop } from '../../../src/hydraulics/element.ts';
import { solveNetwork } from '../../../src/hydraulics/network.ts';
import type { LossPart, Network, NetworkNode, NetworkSolution } from '../../../src/hydraulics/types.ts';
import { imbalance, loss, roundDuct, totalCurve } from '../../support/networks.ts';
import { ours, randomNetwork } from '../../support/plain.ts';
import { between, seeded } from '../../support/random.ts';

const air = airOf(1.2, 1.8e-5);
const opening: LossPart = { kind: 'local', c: 2, area: 0.02 };
const leak: LossPart = { kind: 'power', coefficient: 0.02, exponent: 0.65 };

function solved(network: Network): Extract<NetworkSolution, { converged: true }> {
  const answer = solveNetwork(network);
  if (!answer.converged) throw new Error(answer.reason);
  return answer;
}

describe('a flow forced into a node', () => {
  it('leaves through the only opening, at the pressure that drives it through', () => {
    const { flows, pressures } = solved({
      nodes: [
        { id: 'out', pressure: 0 },
        { id: 'room', inflow: 0.1 },
      ],
      edges: [{ id: 'hole', from: 'room', to: 'out', parts: [opening] }],
      air,
    });
    expect(flows.get('hole')).toBeCloseTo(0.1, 12);
    expect(pressures.get('room')).toBeCloseTo(partDrop(opening, 0.1, air), 9);
  });

  it('that is drawn out comes in through the leakage, and the room stands below outdoors', () => {
    const { flows, pressures } = solved({
      nodes: [
        { id: 'out', pressure: 0 },
        { id: 'room', inflow: -0.05 },
      ],
      edges: [{ id: 'leak', from: 'out', to: 'room', parts: [leak] }],
      air,
    });
    expect(flows.get('leak')).toBeCloseTo(0.05, 12);
    expect(pressures.get('room')).toBeCloseTo(-((0.05 / 0.02) ** (1 / 0.65)), 9);
  });

  it('runs down a dead end that would carry nothing without it', () => {
    const network = (nodes: NetworkNode[]): Network => ({
      nodes: [{ id: 'out', pressure: 0 }, ...nodes],
      edges: [
        { id: 'near', from: 'out', to: 'mid', parts: [roundDuct(3, 0.15)] },
        { id: 'far', from: 'mid', to: 'end', parts: [roundDuct(2, 0.1), loss(1, 0.1)] },
      ],
      air,
    });
    expect(solved(network([{ id: 'mid' }, { id: 'end' }])).flows.get('far')).toBe(0);
    const { flows } = solved(network([{ id: 'mid' }, { id: 'end', inflow: 0.04 }]));
    expect(flows.get('far')).toBeCloseTo(-0.04, 12);
    expect(flows.get('near')).toBeCloseTo(-0.04, 12);
  });

  it('into the middle of a run divides between both its ways out', () => {
    const half = [roundDuct(4, 0.15)];
    const { flows } = solved({
      nodes: [
        { id: 'a', pressure: 0 },
        { id: 'mid', inflow: 0.08 },
        { id: 'b', pressure: 0 },
      ],
      edges: [
        { id: 'left', from: 'mid', to: 'a', parts: half },
        { id: 'right', from: 'mid', to: 'b', parts: half },
      ],
      air,
    });
    expect(flows.get('left')).toBeCloseTo(0.04, 12);
    expect(flows.get('right')).toBeCloseTo(0.04, 12);
  });

  it('makes no difference at a node whose pressure is given', () => {
    const edges = [
      {
        id: 'run',
        from: 'a',
        to: 'b',
        parts: [opening],
        fan: totalCurve(
          [
            [0, 100],
            [0.2, 0],
          ],
          'linear',
        ),
      },
    ];
    const quiet = solved({
      nodes: [
        { id: 'a', pressure: 0 },
        { id: 'b', pressure: 0 },
      ],
      edges,
      air,
    });
    const forced = solved({
      nodes: [
        { id: 'a', pressure: 0, inflow: 3 },
        { id: 'b', pressure: 0 },
      ],
      edges,
      air,
    });
    expect(forced.flows.get('run')).toBe(quiet.flows.get('run'));
  });

  it('that is not a number is refused', () => {
    const answer = solveNetwork({
      nodes: [
        { id: 'out', pressure: 0 },
        { id: 'room', inflow: Number.NaN },
      ],
      edges: [{ id: 'hole', from: 'room', to: 'out', parts: [opening] }],
      air,
    });
    expect(answer).toMatchObject({ converged: false, reason: expect.stringContaining('"room"') });
  });

  it('balances at every node of a thousand random networks with forced flows', () => {
    const random = seeded(57);
    let worst = 0;
    for (let i = 0; i < 1000; i++) {
      const network = ours(randomNetwork(random, random() < 0.5));
      const nodes = network.nodes.map((node) =>
        node.pressure === undefined && random() < 0.3
          ? { ...node, inflow: between(random, -0.1, 0.1) }
          : node,
      );
      const forced = { ...network, nodes };
      worst = Math.max(worst, imbalance(forced, solved(forced).flows));
    }
    expect(worst).toBeLessThan(1e-9);
  });
});

describe('a pressure given along an edge', () => {
  it('moves what the same pressure between its ends would move', () => {
    const through = (gain: number, pressure: number) =>
      solved({
        nodes: [{ id: 'a', pressure }, { id: 'mid' }, { id: 'b', pressure: 0 }],
        edges: [
          { id: 'one', from: 'mid', to: 'a', parts: [opening], ...(gain ? { gain: -gain } : {}) },
          { id: 'two', from: 'mid', to: 'b', parts: [opening] },
        ],
        air,
      }).flows.get('two') as number;
    expect(through(0, 20)).toBeGreaterThan(0);
    expect(through(15, 20)).toBeCloseTo(through(0, 35), 12);
  });
});
