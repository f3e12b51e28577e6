import type { PlainEdge, PlainNetwork } from './epanet.ts';
import { randomFan } from './plain.ts';
import { between, pick, seeded, whole } from './random.ts';

const AIR = { density: 1.2041, viscosity: 1.813e-5 };
const HOOD: NonNullable<PlainEdge['fan']> = {
  kind: 'power',
  points: [
    [0, 320],
    [0.1, 255],
    [0.18, 120],
  ],
};

/** One run of a hood, `count` lengths of duct with a fitting each, and an open end; the fan at a speed ratio. */
export function seriesRun(
  count: number,
  speed = 1,
  diameters: readonly number[] = [0.1524, 0.2032],
): PlainNetwork {
  const points = HOOD.points.map(([q, p]) => [q * speed, p * speed * speed] as const);
  const edges: PlainEdge[] = [{ id: 'fan', from: 'room', to: 'n0', fan: { kind: 'power', points } }];
  const nodes: { id: string; pressure?: number }[] = [{ id: 'room', pressure: 0 }, { id: 'n0' }];
  for (let i = 0; i < count; i++) {
    const isLast = i === count - 1;
    const diameter = diameters[i < count / 2 ? 0 : 1] as number;
    nodes.push(isLast ? { id: 'out', pressure: 0 } : { id: `n${i + 1}` });
    const duct = { length: 15 / count, diameter, roughness: 9e-5, k: isLast ? 1 : 2 / count };
    edges.push({ id: `d${i}`, from: `n${i}`, to: isLast ? 'out' : `n${i + 1}`, duct });
  }
  return { ...AIR, nodes, edges };
}

/** A tree of `count` nodes that gathers `fans` hoods and open ends into one exit. */
export function gatheringTree(count: number, fans: number, seed: number): PlainNetwork {
  const random = seeded(seed);
  const nodes: { id: string; pressure?: number }[] = [
    { id: 'room', pressure: 0 },
    { id: 'out', pressure: 0 },
  ];
  const edges: PlainEdge[] = [];
  const parents: number[] = [];
  const children = new Int32Array(count);
  for (let v = 0; v < count; v++) {
    const parent = v === 0 ? -1 : whole(random, Math.max(0, v - 12), v - 1);
    parents.push(parent);
    nodes.push({ id: `n${v}` });
    if (parent >= 0) (children[parent] as number) += 1;
    const large = v < count / 8;
    const diameter = large ? 0.3 : pick(random, [0.15, 0.2, 0.25]);
    const duct = {
      length: between(random, 0.5, 3),
      diameter,
      roughness: 9e-5,
      k: v === 0 ? 1 : between(random, 0.1, 0.6),
    };
    edges.push({ id: `d${v}`, from: `n${v}`, to: v === 0 ? 'out' : `n${parent}`, duct });
  }
  const leaves = [...children.keys()].filter((v) => children[v] === 0);
  leaves.forEach((v, i) => {
    if (i < fans) edges.push({ id: `f${v}`, from: 'room', to: `n${v}`, fan: randomFan(random) });
    else
      edges.push({
        id: `o${v}`,
        from: 'room',
        to: `n${v}`,
        duct: { length: 1, diameter: 0.1, roughness: 9e-5, k: 1.5 },
      });
  });
  return { ...AIR, nodes, edges };
}
