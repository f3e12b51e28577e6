import { describe, expect, test } from 'vitest';
import { airOf } from '../../../src/hydraulics/air.ts';
import { partDrop } from '../../../src/hydraulics/element.ts';
import { fanTotalPressure } from '../../../src/hydraulics/fan.ts';
import { solveNetwork, solvePrepared } from '../../../src/hydraulics/network.ts';
import { prepareNetwork } from '../../../src/hydraulics/prepare.ts';
import type { FanCurve, Network, NetworkEdge, NetworkSolution } from '../../../src/hydraulics/types.ts';
import { imbalance, loss, roundDuct, totalCurve } from '../../support/networks.ts';
import { ours, randomNetwork } from '../../support/plain.ts';
import { seeded } from '../../support/random.ts';
import { off } from '../../support/reference.ts';

const air = airOf(1.2, 1.8e-5);
const fan = totalCurve(
  [
    [0, 260],
    [0.12, 200],
    [0.28, 0],
  ],
  'monotone-cubic',
  1.2,
);
const duct = (id: string, from: string, to: string, diameter = 0.15, length = 5): NetworkEdge => ({
  id,
  from,
  to,
  parts: [roundDuct(length, diameter), loss(1, diameter)],
});
const blown = (id: string, from: string, to: string, curve: FanCurve = fan): NetworkEdge => ({
  id,
  from,
  to,
  parts: [],
  fan: curve,
});
const open = (...ids: string[]) => ids.map((id) => ({ id, pressure: 0 }));
const free = (...ids: string[]) => ids.map((id) => ({ id }));

type Solved = Extract<NetworkSolution, { converged: true }>;
function solved(network: Network): Solved {
  const solution = solveNetwork(network);
  if (!solution.converged) throw new Error(solution.reason);
  return solution;
}
function reason(network: Network): string {
  const solution = solveNetwork(network);
  return solution.converged ? 'it converged' : solution.reason;
}
const flow = (solution: Solved, id: string): number => solution.flows.get(id) as number;

describe('a single run', () => {
  const run: Network = {
    air,
    nodes: [...open('room', 'out'), ...free('collar', 'middle')],
    edges: [blown('fan', 'room', 'collar'), duct('d1', 'collar', 'middle'), duct('d2', 'middle', 'out')],
  };

  test('works where the fan gives what the duct loses', () => {
    const solution = solved(run);
    const q = flow(solution, 'fan');
    const lost = run.edges
      .flatMap((edge) => edge.parts)
      .reduce((sum, part) => sum + partDrop(part, q, air), 0);
    expect(off(lost, fanTotalPressure(fan, q, air))).toBeLessThan(1e-12);
    expect(flow(solution, 'd1')).toBe(q);
    expect(flow(solution, 'd2')).toBe(q);
    expect(solution.residual).toBeLessThan(1e-9);
    expect(solution.stall).toEqual([]);
  });

  test('has in each node the pressure that is left there', () => {
    const solution = solved(run);
    const q = flow(solution, 'fan');
    expect(solution.pressures.get('collar')).toBeCloseTo(fanTotalPressure(fan, q, air), 9);
    expect(solution.pressures.get('middle')).toBeCloseTo(fanTotalPressure(fan, q, air) / 2, 9);
  });

  test('a duct drawn the other way round carries the same flow with the other sign', () => {
    const edges = [run.edges[0] as NetworkEdge, duct('d1', 'middle', 'collar'), run.edges[2] as NetworkEdge];
    expect(flow(solved({ ...run, edges }), 'd1')).toBeCloseTo(-flow(solved(run), 'd1'), 14);
  });

  test('a fan against the drawn direction of its edge blows from its from to its to', () => {
    const edges = [blown('fan', 'collar', 'room'), run.edges[1] as NetworkEdge, run.edges[2] as NetworkEdge];
    const solution = solved({ ...run, edges });
    expect(flow(solution, 'fan')).toBeCloseTo(flow(solved(run), 'fan'), 12);
    expect(flow(solution, 'd1')).toBeLessThan(0);
  });

  test('two fans in series share the loss', () => {
    const edges = [
      blown('f1', 'room', 'collar'),
      duct('d1', 'collar', 'middle'),
      blown('f2', 'middle', 'out'),
    ];
    const q = flow(solved({ ...run, edges }), 'd1');
    const lost = edges.flatMap((edge) => edge.parts).reduce((sum, part) => sum + partDrop(part, q, air), 0);
    expect(off(lost, 2 * fanTotalPressure(fan, q, air))).toBeLessThan(1e-11);
  });

  test('without a fan or a difference of pressure nothing moves, and no zero is negative', () => {
    const still: Network = {
      air,
      nodes: [...open('room', 'out'), ...free('middle')],
      edges: [duct('d1', 'middle', 'room'), duct('d2', 'middle', 'out')],
    };
    const solution = solved(still);
    for (const q of solution.flows.values()) expect(q).toBe(0);
    for (const p of solution.pressures.values()) expect(p).toBe(0);
  });

  test('is not changed by solving it, and solving it again gives the same numbers', () => {
    const before = structuredClone(run);
    const first = solved(run);
    expect(run).toEqual(before);
    expect(solved(run)).toEqual(first);
  });
});

