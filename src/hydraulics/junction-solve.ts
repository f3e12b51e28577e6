import { words } from '../words/index.ts';
import { type Mixer, mixer } from './junction-mixer.ts';
import { junctionLoss } from './losses/junctions.ts';
import { solveNetwork } from './network.ts';
import type { LossPart, Network, NetworkEdge, NetworkSolution, Provenance } from './types.ts';

const says = words.losses.junctionsUnsettled;

/** One duct at a junction. */
export interface JunctionPort {
  readonly edge: string;
  /** True where the edge runs to the junction, false where it starts there. */
  readonly inward: boolean;
  /** m2 */
  readonly area: number;
  /** Unit vector from the junction along the duct. */
  readonly away: readonly [number, number, number];
}

export interface Junction {
  readonly id: string;
  readonly ports: readonly JunctionPort[];
}

/** What one way through a junction costs, as it stands in the solution. */
export interface WayLoss {
  readonly junction: string;
  /** The edge that is charged. */
  readonly edge: string;
  /** The edge that carries the whole flow, whose velocity pressure `c` multiplies. */
  readonly common: string;
  readonly way: 'straight' | 'branch';
  readonly converging: boolean;
  /** Of the branches over the whole flow; of this one where the way is a branch. */
  readonly flowRatio: number;
  readonly areaRatio: number;
  /** Between the branch and the straight run, degrees. */
  readonly angle: number;
  readonly c: number;
  /** In the edge of the whole flow, m/s. */
  readonly velocity: number;
  /** Pa in the direction of the air; below zero where the faster stream pulls this one along. */
  readonly loss: number;
  readonly provenance: Provenance;
}

export interface JunctionSolution {
  readonly network: NetworkSolution;
  readonly ways: readonly WayLoss[];
  /** Junctions without a loss, with the reason. */
  readonly leftOut: ReadonlyMap<string, string>;
  /** Solves of the network, 1 where there is no junction. */
  readonly rounds: number;
  /** Largest change of a flow in the last round, over the largest flow. */
  readonly change: number;
}

/** A way through a junction by the flows of one round: what it should cost, before damping. */
interface Target extends Omit<WayLoss, 'loss' | 'velocity'> {
  readonly commonArea: number;
  readonly area: number;
  readonly inward: boolean;
}

const MOST_ROUNDS = 200;
/** A junction where a stream turned round in so many of the last rounds keeps the rest from settling. */
const STILL_TURNING = 20;
/** Flows that would change by less than this share of the largest in an undamped round are settled. */
const SETTLED = 1e-9;
/** A branch with less than this share of the whole flow is led towards C = 1, see {@link nearRest}. */
const NEAR_REST = 0.02;
/** A way with less velocity pressure than this share of the whole flow's is charged as a fixed pressure. */
const SLOW = 0.05;
/** A leg goes straight through a junction when it deflects by no more than this, degrees. */
const STRAIGHT_WITHIN = 30;
/** A leg with less than this share of the whole flow is at rest. */
const AT_REST = 1e-6;

/**
 * Solves a network whose junctions cost what the flow ratios make them cost. The coefficients of a junction
 * depend on all its flows at once and may be negative, which would take the solve its convexity; so each
 * round solves the network with the losses of the last one: a positive one as a coefficient on its own
 * leg, a negative one, or one on a leg where hardly any air moves, as a fixed pressure, which leaves the
 * solve as convex as it was. Rounds go on, damped, until no flow changes by more than 1e-9 of the
 * largest. A junction that does not settle in 200 rounds, because a stream there is about to turn round, is
 * left out and named in `leftOut`: the numbers are then those of a network without its loss.
 */
