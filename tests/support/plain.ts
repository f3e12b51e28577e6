import { airOf } from '../../src/hydraulics/air.ts';
import type { Network } from '../../src/hydraulics/types.ts';
import type { PlainEdge, PlainNetwork } from './epanet.ts';
import { loss, roundDuct, totalCurve } from './networks.ts';
import { between, pick, type Random, whole } from './random.ts';

const SIZES = [0.1, 0.125, 0.15, 0.2, 0.25];

/** The same network for our solver, with the friction of each duct multiplied as asked. */
export function ours(plain: PlainNetwork, multiplier: (edge: PlainEdge) => number = () => 1): Network {
  return {
    air: airOf(plain.density, plain.viscosity),
    nodes: plain.nodes,
    edges: plain.edges.map((edge) => {
      const { id, from, to, duct, fan } = edge;
      if (fan) return { id, from, to, parts: [], fan: totalCurve(fan.points, fan.kind, plain.density) };
      if (!duct) return { id, from, to, parts: [] };
      const straight = roundDuct(duct.length, duct.diameter, duct.roughness, multiplier(edge));
      return { id, from, to, parts: [straight, loss(duct.k, duct.diameter)] };
    }),
  };
}

type Fan = NonNullable<PlainEdge['fan']>;

/** A falling fan curve: a power law through three points, or five points joined by straight lines. */
export function randomFan(random: Random): Fan {
  const flow = between(random, 0.1, 0.4);
  const pressure = between(random, 200, 500);
  if (random() < 0.5) {
    const middle = pressure * between(random, 0.6, 0.9);
    const last = middle * between(random, 0.2, 0.6);
    return {
      kind: 'power',
      points: [
        [0, pressure],
        [flow * 0.5, middle],
        [flow * 0.85, last],
      ],
    };
  }
  const points: [number, number][] = [];
  for (let i = 0; i < 5; i++)
    points.push([(flow * i) / 4, pressure * (1 - (i / 4) ** between(random, 1.5, 2))]);
  return { kind: 'linear', points };
}

/**
 * A random network of 1 to 5 fans: a tree of ducts that gathers hoods and leaks and ends in one or
 * two exits, with up to four more ducts across it where `loops` is asked for, and now and then a
 * booster fan in a trunk. `longest` is the longest duct, m.
 */
export function randomNetwork(random: Random, loops: boolean, longest = 12): PlainNetwork {
  const nodes: { id: string; pressure?: number }[] = [
    { id: 'room', pressure: 0 },
    { id: 'out', pressure: 0 },
  ];
  const edges: PlainEdge[] = [];
  const duct = (from: string, to: string, exit = false): void => {
    const diameter = pick(random, SIZES);
    const k = exit ? between(random, 1, 3) : between(random, 0.2, 2);
    const roughness = pick(random, [4.5e-5, 9e-5, 1.5e-4, 3e-4]);
    edges.push({
      id: `d${edges.length}`,
      from,
      to,
      duct: { length: between(random, 0.5, longest), diameter, roughness, k },
    });
  };
  const junction = (): string => {
    const id = `j${nodes.length}`;
    nodes.push({ id });
    return id;
  };
  const trunk = [junction()];
  duct(trunk[0] as string, 'out', true);
  for (let i = whole(random, 1, 12); i > 0; i--) {
    const parent = pick(random, trunk);
    const child = junction();
    duct(child, parent);
    trunk.push(child);
  }
  if (random() < 0.3) duct(pick(random, trunk), 'out', true);
  const fans = whole(random, 1, 5);
  for (let i = 0; i < fans; i++) {
    const collar = junction();
    const booster = i > 0 && random() < 0.2;
    const from = booster ? junction() : 'room';
    if (booster) duct('room', from);
    edges.push({ id: `f${edges.length}`, from, to: collar, fan: randomFan(random) });
    duct(collar, pick(random, trunk));
  }
  if (random() < 0.3) duct('room', pick(random, trunk));
  if (loops) {
    for (let i = whole(random, 1, 4); i > 0; i--) {
      const [a, b] = [pick(random, trunk), pick(random, trunk)];
      duct(a, a === b ? 'out' : b, a === b);
    }
  }
  return { density: 1.2041, viscosity: 1.813e-5, nodes, edges };
}