describe('branches and loops', () => {
  const junction: Network = {
    air,
    nodes: [...open('room', 'out'), ...free('a', 'b', 'j')],
    edges: [
      blown('f1', 'room', 'a'),
      duct('d1', 'a', 'j'),
      blown(
        'f2',
        'room',
        'b',
        totalCurve(
          [
            [0, 180],
            [0.1, 120],
            [0.2, 0],
          ],
          'linear',
          1.2,
        ),
      ),
      duct('d2', 'b', 'j', 0.125),
      duct('d3', 'j', 'out', 0.2),
    ],
  };

  test('what flows into a junction flows out of it', () => {
    const solution = solved(junction);
    expect(off(flow(solution, 'd1') + flow(solution, 'd2'), flow(solution, 'd3'))).toBeLessThan(1e-12);
  });

  test('a symmetric bridge carries nothing across', () => {
    const bridge: Network = {
      air,
      nodes: [{ id: 'in', pressure: 100 }, ...open('out'), ...free('l', 'r')],
      edges: [
        duct('il', 'in', 'l'),
        duct('ir', 'in', 'r'),
        duct('lr', 'l', 'r'),
        duct('lo', 'l', 'out'),
        duct('ro', 'r', 'out'),
      ],
    };
    const solution = solved(bridge);
    expect(Math.abs(flow(solution, 'lr'))).toBeLessThan(1e-10 * flow(solution, 'il'));
    expect(off(flow(solution, 'il'), flow(solution, 'ro'))).toBeLessThan(1e-10);
  });

  test('two equal ducts side by side carry half each', () => {
    const twin: Network = {
      air,
      nodes: [...open('room', 'out'), ...free('a', 'b', 'c')],
      edges: [
        blown('fan', 'room', 'a'),
        duct('t', 'a', 'b'),
        duct('d1', 'b', 'c'),
        duct('d2', 'b', 'c'),
        duct('e', 'c', 'out'),
      ],
    };
    const solution = solved(twin);
    expect(off(flow(solution, 'd1'), flow(solution, 't') / 2)).toBeLessThan(1e-10);
  });

  test('an edge that leads nowhere carries exactly nothing, and holds the pressure of where it hangs', () => {
    const network: Network = {
      ...junction,
      nodes: [...junction.nodes, ...free('stub', 'end', 'blind')],
      edges: [
        ...junction.edges,
        duct('s1', 'j', 'stub'),
        duct('s2', 'stub', 'end'),
        blown('f3', 'stub', 'blind'),
      ],
    };
    const solution = solved(network);
    expect(flow(solution, 's1')).toBe(0);
    expect(flow(solution, 's2')).toBe(0);
    expect(flow(solution, 'f3')).toBe(0);
    expect(solution.pressures.get('end')).toBe(solution.pressures.get('j'));
    const gain = (solution.pressures.get('blind') as number) - (solution.pressures.get('stub') as number);
    expect(gain).toBeCloseTo(260, 9);
    expect(solution.flows.get('d3')).toBe(solved(junction).flows.get('d3'));
  });

  test('a ring that hangs on one node turns under its own fan, by itself', () => {
    const network: Network = {
      ...junction,
      nodes: [...junction.nodes, ...free('stem', 'r1', 'r2')],
      edges: [
        ...junction.edges,
        duct('s', 'j', 'stem'),
        duct('c1', 'stem', 'r1'),
        blown('cf', 'r1', 'r2'),
        duct('c2', 'r2', 'stem'),
      ],
    };
    const solution = solved(network);
    expect(flow(solution, 's')).toBe(0);
    expect(flow(solution, 'c1')).toBeGreaterThan(0.05);
    expect(flow(solution, 'c1')).toBe(flow(solution, 'c2'));
  });

  test('an edge that loses nothing joins its nodes at one pressure', () => {
    const network: Network = {
      ...junction,
      nodes: [...junction.nodes, ...free('k')],
      edges: [
        ...junction.edges.map((edge) => (edge.id === 'd3' ? { ...edge, from: 'k' } : edge)),
        { id: 'joint', from: 'j', to: 'k', parts: [] },
        duct('leak', 'k', 'room', 0.1),
      ],
    };
    const solution = solved(network);
    expect(imbalance(network, solution.flows)).toBeLessThan(1e-9);
    expect(solution.pressures.get('j')).toBeCloseTo(solution.pressures.get('k') as number, 6);
  });

  test('a duct that loses nothing takes the air from the one beside it, in a tight house blown full too', () => {
    const lossless = (id: string): NetworkEdge => ({ id, from: 'a', to: 'b', parts: [] });
    const network: Network = {
      air,
      nodes: [{ id: 'room', inflow: 0.1 }, ...open('sky', 'out'), ...free('a', 'b')],
      edges: [
        {
          id: 'leak',
          from: 'sky',
          to: 'room',
          parts: [{ kind: 'power', coefficient: 1.7e-4, exponent: 1 }],
        },
        blown('fan', 'room', 'a'),
        { id: 'dear', from: 'a', to: 'b', parts: [loss(0.2, 0.2)] },
        lossless('free'),
        duct('d', 'b', 'out'),
      ],
    };
    const solution = solved(network);
    expect(flow(solution, 'free')).toBeGreaterThan(0.999 * flow(solution, 'd'));
    expect(off(flow(solution, 'd'), 0.1 + flow(solution, 'leak'))).toBeLessThan(1e-9);
  });

  test('house leakage takes in what the hood throws out', () => {
    const network: Network = {
      air,
      nodes: [...open('outdoors'), ...free('room', 'collar')],
      edges: [
        {
          id: 'leak',
          from: 'outdoors',
          to: 'room',
          parts: [{ kind: 'power', coefficient: 0.02, exponent: 0.65 }],
        },
        blown('fan', 'room', 'collar'),
        duct('d', 'collar', 'outdoors'),
      ],
    };
    const solution = solved(network);
    const room = solution.pressures.get('room') as number;
    expect(room).toBeLessThan(0);
    expect(off(0.02 * (-room) ** 0.65, flow(solution, 'leak'))).toBeLessThan(1e-9);
  });
});