export function solveWithJunctions(network: Network, junctions: readonly Junction[]): JunctionSolution {
  let solution = solveNetwork(network);
  if (junctions.length === 0 || !solution.converged)
    return { network: solution, ways: [], leftOut: new Map(), rounds: 1, change: 0 };
  const { density } = network.air;
  const mixers = new Map(junctions.map(({ id }) => [id, mixer()]));
  let change = Number.POSITIVE_INFINITY;
  const mostPressure = 2 * Math.max(...[...solution.pressures.values()].map(Math.abs));
  let rounds = 1;
  while (rounds < MOST_ROUNDS) {
    rounds += 1;
    const { flows } = solution;
    const { targets, leftOut } = targetsAt(junctions, flows);
    const charges = new Map<string, Charge>();
    const ways = junctions.flatMap(({ id }) => {
      const here = targets.filter((target) => target.junction === id);
      const mixed = (mixers.get(id) as Mixer).mix(here);
      return here.map((target, k) => ({ ...target, c: mixed[k] as number }));
    });
    let held = false;
    for (const way of ways) held = charge(charges, way, flows, density, mostPressure) || held;
    const edges = network.edges.map((edge) => charged(edge, charges.get(edge.id)));
    const next = solveNetwork({ ...network, edges }, { start: flows });
    if (!next.converged) break;
    change = changeBetween(flows, next.flows);
    solution = next;
    if (change <= SETTLED && !held) {
      const wayLosses = ways.map(({ commonArea, area, inward, ...way }): WayLoss => {
        const velocity = Math.abs(next.flows.get(way.common) as number) / commonArea;
        return { ...way, velocity, loss: (way.c * density * velocity * velocity) / 2 };
      });
      return { network: next, ways: wayLosses, leftOut, rounds, change };
    }
  }
  return withoutUnsettled(network, junctions, mixers, rounds);
}

/**
 * Solves again without the losses of the junctions that keep the rest from settling: those where a stream was
 * still turning round at the end, or all where there is none such.
 */
function withoutUnsettled(
  network: Network,
  junctions: readonly Junction[],
  mixers: ReadonlyMap<string, Mixer>,
  rounds: number,
): JunctionSolution {
  const turning = junctions.filter(({ id }) => rounds - (mixers.get(id) as Mixer).turnedAt < STILL_TURNING);
  const dropped = turning.length > 0 ? turning : junctions;
  const rest = solveWithJunctions(
    network,
    junctions.filter((junction) => !dropped.includes(junction)),
  );
  const leftOut = new Map(rest.leftOut);
  for (const { id } of dropped) leftOut.set(id, says.turning);
  return { ...rest, leftOut, rounds: rounds + rest.rounds };
}

/** What an edge is charged with in one round. */
interface Charge {
  readonly parts: LossPart[];
  gain: number;
}

/**
 * Charges a way to its edge: as a coefficient where it costs, as a pressure where it gains or hardly moves.
 * True where that pressure had to be held to `most` (Pa), which no settled flow needs: gains around a loop of
 * ducts could otherwise drive each other without end.
 */
function charge(
  charges: Map<string, Charge>,
  { edge, inward, converging, common, commonArea, area, c }: Target,
  flows: ReadonlyMap<string, number>,
  density: number,
  most: number,
): boolean {
  const flow = flows.get(edge) as number;
  const speed = (flows.get(common) as number) / commonArea;
  const ratio = (flow / area / speed) ** 2;
  const on = charges.get(edge) ?? { parts: [], gain: 0 };
  charges.set(edge, on);
  if (c > 0 && ratio > SLOW) {
    on.parts.push({ kind: 'local', c: c / ratio, area });
    return false;
  }
  const pressure = (c * density * speed * speed) / 2;
  const kept = Math.min(most, Math.max(-most, pressure));
  on.gain -= inward === converging ? kept : -kept;
  return kept !== pressure;
}

function charged(edge: NetworkEdge, on: Charge | undefined): NetworkEdge {
  return on ? { ...edge, parts: [...edge.parts, ...on.parts], gain: (edge.gain ?? 0) + on.gain } : edge;
}

