import { partDrop, partProblem } from './element.ts';
import { fanProblem, fanTable } from './fan.ts';
import type { Network } from './types.ts';

/** A network's nodes and edges by number. */
export interface Indexed {
  /** 1 where the node's pressure is given. */
  readonly fixed: Uint8Array;
  /** The given pressure, Pa; NaN elsewhere. */
  readonly pressure: Float64Array;
  /** Flow forced into the node, m3/s. */
  readonly inflow: Float64Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Size of what drives the network, Pa: the strongest fan, the spread of given pressures, forced flows. */
  readonly pressureScale: number;
}

/** Numbers a network's nodes and edges, or says in a sentence why it cannot be solved. */
export function indexNetwork(network: Network): Indexed | { readonly reason: string } {
  const { nodes, edges, air } = network;
  if (!(air.density > 0) || !(air.viscosity > 0) || !Number.isFinite(air.density + air.viscosity)) {
    return { reason: 'The air has no density or viscosity.' };
  }
  const numberOf = new Map<string, number>();
  const fixed = new Uint8Array(nodes.length);
  const pressure = new Float64Array(nodes.length).fill(Number.NaN);
  const inflow = new Float64Array(nodes.length);
  let lowest = Number.POSITIVE_INFINITY;
  let highest = Number.NEGATIVE_INFINITY;
  for (let v = 0; v < nodes.length; v++) {
    const node = nodes[v] as Network['nodes'][number];
    if (numberOf.has(node.id)) return { reason: `Node "${node.id}" is there twice.` };
    numberOf.set(node.id, v);
    if (node.inflow !== undefined && !Number.isFinite(node.inflow))
      return { reason: `Node "${node.id}" has an inflow that is not a number.` };
    if (node.pressure === undefined) {
      inflow[v] = node.inflow ?? 0;
      continue;
    }
    if (!Number.isFinite(node.pressure))
      return { reason: `Node "${node.id}" has a pressure that is not a number.` };
    fixed[v] = 1;
    pressure[v] = node.pressure;
    lowest = Math.min(lowest, node.pressure);
    highest = Math.max(highest, node.pressure);
  }

  const from = new Int32Array(edges.length);
  const to = new Int32Array(edges.length);
  let strongest = 0;
  for (let e = 0; e < edges.length; e++) {
    const edge = edges[e] as Network['edges'][number];
    const a = numberOf.get(edge.from);
    const b = numberOf.get(edge.to);
    if (a === undefined)
      return { reason: `Edge "${edge.id}" starts at a node that is not there: "${edge.from}".` };
    if (b === undefined)
      return { reason: `Edge "${edge.id}" ends at a node that is not there: "${edge.to}".` };
    from[e] = a;
    to[e] = b;
    for (const part of edge.parts) {
      const problem = partProblem(part);
      if (problem) return { reason: `Edge "${edge.id}" has ${problem}.` };
    }
    if (edge.gain !== undefined && !Number.isFinite(edge.gain))
      return { reason: `Edge "${edge.id}" has a gain that is not a number.` };
    strongest = Math.max(strongest, Math.abs(edge.gain ?? 0));
    if (edge.fan) {
      const problem = fanProblem(edge.fan);
      if (problem) return { reason: `The fan of edge "${edge.id}" has ${problem}.` };
      strongest = Math.max(strongest, (fanTable(edge.fan).peak * air.density) / edge.fan.density);
    }
  }

  const spread = highest > lowest ? highest - lowest : 0;
  const forced = inflow.some((q) => q !== 0) ? forcedPressure(network, inflow, from, to) : 0;
  return { fixed, pressure, inflow, from, to, pressureScale: strongest + spread + forced };
}

/** What forced flows cost, Pa: at each node the easiest of its edges at that flow, the largest of all nodes. */
function forcedPressure(
  { edges, air }: Network,
  inflow: Float64Array,
  from: Int32Array,
  to: Int32Array,
): number {
  const easiest = new Float64Array(inflow.length).fill(Number.POSITIVE_INFINITY);
  edges.forEach((edge, e) => {
    for (const v of [from[e] as number, to[e] as number]) {
      const q = Math.abs(inflow[v] as number);
      if (q === 0) continue;
      const drop = edge.parts.reduce((sum, part) => sum + partDrop(part, q, air), 0);
      if (drop > 0) easiest[v] = Math.min(easiest[v] as number, drop);
    }
  });
  return easiest.reduce((most, drop) => (Number.isFinite(drop) ? Math.max(most, drop) : most), 0);
}
