import { type Chains, evaluateChain } from './chains.ts';
import type { Layout } from './layout.ts';
import type { Indexed } from './network-index.ts';
import { analyse, type Factor, factorize, solveFactored } from './sparse.ts';

/** Most Newton steps before the solve is given up. */
const MOST_STEPS = 200;
/** A step under this share of the largest flow ends the solve, ... */
const FLOW_TOLERANCE = 1e-10;
/** ... or one after which the next, foreseen from how the last two shrank, would be under this. */
const FORESEEN_TOLERANCE = 1e-12;
/** Under this share of the largest flow a step is taken whole, without asking the line search. */
const SURE_STEP = 1e-6;
/**
 * A line search lets a step overshoot the lowest point along it if the slope there is under this
 * share of the slope it set out with, which keeps Newton's own steps near the end; after
 * `LAX_STEPS` it takes no overshoot, so that every step goes down and the end is certain.
 */
const OVERSHOOT = 0.2;
const LAX_STEPS = 30;
/** Least slope of a chain, as a share of the network's pressure over its flow. */
const LEAST_SLOPE = 1e-6;
/** A start under this share of a chain's guess is raised to it. */
const LEAST_START = 1e-3;

/**
 * The part of a network that has to be solved at once: chains between free and fixed nodes. Nodes
 * are numbered with the unknown ones first, in the order of their elimination.
 */
export interface CorePlan {
  readonly chains: Chains;
  /** Chains that take part. */
  readonly members: Int32Array;
  /** Each member's ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The network's node of each of ours, the unknown ones first. */
  readonly nodes: Int32Array;
  /** Pressures of `nodes` to begin with: given, or 0. */
  readonly pressures: Float64Array;
  /** Flow forced into each of `nodes`, m3/s. */
  readonly inflow: Float64Array;
  /** Where the matrix has each member's entry off the diagonal; -1 for those that reach a given pressure. */
  readonly entry: Int32Array;
  readonly factor: Factor;
  /** Pa; the size of what drives the network. */
  readonly pressureScale: number;
}

/** Numbers the nodes of the member chains and plans their elimination. */
export function planCore(chains: Chains, members: Int32Array, layout: Layout, indexed: Indexed): CorePlan {
  const { fixed, pressure, pressureScale } = indexed;
  const numberOf = new Int32Array(fixed.length).fill(-1);
  const free: number[] = [];
  const given: number[] = [];
  for (const c of members) {
    for (const v of [layout.from[c] as number, layout.to[c] as number]) {
      if (numberOf[v] !== -1) continue;
      numberOf[v] = (fixed[v] === 1 ? given : free).push(v) - 1;
    }
  }
  const isFree = (v: number): boolean => fixed[v] === 0;
  const inner = members.filter((c) => isFree(layout.from[c] as number) && isFree(layout.to[c] as number));
  const factor = analyse(
    free.length,
    inner.map((c) => numberOf[layout.from[c] as number] as number),
    inner.map((c) => numberOf[layout.to[c] as number] as number),
  );
  const place = (v: number): number => {
    const n = numberOf[v] as number;
    return isFree(v) ? (factor.position[n] as number) : free.length + n;
  };
  const from = members.map((c) => place(layout.from[c] as number));
  const to = members.map((c) => place(layout.to[c] as number));
  let link = 0;
  const entry = from.map((a, m) =>
    a < free.length && (to[m] as number) < free.length ? (factor.slot[link++] as number) : -1,
  );
  const nodes = new Int32Array(free.length + given.length);
  for (const v of [...free, ...given]) nodes[place(v)] = v;
  const pressures = Float64Array.from(nodes, (v) => (isFree(v) ? 0 : (pressure[v] as number)));
  const inflow = Float64Array.from(nodes, (v) => indexed.inflow[v] as number);
  return { chains, members, from, to, nodes, pressures, inflow, entry, factor, pressureScale };
}

export interface CoreSolution {
  readonly converged: boolean;
  /** By member. */
  readonly flows: Float64Array;
  /** By {@link CorePlan.nodes}. */
  readonly pressures: Float64Array;
  readonly iterations: number;
  /** Largest unbalanced pressure over any member, Pa. */
  readonly residual: number;
}

/**
 * Flows and pressures together by Newton's method on the network's content: the sum over chains of
 * the integral of drop with flow, less the work of the fixed pressures. Where every drop rises it
 * is convex, mass balance keeps the steps on the plane where it has its one minimum, and a line
 * search on its slope makes the steps converge from anywhere. Each step is one solve of a weighted
 * Laplacian for the free pressures.
 *
 * Source: E. Todini and S. Pilati, A gradient algorithm for the analysis of pipe networks, 1988,
 * from memory; the line search is ours. `start` holds flows by member, or null for the guesses.
 */
