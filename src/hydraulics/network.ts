import { words } from '../words/index.ts';
import { chainFlow } from './chain-root.ts';
import { edgeDrop, evaluateChain } from './chains.ts';
import { solveCore } from './core.ts';
import { fanTotalPressure } from './fan.ts';
import type { Layout } from './layout.ts';
import type { Indexed } from './network-index.ts';
import { type Prepared, prepareNetwork } from './prepare.ts';
import type { Network, NetworkEdge, NetworkSolution, StallNote } from './types.ts';

const says = words.losses.network;

/** Where a solve starts from. */
export interface SolveOptions {
  /** Flow by edge id, m3/s; need not balance. The answer does not depend on it, the time may. */
  readonly start?: ReadonlyMap<string, number>;
}

/** A solved network may be out of balance by this share of what drives it. */
const RESIDUAL_TOLERANCE = 1e-8;

/** A solved network by number: edges and nodes in the order that the network lists them. */
export interface Balance {
  readonly converged: boolean;
  readonly flows: Float64Array;
  readonly pressures: Float64Array;
  readonly iterations: number;
  readonly residual: number;
  readonly stall: readonly StallNote[];
}

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
  const prepared = prepareNetwork(network);
  if ('reason' in prepared) return { converged: false, reason: prepared.reason, iterations: 0, residual: 0 };
  const { converged, iterations, residual, stall, ...balance } = solvePrepared(prepared, options);
  if (!converged) {
    return { converged, reason: says.unsettled, iterations, residual };
  }
  const flows = new Map<string, number>();
  let e = 0;
  for (const edge of network.edges) flows.set(edge.id, balance.flows[e++] as number);
  if (flows.size < network.edges.length) {
    return {
      converged: false,
      reason: `Edge "${repeated(network.edges)}" is there twice.`,
      iterations,
      residual,
    };
  }
  const pressures = new Map<string, number>();
  let v = 0;
  for (const node of network.nodes) pressures.set(node.id, balance.pressures[v++] as number);
  return { converged, flows, pressures, iterations, residual, stall };
}

/** The first id that is there twice. */
function repeated(edges: readonly NetworkEdge[]): string | undefined {
  return edges.find((edge, e) => edges.findIndex((other) => other.id === edge.id) < e)?.id;
}

/** {@link solveNetwork} for a network that is prepared, with its answer by number. */
export function solvePrepared(prepared: Prepared, options: SolveOptions = {}): Balance {
  const { network, indexed, layout, chains, alone, core } = prepared;
  const chainFlows = new Float64Array(chains.count);
  const pressures = indexed.pressure.slice();
  const stall: StallNote[] = [];
  let iterations = 0;
  let settled = true;
  if (indexed.pressureScale > 0) {
    const startOf = starts(prepared, options.start);
    for (const c of alone) {
      const size = startOf(c);
      const difference =
        given(pressures, layout.from[c] as number) - given(pressures, layout.to[c] as number);
      const found = chainFlow(chains, c, difference, size !== 0 && Number.isFinite(size) ? size : 1);
      chainFlows[c] = found.flow;
      iterations = Math.max(iterations, found.iterations);
      noteStall(network, layout, c, found.others, stall);
    }
    if (core !== null) {
      const answer = solveCore(core, options.start ? Float64Array.from(core.members, startOf) : null);
      iterations += answer.iterations;
      settled = answer.converged;
      for (let u = 0; u < core.nodes.length; u++)
        pressures[core.nodes[u] as number] = answer.pressures[u] as number;
      for (let m = 0; m < core.members.length; m++)
        chainFlows[core.members[m] as number] = answer.flows[m] as number;
      if (settled)
        for (const c of core.members)
          if (chains.rises[c] === 0) lookForStall(prepared, c, chainFlows, pressures, stall);
    }
  }

  const flows = new Float64Array(network.edges.length);
  const drops = new Float64Array(network.edges.length);
  for (let c = 0; c < chains.count; c++) {
    const flow = chainFlows[c] as number;
    for (let at = layout.start[c] as number; at < (layout.start[c + 1] as number); at++) {
      const code = layout.edges[at] as number;
      const sign = code & 1 ? -1 : 1;
      flows[code >> 1] = sign * flow + 0;
      drops[code >> 1] = sign * edgeDrop(chains, at);
    }
  }
  for (const e of layout.blind) {
    const { fan, gain } = network.edges[e] as NetworkEdge;
    drops[e] = -(fan ? fanTotalPressure(fan, 0, network.air) : 0) - (gain ?? 0);
  }
  spreadPressures(layout, indexed, drops, pressures);

  let residual = 0;
  for (let e = 0; e < drops.length; e++) {
    const across =
      (pressures[indexed.from[e] as number] as number) - (pressures[indexed.to[e] as number] as number);
    const unbalanced = Math.abs(across - (drops[e] as number));
    if (!(unbalanced <= residual)) residual = unbalanced;
  }
  const converged = settled && residual <= RESIDUAL_TOLERANCE * indexed.pressureScale;
  return { converged, flows, pressures, iterations, residual, stall };
}

/** A pressure that is known, and 0 at the one node of a hanging loop, where only the difference counts. */
function given(pressures: Float64Array, v: number): number {
  const p = pressures[v] as number;
  return Number.isNaN(p) ? 0 : p;
}

/** Where each chain starts from: what was asked for, else its guess. */
function starts({ network, layout, chains }: Prepared, start: SolveOptions['start']): (c: number) => number {
  return (c) => {
    const code = layout.edges[layout.start[c] as number] as number;
    const wish = start?.get((network.edges[code >> 1] as NetworkEdge).id);
    if (wish === undefined || !Number.isFinite(wish)) return chains.guess[c] as number;
    return code & 1 ? -wish : wish;
  };
}

/** Other flows at which a chain's fans also meet the pressures that were found at its ends. */
function lookForStall(
  { network, layout, chains }: Prepared,
  c: number,
  chainFlows: Float64Array,
  pressures: Float64Array,
  stall: StallNote[],
): void {
  const flow = chainFlows[c] as number;
  const across =
    (pressures[layout.from[c] as number] as number) - (pressures[layout.to[c] as number] as number);
  const found = chainFlow(chains, c, across, flow);
  const apart = (q: number): boolean => Math.abs(q - flow) > 1e-6 * Math.abs(flow);
  noteStall(network, layout, c, [found.flow, ...found.others].filter(apart), stall);
  evaluateChain(chains, c, flow, new Float64Array(2));
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
      message: says.severalFlows,
    });
    return;
  }
}

/** Carries pressures from where they are known along the edges' drops to every other node. */
function spreadPressures(
  layout: Layout,
  indexed: Indexed,
  drops: Float64Array,
  pressures: Float64Array,
): void {
  const { from, to } = indexed;
  const { outward } = layout;
  for (let i = 0; i < outward.length; i++) {
    const code = outward[i] as number;
    const e = code >> 1;
    const a = (code & 1 ? to[e] : from[e]) as number;
    const b = (code & 1 ? from[e] : to[e]) as number;
    if (!Number.isNaN(pressures[b])) continue;
    pressures[b] = (pressures[a] as number) + (code & 1 ? (drops[e] as number) : -(drops[e] as number)) + 0;
  }
}
