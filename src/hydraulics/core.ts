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
const OVERSHOOT = 0.5;
const LAX_STEPS = 30;
/**
 * Past so many steps a solve also ends where no pressure is out by more than this share of what drives it. Air that
 * leaves a duct for one beside it that loses nothing creeps away for ever: its slope fades under the least one.
 */
const CREEPING = 60;
const BALANCED = 1e-13;
/** What flows into a node and out of it may differ by this share of the largest flow. */
const MASS_TOLERANCE = 1e-9;
/** Least slope of a chain, as a share of the network's pressure over its flow. */
const LEAST_SLOPE = 1e-6;
/**
 * Steps taken with square laws in the place of friction before the solve proper: they cost no
 * friction factors and leave it a start within some ten percent.
 */
const ROUGH_STEPS = 4;
/** Flows all under this share of the largest guess are taken for none. */
const LEAST_FLOW = 1e-9;
/** A start under this share of a chain's guess is raised to it. */
const LEAST_START = 1e-3;
/** A guess of more than so many times what the fans and the forced flows drive is lowered to that. */
const MOST_START = 10;

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

/** What changes while a core is solved; one entry a member, or a node of ours. */
interface Work {
  readonly flow: Float64Array;
  readonly trial: Float64Array;
  readonly step: Float64Array;
  readonly drop: Float64Array;
  /** Flow gained by a pressure, m3/s per Pa: one over the slope of the drop. */
  readonly conductance: Float64Array;
  readonly pressure: Float64Array;
  /** Right side, then change of pressure; of the unknown nodes alone. */
  readonly change: Float64Array;
  readonly diagonal: Float64Array;
  readonly flowScale: number;
  readonly leastSlope: number;
  /** Slope of the content along the step, where it was last evaluated. */
  along: number;
  /** Largest of the step, and of the flows after it, m3/s. */
  largestStep: number;
  largestFlow: number;
}

/**
 * The size of the flows, m3/s: the largest guess, within bounds of what the fans and the forced flows drive. The guess
 * for a duct that hardly loses anything knows none, and would make the least slope too small for the arithmetic.
 */
function flowScaleOf({ chains, members, inflow }: CorePlan): number {
  let driven = 0;
  let guessed = 0;
  for (const c of members) {
    driven = Math.max(driven, chains.driven[c] as number);
    const guess = Math.abs(chains.guess[c] as number);
    if (Number.isFinite(guess)) guessed = Math.max(guessed, guess);
  }
  for (const q of inflow) driven = Math.max(driven, Math.abs(q));
  return Math.min(guessed || 1, driven > 0 ? MOST_START * driven : Number.POSITIVE_INFINITY);
}

/** Arrays for a solve, with the first flows set. */
function begin(core: CorePlan, start: Float64Array | null): Work {
  const { chains, members } = core;
  const count = members.length;
  const flow = new Float64Array(count);
  const flowScale = flowScaleOf(core);
  for (let m = 0; m < count; m++) {
    const guess = Math.max(-flowScale, Math.min(flowScale, chains.guess[members[m] as number] as number));
    const wish = start?.[m] ?? guess;
    flow[m] = Math.abs(wish) < LEAST_START * Math.abs(guess) ? LEAST_START * guess : wish;
  }
  return {
    flow,
    trial: flow.slice(),
    step: new Float64Array(count),
    drop: new Float64Array(count),
    conductance: new Float64Array(count),
    pressure: core.pressures.slice(),
    change: new Float64Array(core.nodes.length),
    diagonal: new Float64Array(core.nodes.length),
    flowScale,
    leastSlope: (LEAST_SLOPE * core.pressureScale) / flowScale,
    along: 0,
    largestStep: 0,
    largestFlow: 0,
  };
}

const out = new Float64Array(2);

/** Evaluates every member a share of its step further on; by its square law where that will do and there is one. */
function moveBy(core: CorePlan, work: Work, share: number, rough = false): void {
  const { chains, members, from, to } = core;
  const { flow, trial, step, drop, conductance, pressure, leastSlope } = work;
  let along = 0;
  for (let m = 0; m < members.length; m++) {
    const dq = step[m] as number;
    const q = (flow[m] as number) + share * dq;
    trial[m] = q;
    const c = members[m] as number;
    const square = chains.square[c] as number;
    if (rough && square > 0) {
      out[1] = 2 * square * Math.abs(q);
      out[0] = 0.5 * q * out[1];
    } else evaluateChain(chains, c, q, out);
    const dp = out[0] as number;
    drop[m] = dp;
    conductance[m] = 1 / Math.max(leastSlope, Math.abs(out[1] as number));
    along += dq * (dp - (pressure[from[m] as number] as number) + (pressure[to[m] as number] as number));
  }
  work.along = along;
}