/** Largest change of a flow over the largest flow. */
function changeBetween(before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>): number {
  let change = 0;
  let largest = 0;
  for (const [id, q] of after) {
    largest = Math.max(largest, Math.abs(q));
    change = Math.max(change, Math.abs(q - (before.get(id) as number)));
  }
  return largest > 0 ? change / largest : 0;
}

function targetsAt(junctions: readonly Junction[], flows: ReadonlyMap<string, number>) {
  const targets: Target[] = [];
  const leftOut = new Map<string, string>();
  for (const junction of junctions) {
    const found = waysThrough(junction, flows);
    if (typeof found === 'string') leftOut.set(junction.id, found);
    else targets.push(...found);
  }
  return { targets, leftOut };
}

interface Stream extends JunctionPort {
  /** Out of the junction, m3/s. */
  readonly out: number;
}

/** What every way through a junction should cost at the given flows, or why there is no telling. */
function waysThrough({ id, ports }: Junction, flows: ReadonlyMap<string, number>): Target[] | string {
  const streams = ports.map((port): Stream => {
    const q = flows.get(port.edge) ?? 0;
    return { ...port, out: port.inward ? -q : q };
  });
  const common = streams.reduce((most, stream) =>
    Math.abs(stream.out) > Math.abs(most.out) ? stream : most,
  );
  const whole = Math.abs(common.out);
  if (whole === 0) return [];
  const others = streams.filter((stream) => stream !== common);
  if (others.some((stream) => stream.out * Math.sign(common.out) > AT_REST * whole)) return says.several;
  const converging = common.out > 0;
  const turned = others
    .map((stream) => ({ stream, angle: angleFromStraight(stream, common) }))
    .sort((a, b) => a.angle - b.angle);
  const [first] = turned;
  const straight = first && first.angle <= STRAIGHT_WITHIN ? first : undefined;
  const branches = turned.filter((way) => way !== straight);
  const query = (flow: number, area: number, angle: number) => ({
    angle,
    flowRatio: Math.min(1, flow / whole),
    areaRatio: area / common.area,
    converging,
  });
  const about = { junction: id, common: common.edge, commonArea: common.area, converging };
  const targets: Target[] = branches.map(({ stream, angle }) => {
    const asked = query(Math.abs(stream.out), stream.area, angle);
    const { branchC, provenance } = junctionLoss(asked);
    const { edge, area, inward } = stream;
    const c = nearRest(branchC, asked.flowRatio, converging);
    return { ...about, ...asked, edge, area, inward, way: 'branch', c, provenance };
  });
  if (straight && branches.length > 0) {
    const flow = branches.reduce((sum, { stream }) => sum + Math.abs(stream.out), 0);
    const area = branches.reduce((sum, { stream }) => sum + stream.area, 0);
    const angle = branches.reduce((sum, way) => sum + way.angle, 0) / branches.length;
    const asked = query(flow, area, angle);
    const { straightC, provenance } = junctionLoss(asked);
    const { edge, area: own, inward } = straight.stream;
    targets.push({ ...about, ...asked, edge, area: own, inward, way: 'straight', c: straightC, provenance });
  }
  return targets;
}

/**
 * A branch at rest stands at the static pressure of the main, whichever way it is about to flow: C is 1 for
 * air that would leave and -1 for air that would come. The tables end nearby but not there; below a
 * fiftieth of the whole flow the coefficient is led to it, so that a stream turns round without a step.
 */
function nearRest(c: number, flowRatio: number, converging: boolean): number {
  const atRest = converging ? -1 : 1;
  return atRest + Math.min(1, flowRatio / NEAR_REST) * (c - atRest);
}

/** By how much a stream turns between its duct and the one of the whole flow, degrees: 0 straight on. */
function angleFromStraight(stream: JunctionPort, common: JunctionPort): number {
  const cosine = stream.away.reduce((sum, x, i) => sum - x * (common.away[i] as number), 0);
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
}
