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

/** The part of a network that has to be solved at once: chains between free and fixed nodes. */
export interface CorePlan {
  readonly chains: Chains;
  /** Chains that take part. */
  readonly members: Int32Array;
  /** Unknown's index at each member's ends, or -1 where the pressure is given. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Given pressure at each member's ends; 0 where it is unknown. */
  readonly fromPressure: Float64Array;
  readonly toPressure: Float64Array;
  /** Node of each unknown, and the flow forced into it, m3/s. */
  readonly nodes: Int32Array;
  readonly inflow: Float64Array;
  /** Where the matrix has each member's entry off the diagonal; -1 for those that reach a given pressure. */
  readonly entry: Int32Array;
  readonly factor: Factor;
  /** Pa; the size of what drives the network. */
  readonly pressureScale: number;
}

/** Numbers the unknowns of the member chains and plans their elimination. */
export function planCore(chains: Chains, members: Int32Array, layout: Layout, indexed: Indexed): CorePlan {
  const { fixed, pressure, pressureScale } = indexed;
  const count = members.length;
  const unknownOf = new Int32Array(fixed.length).fill(-1);
  const nodes: number[] = [];
  const linkFrom: number[] = [];
  const linkTo: number[] = [];
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  const fromPressure = new Float64Array(count);
  const toPressure = new Float64Array(count);
  const entry = new Int32Array(count).fill(-1);
  function unknownAt(v: number): number {
    if (fixed[v] === 1) return -1;
    if (unknownOf[v] === -1) unknownOf[v] = nodes.push(v) - 1;
    return unknownOf[v] as number;
  }
  for (let m = 0; m < count; m++) {
    const c = members[m] as number;
    const a = layout.from[c] as number;
    const b = layout.to[c] as number;
    const u = unknownAt(a);
    const v = unknownAt(b);
    from[m] = u;
    to[m] = v;
    if (u < 0) fromPressure[m] = pressure[a] as number;
    if (v < 0) toPressure[m] = pressure[b] as number;
    if (u < 0 || v < 0) continue;
    entry[m] = linkFrom.push(u) - 1;
    linkTo.push(v);
  }
  const factor = analyse(nodes.length, new Int32Array(linkFrom), new Int32Array(linkTo));
  for (let m = 0; m < count; m++)
    if ((entry[m] as number) >= 0) entry[m] = factor.slot[entry[m] as number] as number;
  return {
    chains,
    members,
    from,
    to,
    fromPressure,
    toPressure,
    nodes: new Int32Array(nodes),
    inflow: Float64Array.from(nodes, (v) => indexed.inflow[v] as number),
    entry,
    factor,
    pressureScale,
  };
}

export interface CoreSolution {
  readonly converged: boolean;
  readonly flows: Float64Array;
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
  const { chains, members, from, to, fromPressure, toPressure, entry, factor, pressureScale } = core;
  const unknowns = core.nodes.length;
  const count = members.length;
  const flow = new Float64Array(count);
  const trial = new Float64Array(count);
  const step = new Float64Array(count);
  const drop = new Float64Array(count);
  const slope = new Float64Array(count);
  const pressure = new Float64Array(unknowns);
  const right = new Float64Array(unknowns);
  const out = new Float64Array(2);

  const flowScale = startFlows();
  const leastSlope = (LEAST_SLOPE * pressureScale) / flowScale;

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

  function evaluateAt(q: Float64Array): void {
    for (let m = 0; m < count; m++) {
      evaluateChain(chains, members[m] as number, q[m] as number, out);
      drop[m] = out[0] as number;
      slope[m] = Math.max(leastSlope, Math.abs(out[1] as number));
    }
  }

  function difference(m: number): number {
    const a = from[m] as number;
    const b = to[m] as number;
    return (
      (a < 0 ? (fromPressure[m] as number) : (pressure[a] as number)) -
      (b < 0 ? (toPressure[m] as number) : (pressure[b] as number))
    );
  }