describe('a prepared network', () => {
  test('gives the same flows however often it is solved, and those of a fresh solve', () => {
    const network = ours(randomNetwork(seeded(11), true));
    const prepared = prepareNetwork(network);
    if ('reason' in prepared) throw new Error(prepared.reason);
    const first = solvePrepared(prepared);
    expect(first.converged).toBe(true);
    const fresh = [...solved(network).flows.values()];
    for (let i = 0; i < 3; i++) {
      const again = solvePrepared(prepared).flows;
      for (const [e, q] of first.flows.entries()) {
        expect(again[e]).toBeCloseTo(q, 13);
        expect(fresh[e]).toBeCloseTo(q, 13);
      }
    }
  });
});

describe('a stalling fan', () => {
  /** Rises from 150 Pa at rest to a crest of 240 Pa. */
  const stalling: FanCurve = totalCurve(
    [
      [0, 150],
      [0.05, 170],
      [0.1, 240],
      [0.2, 150],
      [0.26, 0],
    ],
    'monotone-cubic',
    1.2,
  );
  /** A part that holds back a steady pressure, so that the curve is met three times. */
  const held: NetworkEdge = {
    id: 'd',
    from: 'collar',
    to: 'out',
    parts: [{ kind: 'flap', openingPressure: 178, c: 0.8, area: 0.0177 }],
  };
  const run: Network = {
    air,
    nodes: [...open('room', 'out'), ...free('collar')],
    edges: [blown('fan', 'room', 'collar', stalling), held],
  };

  test('works at the highest flow that is stable, with the others flagged', () => {
    const solution = solved(run);
    const q = flow(solution, 'fan');
    expect(q).toBeGreaterThan(0.1);
    const note = solution.stall[0];
    expect(note?.edge).toBe('fan');
    expect(note?.otherFlows).toHaveLength(2);
    for (const other of note?.otherFlows ?? []) {
      expect(other).toBeLessThan(q);
      const lost = held.parts.reduce((sum, part) => sum + partDrop(part, other, air), 0);
      expect(off(lost, fanTotalPressure(stalling, other, air))).toBeLessThan(1e-9);
    }
  });

  test('whose curve the system meets only once has nothing to flag', () => {
    const solution = solved({ ...run, edges: [run.edges[0] as NetworkEdge, duct('d', 'collar', 'out')] });
    expect(solution.stall).toEqual([]);
  });

  test('in a branch is settled with the rest, and flagged there', () => {
    const network: Network = {
      air,
      nodes: [...open('room', 'out'), ...free('c1', 'c2', 'j1', 'j')],
      edges: [
        blown('f1', 'room', 'c1', stalling),
        { ...held, from: 'c1', to: 'j' },
        blown('f2', 'room', 'c2'),
        duct('d2', 'c2', 'j', 0.1),
        duct('d3', 'j', 'j1', 0.25),
        duct('d4', 'j1', 'out', 0.25),
      ],
    };
    const solution = solved(network);
    expect(imbalance(network, solution.flows)).toBeLessThan(1e-9);
    expect(flow(solution, 'f1')).toBeGreaterThan(0.1);
    expect(solution.stall.map((note) => note.edge)).toEqual(['f1']);
  });
});