/** Moves the pressures to where a Newton step would balance every node, and fills `step`; false for bad numbers. */
function newton(core: CorePlan, work: Work): boolean {
  const { from, to, entry, factor } = core;
  const { flow, step, drop, conductance, pressure, change, diagonal } = work;
  const { off } = factor;
  diagonal.fill(0);
  change.set(core.inflow);
  off.fill(0);
  for (let m = 0; m < from.length; m++) {
    const g = conductance[m] as number;
    const a = from[m] as number;
    const b = to[m] as number;
    const unbalanced = (drop[m] as number) - (pressure[a] as number) + (pressure[b] as number);
    const need = g * unbalanced - (flow[m] as number);
    diagonal[a] = (diagonal[a] as number) + g;
    diagonal[b] = (diagonal[b] as number) + g;
    change[a] = (change[a] as number) + need;
    change[b] = (change[b] as number) - need;
    const p = entry[m] as number;
    if (p >= 0) off[p] = (off[p] as number) - g;
  }
  if (!factorize(factor, diagonal)) return false;
  solveFactored(factor, change);
  for (let v = 0; v < factor.size; v++) pressure[v] = (pressure[v] as number) + (change[v] as number);
  let along = 0;
  let largestStep = 0;
  let largestFlow = 0;
  for (let m = 0; m < from.length; m++) {
    const across = (pressure[from[m] as number] as number) - (pressure[to[m] as number] as number);
    const unbalanced = (drop[m] as number) - across;
    const dq = -unbalanced * (conductance[m] as number);
    step[m] = dq;
    along += dq * unbalanced;
    largestStep = Math.max(largestStep, Math.abs(dq));
    largestFlow = Math.max(largestFlow, Math.abs((flow[m] as number) + dq));
  }
  work.along = along;
  work.largestStep = largestStep;
  work.largestFlow = largestFlow;
  return true;
}

/** Halves the step until it no longer overshoots; leaves the evaluation there. */
function lineSearch(core: CorePlan, work: Work, lax: boolean): void {
  const most = lax ? -OVERSHOOT * work.along : 0;
  for (let share = 1; share > 1e-12; share /= 2) {
    moveBy(core, work, share);
    if (work.along <= most) return;
  }
}

function finish(core: CorePlan, work: Work, converged: boolean, iterations: number): CoreSolution {
  return {
    converged: converged && massClosed(core, work),
    flows: work.flow,
    pressures: work.pressure,
    iterations,
    residual: unbalanced(core, work),
  };
}

/** Whether every unknown node passes on what it gets. */
function massClosed({ from, to, inflow, factor }: CorePlan, { flow }: Work): boolean {
  const kept = inflow.slice(0, factor.size);
  let largest = 0;
  for (let m = 0; m < from.length; m++) {
    const q = flow[m] as number;
    largest = Math.max(largest, Math.abs(q));
    kept[from[m] as number] = (kept[from[m] as number] as number) - q;
    kept[to[m] as number] = (kept[to[m] as number] as number) + q;
  }
  return kept.every((q) => Math.abs(q) <= MASS_TOLERANCE * largest);
}

/** Largest unbalanced pressure over any member where it was last evaluated, Pa. */
function unbalanced({ from, to }: CorePlan, { drop, pressure }: Work): number {
  let largest = 0;
  for (let m = 0; m < from.length; m++) {
    const across = (pressure[from[m] as number] as number) - (pressure[to[m] as number] as number);
    largest = Math.max(largest, Math.abs((drop[m] as number) - across));
  }
  return largest;
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
  const { chains, members } = core;
  const work = begin(core, start);
  const { flow, trial, drop, conductance, leastSlope } = work;
  const roughSteps = start === null ? ROUGH_STEPS : 0;
  moveBy(core, work, 0, start === null);
  if (start === null) {
    for (let m = 0; m < members.length; m++) {
      if (chains.fanned[members[m] as number] === 0)
        conductance[m] = 1 / Math.max(leastSlope, (drop[m] as number) / (flow[m] as number));
    }
  }
  for (let i = 1; i <= roughSteps; i++) {
    if (!newton(core, work)) return finish(core, work, false, i);
    moveBy(core, work, 1, i < roughSteps);
    flow.set(trial);
  }
  let previousStep = 0;
  for (let i = roughSteps + 1; i <= MOST_STEPS; i++) {
    if (!newton(core, work)) return finish(core, work, false, i);
    const { largestStep } = work;
    const largestFlow = Math.max(LEAST_FLOW * work.flowScale, work.largestFlow);
    const settled =
      largestStep <= FLOW_TOLERANCE * largestFlow ||
      (largestStep / previousStep) * largestStep <= FORESEEN_TOLERANCE * largestFlow;
    previousStep = largestStep;
    if (i === 1 || largestStep <= SURE_STEP * largestFlow) moveBy(core, work, 1);
    else lineSearch(core, work, i <= LAX_STEPS);
    flow.set(trial);
    if (settled || (i > CREEPING && unbalanced(core, work) <= BALANCED * core.pressureScale))
      return finish(core, work, true, i);
  }
  return finish(core, work, false, MOST_STEPS);
}
