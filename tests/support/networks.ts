import type { FanCurve, LossPart, Network } from '../../src/hydraulics/types.ts';

/** Straight round duct as a loss part. */
export function roundDuct(length: number, diameter: number, roughness = 9e-5, multiplier = 1): LossPart {
  const area = (Math.PI / 4) * diameter * diameter;
  return { kind: 'duct', length, hydraulicDiameter: diameter, area, roughness, multiplier };
}

/** A loss coefficient on the section of a round duct. */
export function loss(c: number, diameter: number): LossPart {
  return { kind: 'local', c, area: (Math.PI / 4) * diameter * diameter };
}

/** A total-pressure curve. */
export function totalCurve(
  points: FanCurve['points'],
  interpolation: 'monotone-cubic' | 'linear' | 'power',
  density = 1.2041,
): FanCurve {
  return { points, basis: 'total', collarArea: 0.03, density, interpolation };
}

/** Largest flow that any free node fails to pass on, over the largest flow of the network. */
export function imbalance(network: Network, flows: ReadonlyMap<string, number>): number {
  const net = new Map(network.nodes.map((node) => [node.id, node.inflow ?? 0]));
  let largest = 0;
  for (const edge of network.edges) {
    const q = flows.get(edge.id) as number;
    largest = Math.max(largest, Math.abs(q));
    net.set(edge.from, (net.get(edge.from) as number) - q);
    net.set(edge.to, (net.get(edge.to) as number) + q);
  }
  let worst = 0;
  for (const node of network.nodes)
    if (node.pressure === undefined) worst = Math.max(worst, Math.abs(net.get(node.id) as number));
  return largest === 0 ? worst : worst / largest;
}
