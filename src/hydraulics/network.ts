import { chainFlow } from './chain-root.ts';
import { buildChains, type Chains, edgeDrop, evaluateChain } from './chains.ts';
import { solveCore } from './core.ts';
import { fanTotalPressure } from './fan.ts';
import { incidence, type Layout, layOut } from './layout.ts';
import { type Indexed, indexNetwork } from './network-index.ts';
import type { Network, NetworkEdge, NetworkSolution, StallNote } from './types.ts';

/** Where a solve starts from. */
export interface SolveOptions {
  /** Flow by edge id, m3/s; need not balance. The answer does not depend on it, the time may. */
  readonly start?: ReadonlyMap<string, number>;
}

/** A solved network may be out of balance by this share of what drives it. */
const RESIDUAL_TOLERANCE = 1e-8;

/**
 * Flows and total pressures of a network of ducts, fittings, leaks and fans.
 *
 * Edges that lead nowhere carry exactly 0; edges in series become one chain; a chain between two
 * given pressures is one equation; what remains, trees or loops, is solved at once by
 * {@link solveCore}, in linear time for a tree. A fan whose curve has a rising part can meet the
 * system at several flows: on such a chain the highest stable one is taken and the others are in
 * `stall`.
 *
 * Refuses, with a reason and never a number: a piece of the network without a given pressure, an
 * edge between unknown nodes, a repeated id, a part or curve that is not a usable set of numbers,
 * and a solve that does not settle. The input is not changed.
 */
export function solveNetwork(network: Network, options: SolveOptions = {}): NetworkSolution {
  const indexed = indexNetwork(network);
  if ('reason' in indexed) return failure(indexed.reason, 0, 0);

  const around = incidence(indexed.fixed.length, indexed.from, indexed.to);
  const layout = layOut(indexed.fixed, indexed.from, indexed.to, around);
  const chains = buildChains(network.edges, layout, network.air, indexed.pressureScale);
  const chainFlows = new Float64Array(chains.count);
  const stall: StallNote[] = [];
  const solved = solveChains(network, indexed, layout, chains, chainFlows, stall, options.start);
  if (!solved.converged) {
    return failure('The flows did not settle to a balance.', solved.iterations, solved.residual);
  }

  const flow = new Float64Array(network.edges.length);
  const drop = new Float64Array(network.edges.length);
  for (let c = 0; c < chains.count; c++) {
    for (let at = layout.start[c] as number; at < (layout.start[c + 1] as number); at++) {
      const code = layout.edges[at] as number;
      const sign = code & 1 ? -1 : 1;
      flow[code >> 1] = sign * (chainFlows[c] as number);
      drop[code >> 1] = sign * edgeDrop(chains, at);
    }
  }
  for (let e = 0; e < network.edges.length; e++) {
    const fan = network.edges[e]?.fan;
    if (layout.carried[e] === 0 && fan) drop[e] = -fanTotalPressure(fan, 0, network.air);
  }
  const pressure = spreadPressures(indexed, around, drop, solved.pressure);

  let residual = 0;
  for (let e = 0; e < drop.length; e++) {
    const across =
      (pressure[indexed.from[e] as number] as number) - (pressure[indexed.to[e] as number] as number);
    residual = Math.max(residual, Math.abs(across - (drop[e] as number)));
  }
  if (!(residual <= RESIDUAL_TOLERANCE * indexed.pressureScale)) {
    return failure('The pressures do not balance the flows.', solved.iterations, residual);
  }
  const flows = new Map<string, number>();
  for (const [e, edge] of network.edges.entries()) flows.set(edge.id, (flow[e] as number) + 0);
  const pressures = new Map<string, number>();
  for (const [v, node] of network.nodes.entries()) pressures.set(node.id, (pressure[v] as number) + 0);
  return { converged: true, flows, pressures, iterations: solved.iterations, residual, stall };
}

function failure(reason: string, iterations: number, residual: number): NetworkSolution {
  return { converged: false, reason, iterations, residual };
}

interface Solved {
  readonly converged: boolean;
  readonly iterations: number;
  readonly residual: number;
  /** Total pressure by node where it is given or was solved for; NaN elsewhere. */
  readonly pressure: Float64Array;
}