export function solveCore(core: CorePlan, start: Float64Array | null): CoreSolution {
  const { chains, members, from, to, entry, factor, pressureScale } = core;
  const count = members.length;
  const flow = new Float64Array(count);
  const trial = new Float64Array(count);
  const step = new Float64Array(count);
  const drop = new Float64Array(count);
  const slope = new Float64Array(count);
  const pressure = core.pressures.slice();
  /** Right side, then change of pressure; of the unknown nodes alone. */
  const change = new Float64Array(core.nodes.length);
  const diagonal = new Float64Array(core.nodes.length);
  const out = new Float64Array(2);
  const flowScale = startFlows();
  const leastSlope = (LEAST_SLOPE * pressureScale) / flowScale;
  let largestStep = 0;
  let largestFlow = 0;

  /** Sets the first flows and returns the size of the largest guess. */
  function startFlows(): number {
    const guessOf = (m: number): number => chains.guess[members[m] as number] as number;
    let largest = 0;
    for (let m = 0; m < count; m++)
      if (Number.isFinite(guessOf(m))) largest = Math.max(largest, Math.abs(guessOf(m)));
    if (largest === 0) largest = 1;
    for (let m = 0; m < count; m++) {
      const guess = Number.isFinite(guessOf(m)) ? guessOf(m) : largest;
      const wish = start?.[m];
      if (wish === undefined) flow[m] = guess;
      else flow[m] = Math.abs(wish) < LEAST_START * Math.abs(guess) ? LEAST_START * guess : wish;
    }
    return largest;
  }

  function evaluate(m: number, q: number): void {
    evaluateChain(chains, members[m] as number, q, out);
    drop[m] = out[0] as number;
    slope[m] = Math.max(leastSlope, Math.abs(out[1] as number));
  }

  function unbalanced(m: number): number {
    return (
      (drop[m] as number) - (pressure[from[m] as number] as number) + (pressure[to[m] as number] as number)
    );
  }

  /** Moves the pressures to where a Newton step would balance every node, and fills `step`; false for bad numbers. */
  function newton(): boolean {
    diagonal.fill(0);
    change.set(core.inflow);
    factor.off.fill(0);
    for (let m = 0; m < count; m++) {
      const g = 1 / (slope[m] as number);
      const a = from[m] as number;
      const b = to[m] as number;
      const need = g * unbalanced(m) - (flow[m] as number);
      diagonal[a] = (diagonal[a] as number) + g;
      diagonal[b] = (diagonal[b] as number) + g;
      change[a] = (change[a] as number) + need;
      change[b] = (change[b] as number) - need;
      const p = entry[m] as number;
      if (p >= 0) factor.off[p] = (factor.off[p] as number) - g;
    }
    if (!factorize(factor, diagonal)) return false;
    solveFactored(factor, change);
    for (let v = 0; v < factor.size; v++) pressure[v] = (pressure[v] as number) + (change[v] as number);
    largestStep = 0;
    largestFlow = 1e-9 * flowScale;
    for (let m = 0; m < count; m++) {
      const dq = -unbalanced(m) / (slope[m] as number);
      step[m] = dq;
      largestStep = Math.max(largestStep, Math.abs(dq));
      largestFlow = Math.max(largestFlow, Math.abs((flow[m] as number) + dq));
    }
    return true;
  }

  /** Evaluates a share of the step further on. */
  function moveBy(share: number): void {
    for (let m = 0; m < count; m++) {
      const q = (flow[m] as number) + share * (step[m] as number);
      trial[m] = q;
      evaluate(m, q);
    }
  }

  /** Slope of the content along the step, at the flow last evaluated. */
  function slopeAlong(): number {
    let sum = 0;
    for (let m = 0; m < count; m++) sum += (step[m] as number) * unbalanced(m);
    return sum;
  }

  /** Halves the step until it no longer overshoots; leaves the evaluation there. */
  function lineSearch(lax: boolean): void {
    const most = lax ? -OVERSHOOT * slopeAlong() : 0;
    for (let share = 1; share > 1e-12; share /= 2) {
      moveBy(share);
      if (slopeAlong() <= most) return;
    }
  }

  function finish(converged: boolean, iterations: number): CoreSolution {
    let residual = 0;
    for (let m = 0; m < count; m++) residual = Math.max(residual, Math.abs(unbalanced(m)));
    return { converged, flows: flow, pressures: pressure, iterations, residual };
  }

  for (let m = 0; m < count; m++) {
    const q = flow[m] as number;
    evaluate(m, q);
    if (start === null && chains.fanned[members[m] as number] === 0)
      slope[m] = Math.max(leastSlope, (drop[m] as number) / q);
  }
  let previousStep = 0;
  for (let i = 1; i <= MOST_STEPS; i++) {
    if (!newton()) return finish(false, i);
    const settled =
      largestStep <= FLOW_TOLERANCE * largestFlow ||
      (largestStep / previousStep) * largestStep <= FORESEEN_TOLERANCE * largestFlow;
    previousStep = largestStep;
    if (i === 1 || largestStep <= SURE_STEP * largestFlow) moveBy(1);
    else lineSearch(i <= LAX_STEPS);
    flow.set(trial);
    if (settled) return finish(true, i);
  }
  return finish(false, MOST_STEPS);
}
