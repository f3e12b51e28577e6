import { beforeAll, describe, expect, test } from 'vitest';
import { solveNetwork } from '../../src/hydraulics/network.ts';
import type { LossPart, Network, NetworkEdge } from '../../src/hydraulics/types.ts';
import { imbalance } from '../support/networks.ts';
import { ours, randomNetwork } from '../support/plain.ts';
import { between, pick, type Random, seeded } from '../support/random.ts';

/** 3,000 in every test run, 100,000 with `npm run soak`. */
const COUNT = import.meta.env.MODE === 'soak' ? 100_000 : 3_000;

/** One more part of any kind, so that the networks hold more than duct and coefficients. */
function anyPart(random: Random): LossPart {
  const area = between(random, 0.005, 0.05);
  return pick<() => LossPart>(random, [
    () => ({ kind: 'flap', openingPressure: between(random, 0, 25), c: between(random, 0.1, 2), area }),
    () => ({ kind: 'power', coefficient: between(random, 0.005, 0.1), exponent: between(random, 0.5, 1) }),
    () => ({
      kind: 'measured',
      loss: between(random, 5, 80),
      atFlow: between(random, 0.05, 0.3),
      density: 1.2,
    }),
    () => ({
      kind: 'reynolds-local',
      c: between(random, 0.1, 1),
      area,
      hydraulicDiameter: between(random, 0.1, 0.25),
      reynolds: [1e4, 3e4, 1e5, 2e5],
      factor: [1.4, 1.19, 1.04, 1],
    }),
  ])();
}

/** A random network of ours: any parts, static-basis fans, dead ends, pressures beyond zero, houses. */
function anyNetwork(random: Random): Network {
  const network = ours(randomNetwork(random, random() < 0.5));
  const edges = network.edges.map((edge): NetworkEdge => {
    if (edge.fan) {
      const isStatic = random() < 0.5;
      return { ...edge, fan: { ...edge.fan, basis: isStatic ? 'static' : 'total', collarArea: 0.04 } };
    }
    return random() < 0.3 ? { ...edge, parts: [...edge.parts, anyPart(random)] } : edge;
  });
  const blind = random() < 0.2 ? [{ id: 'blind' }] : [];
  const stub = blind.map(({ id }): NetworkEdge => {
    const hang = pick(random, network.edges);
    return { id: 'stub', from: hang.to, to: id, parts: hang.parts };
  });
  const wind = random() < 0.3 ? between(random, -30, 30) : 0;
  const windy = {
    ...network,
    nodes: [...network.nodes.map((n) => (n.id === 'out' ? { ...n, pressure: wind } : n)), ...blind],
    edges: [...edges, ...stub],
  };
  return random() < 0.3 ? inHouse(windy, random) : windy;
}

/** The same with its room in a house that leaks, tight or not, and that other fans draw from or blow into. */
function inHouse(network: Network, random: Random): Network {
  const leakage: LossPart = {
    kind: 'power',
    coefficient: 10 ** between(random, -4, -1),
    exponent: between(random, 0.5, 1),
  };
  return {
    ...network,
    nodes: [
      ...network.nodes.map((n) => (n.id === 'room' ? { id: 'room', inflow: between(random, -0.1, 0.1) } : n)),
      { id: 'sky', pressure: 0 },
    ],
    edges: [...network.edges, { id: 'leakage', from: 'sky', to: 'room', parts: [leakage] }],
  };
}

interface Tried {
  readonly unsolved: number;
  readonly imbalance: number;
  readonly moved: number;
  readonly iterations: number;
}

/** Solves `COUNT` networks from the usual start and from a wild one, and keeps the worst of each figure. */
function tryAll(seed: number): Tried {
  const random = seeded(seed);
  let unsolved = 0;
  let unbalanced = 0;
  let moved = 0;
  let iterations = 0;
  for (let i = 0; i < COUNT; i++) {
    const network = anyNetwork(random);
    const start = new Map(network.edges.map((edge) => [edge.id, between(random, -1, 1) ** 3]));
    const one = solveNetwork(network);
    const other = solveNetwork(network, { start });
    if (!one.converged || !other.converged) {
      unsolved++;
      continue;
    }
    iterations = Math.max(iterations, one.iterations, other.iterations);
    unbalanced = Math.max(unbalanced, imbalance(network, one.flows), imbalance(network, other.flows));
    const largest = Math.max(...[...one.flows.values()].map(Math.abs));
    for (const [id, q] of one.flows) {
      const again = other.flows.get(id) as number;
      if (largest > 0) moved = Math.max(moved, Math.abs(q - again) / largest);
    }
  }
  return { unsolved, imbalance: unbalanced, moved, iterations };
}

describe(`${COUNT} random networks, trees and loops, with parts of every kind`, () => {
  let tried: Tried;
  beforeAll(() => {
    tried = tryAll(31);
  }, 3_600_000);

  test('all converge, from the usual start and from a wild one', () => {
    expect(tried.unsolved).toBe(0);
  });
  test('mass balance closes to 1e-9 of the largest flow', () => {
    expect(tried.imbalance).toBeLessThan(1e-9);
  });
  test('no start gives another answer, to 1e-9 of the largest flow', () => {
    expect(tried.moved).toBeLessThan(1e-9);
  });
  test('none takes more than a hundred steps', () => {
    expect(tried.iterations).toBeLessThan(100);
  });
});