/** Fills the flow of every chain: alone where both its ends are given, jointly where they are not. */
function solveChains(
  network: Network,
  indexed: Indexed,
  layout: Layout,
  chains: Chains,
  flows: Float64Array,
  stall: StallNote[],
  start: ReadonlyMap<string, number> | undefined,
): Solved {
  const { fixed, pressureScale } = indexed;
  const pressure = indexed.pressure.slice();
  const startOf = (c: number): number | undefined => {
    const code = layout.edges[layout.start[c] as number] as number;
    const wish = start?.get((network.edges[code >> 1] as NetworkEdge).id);
    return wish === undefined || !Number.isFinite(wish) ? undefined : code & 1 ? -wish : wish;
  };
  const out = new Float64Array(2);
  let iterations = 0;
  const joint: number[] = [];
  const unknownOf = new Int32Array(fixed.length).fill(-1);
  const unknownNodes: number[] = [];
  const unknownAt = (v: number): number => {
    if (fixed[v] === 1) return -1;
    if (unknownOf[v] === -1) {
      unknownOf[v] = unknownNodes.length;
      unknownNodes.push(v);
    }
    return unknownOf[v] as number;
  };

  for (let c = 0; c < chains.count && pressureScale > 0; c++) {
    const a = layout.from[c] as number;
    const b = layout.to[c] as number;
    if (a !== b && (fixed[a] === 0 || fixed[b] === 0)) {
      joint.push(c);
      continue;
    }
    const difference = a === b ? 0 : (pressure[a] as number) - (pressure[b] as number);
    const size = startOf(c) || (chains.guess[c] as number);
    const found = chainFlow(chains, c, difference, Number.isFinite(size) ? size : 1);
    flows[c] = found.flow;
    iterations = Math.max(iterations, found.iterations);
    noteStall(network, layout, c, found.others, stall);
  }

  let residual = 0;
  let converged = true;
  if (joint.length > 0) {
    const members = Int32Array.from(joint);
    const from = members.map((c) => unknownAt(layout.from[c] as number));
    const to = members.map((c) => unknownAt(layout.to[c] as number));
    const given = (v: number): number => (fixed[v] === 1 ? (pressure[v] as number) : 0);
    const answer = solveCore({
      chains,
      members,
      from,
      to,
      fromPressure: Float64Array.from(members, (c) => given(layout.from[c] as number)),
      toPressure: Float64Array.from(members, (c) => given(layout.to[c] as number)),
      unknowns: unknownNodes.length,
      pressureScale,
      start: start ? Float64Array.from(members, (c) => startOf(c) ?? (chains.guess[c] as number)) : null,
    });
    iterations += answer.iterations;
    residual = answer.residual;
    converged = answer.converged;
    unknownNodes.forEach((v, u) => {
      pressure[v] = answer.pressures[u] as number;
    });
    members.forEach((c, m) => {
      flows[c] = answer.flows[m] as number;
      if (!converged || chains.rises[c] === 1) return;
      const across =
        (pressure[layout.from[c] as number] as number) - (pressure[layout.to[c] as number] as number);
      const found = chainFlow(chains, c, across, flows[c] as number);
      evaluateChain(chains, c, flows[c] as number, out);
      const others = [found.flow, ...found.others].filter(
        (q) => Math.abs(q - (flows[c] as number)) > 1e-6 * Math.abs(flows[c] as number),
      );
      noteStall(network, layout, c, others, stall);
    });
  }
  return { converged, iterations, residual, pressure };
}

/** Says on the chain's first fan that it also meets the system at other flows. */
function noteStall(
  network: Network,
  layout: Layout,
  c: number,
  others: readonly number[],
  stall: StallNote[],
): void {
  if (others.length === 0) return;
  for (let at = layout.start[c] as number; at < (layout.start[c + 1] as number); at++) {
    const code = layout.edges[at] as number;
    const edge = network.edges[code >> 1] as NetworkEdge;
    if (!edge.fan) continue;
    const sign = code & 1 ? -1 : 1;
    stall.push({
      edge: edge.id,
      otherFlows: others.map((q) => sign * q).sort((p, q) => p - q),
      message:
        'The fan has a curve with a rising part and can settle at more than one flow here; the stable one at the highest flow is given.',
    });
    return;
  }
}

/** Carries pressures from where they are known along the edges' drops to every node. */
function spreadPressures(
  indexed: Indexed,
  around: ReturnType<typeof incidence>,
  drop: Float64Array,
  known: Float64Array,
): Float64Array {
  const pressure = known;
  const queue: number[] = [];
  for (let v = 0; v < pressure.length; v++) if (!Number.isNaN(pressure[v])) queue.push(v);
  for (let i = 0; i < queue.length; i++) {
    const v = queue[i] as number;
    for (let k = around.start[v] as number; k < (around.start[v + 1] as number); k++) {
      const e = around.edges[k] as number;
      const along = indexed.from[e] === v;
      const w = (along ? indexed.to[e] : indexed.from[e]) as number;
      if (!Number.isNaN(pressure[w])) continue;
      pressure[w] = (pressure[v] as number) + (along ? -(drop[e] as number) : (drop[e] as number));
      queue.push(w);
    }
  }
  return pressure;
}