describe('a network that cannot be solved says why', () => {
  const edges = [duct('d', 'a', 'b')];
  test('a piece without a given pressure', () => {
    const network = { air, nodes: [...open('out'), ...free('a', 'b')], edges };
    expect(reason(network)).toContain('open nowhere');
  });
  test('an edge to a node that is not there', () => {
    expect(reason({ air, nodes: open('a'), edges })).toContain('not there: "b"');
  });
  test('the same id twice', () => {
    expect(reason({ air, nodes: open('a', 'a'), edges: [] })).toContain('twice');
    expect(reason({ air, nodes: open('a', 'b'), edges: [...edges, ...edges] })).toContain('twice');
  });
  test('numbers that are none', () => {
    const nan = { id: 'd', from: 'a', to: 'b', parts: [loss(Number.NaN, 0.2)] };
    expect(reason({ air, nodes: open('a', 'b'), edges: [nan] })).toContain('Edge "d"');
    expect(reason({ air, nodes: [{ id: 'a', pressure: Number.NaN }], edges: [] })).toContain('not a number');
    expect(reason({ air: airOf(Number.NaN, 1), nodes: open('a', 'b'), edges })).toContain('air');
    const flat = { ...fan, points: [[0, 10]] as const };
    expect(reason({ air, nodes: open('a', 'b'), edges: [blown('f', 'a', 'b', flat)] })).toContain(
      'fan of edge "f"',
    );
  });
  test('nothing at all is solved by nothing', () => {
    expect(solved({ air, nodes: [], edges: [] }).flows.size).toBe(0);
  });
});