  /** Solves for the pressures that would balance every node after a Newton step; fills `step`. */
  function newton(): boolean {
    const { diagonal, off, position } = factor;
    diagonal.fill(0);
    off.fill(0);
    for (let v = 0; v < unknowns; v++) right[position[v] as number] = core.inflow[v] as number;
    for (let m = 0; m < count; m++) {
      const g = 1 / (slope[m] as number);
      const a = from[m] as number;
      const b = to[m] as number;
      const need = g * (drop[m] as number) - (flow[m] as number);
      if (a >= 0) {
        const k = position[a] as number;
        diagonal[k] = (diagonal[k] as number) + g;
        right[k] = (right[k] as number) + need + (b < 0 ? g * (toPressure[m] as number) : 0);
      }
      if (b >= 0) {
        const k = position[b] as number;
        diagonal[k] = (diagonal[k] as number) + g;
        right[k] = (right[k] as number) - need + (a < 0 ? g * (fromPressure[m] as number) : 0);
      }
      const p = entry[m] as number;
      if (p >= 0) off[p] = (off[p] as number) - g;
    }
    if (!factorize(factor)) return false;
    solveFactored(factor, right);
    for (let v = 0; v < unknowns; v++) pressure[v] = right[position[v] as number] as number;
    for (let m = 0; m < count; m++) step[m] = (difference(m) - (drop[m] as number)) / (slope[m] as number);
    return true;
  }

  /** Slope of the content along the step, at the flow last evaluated. */
  function slopeAlong(): number {
    let sum = 0;
    for (let m = 0; m < count; m++) sum += (step[m] as number) * ((drop[m] as number) - difference(m));
    return sum;
  }

  function moveBy(share: number): void {
    for (let m = 0; m < count; m++) trial[m] = (flow[m] as number) + share * (step[m] as number);
    evaluateAt(trial);
  }

  /** Halves the step until it no longer overshoots; leaves the evaluation there. */
  function lineSearch(lax: boolean): void {
    const most = lax ? -OVERSHOOT * slopeAlong() : 0;
    for (let share = 1; share > 1e-12; share /= 2) {
      moveBy(share);
      if (slopeAlong() <= most) return;
    }
  }

  function residual(): number {
    let largest = 0;
    for (let m = 0; m < count; m++)
      largest = Math.max(largest, Math.abs((drop[m] as number) - difference(m)));
    return largest;
  }

  evaluateAt(flow);
  if (start === null) {
    for (let m = 0; m < count; m++) {
      if (chains.fanned[members[m] as number] === 0)
        slope[m] = Math.max(leastSlope, (drop[m] as number) / (flow[m] as number));
    }
  }
  let previousStep = 0;
  for (let i = 1; i <= MOST_STEPS; i++) {
    if (!newton())
      return { converged: false, flows: flow, pressures: pressure, iterations: i, residual: Number.NaN };
    let largestStep = 0;
    let largestFlow = 1e-9 * flowScale;
    for (let m = 0; m < count; m++) {
      largestStep = Math.max(largestStep, Math.abs(step[m] as number));
      largestFlow = Math.max(largestFlow, Math.abs((flow[m] as number) + (step[m] as number)));
    }
    const shrink = largestStep / previousStep;
    const settled =
      largestStep <= FLOW_TOLERANCE * largestFlow || largestStep * shrink <= FORESEEN_TOLERANCE * largestFlow;
    previousStep = largestStep;
    if (i === 1 || largestStep <= SURE_STEP * largestFlow) moveBy(1);
    else lineSearch(i <= LAX_STEPS);
    flow.set(trial);
    if (settled)
      return { converged: true, flows: flow, pressures: pressure, iterations: i, residual: residual() };
  }
  return { converged: false, flows: flow, pressures: pressure, iterations: MOST_STEPS, residual: residual() };
}
