import { airAt } from '../hydraulics/air.ts';
import { fanTotalPressure } from '../hydraulics/fan.ts';
import { solveNetwork } from '../hydraulics/network.ts';
import { area } from '../hydraulics/section.ts';
import type { Air, FanCurve, NetworkSolution } from '../hydraulics/types.ts';
import type { Hood, Job, Scheme } from './document.ts';
import { solvedFindings } from './findings/solved.ts';
import { fitFindings } from './fit.ts';
import { inferRoute, schemeOf } from './infer.ts';
import { memoise } from './memo.ts';
import { isEnd, named, reachedFrom, toNetwork } from './network.ts';
import { type Plan, planOf } from './plan.ts';
import { type LegResult, legResult, profileOf } from './results.ts';
import type { Finding, Route } from './route.ts';
import type { SchemeSolution, Solved, SpeedResult, Unsolved } from './solution.ts';
import { type SpeedCurve, speedCurve } from './speeds.ts';

/**
 * Solves a scheme at every speed of every hood on it. With several hoods, speed k of one is solved
 * with every other at its speed k, or at its highest where it has fewer.
 *
 * @param job read only; repeated calls with the same scheme, hoods and air are free
 * @throws RangeError if the job has no scheme of that id
 */
export function solveScheme(job: Job, schemeId: string): SchemeSolution {
  const route = inferRoute(job, schemeId);
  return solved(route, schemeOf(job, schemeId), job.hoods, job.air, fitFindings(job, route));
}

const solved = memoise(
  (
    route: Route,
    scheme: Scheme,
    hoods: Job['hoods'],
    state: Job['air'],
    fit: readonly Finding[],
  ): SchemeSolution => {
    const air = airAt(state);
    const placed = placedHoods(scheme, hoods);
    const scene: Scene = { route, plan: planOf(route, scheme), placed, air };
    const settings = Math.max(0, ...placed.map(({ hood }) => hood.speeds.length));
    const solutions = Array.from({ length: settings }, (_, k) => solveSetting(scene, k));
    const ran = placed.map((place) => ({
      ...place,
      speeds: place.hood.speeds.map((_, k) => speedResult(scene, place, k, solutions[k] as SettingSolution)),
    }));
    return {
      schemeId: scheme.id,
      route,
      air,
      speeds: ran.length > 0 ? ran.flatMap(({ speeds }) => speeds) : hoods.flatMap(unplaced),
      findings: [...route.findings, ...fit, ...ran.flatMap(solvedFindings)],
    };
  },
);

/** A hood where it stands in the scheme. */
interface Placed {
  readonly node: string;
  readonly hood: Hood;
}

interface Scene {
  readonly route: Route;
  readonly plan: Plan;
  readonly placed: readonly Placed[];
  readonly air: Air;
}

/** One solve: the fans that ran, what came of it, and for the others why they did not. */
interface SettingSolution {
  readonly fans: ReadonlyMap<string, FanCurve>;
  readonly idle: ReadonlyMap<string, string>;
  readonly network: NetworkSolution;
}

/** Hoods of the job as they stand in the scheme, in the order of the job. */
function placedHoods(scheme: Scheme, hoods: readonly Hood[]): Placed[] {
  return hoods.flatMap((hood) =>
    scheme.nodes
      .filter((node) => node.role === 'hood' && node.hood === hood.id)
      .map((node) => ({ node: node.id, hood })),
  );
}

/** Without any hood on the sheets every speed of every hood says so, so that a reader sees what is missing. */
function unplaced(hood: Hood): SpeedResult[] {
  return hood.speeds.map(({ name }, speed) => ({
    hood: hood.id,
    hoodName: hood.name,
    speed,
    name,
    ratedFlow: speedCurve(hood, speed).ratedFlow,
    outcome: { solved: false, reason: 'The hood is not on the sheets of this scheme yet.' },
  }));
}

function curveAt(hood: Hood, setting: number): SpeedCurve {
  return speedCurve(hood, Math.min(setting, hood.speeds.length - 1));
}

function solveSetting({ route, plan, placed, air }: Scene, setting: number): SettingSolution {
  const fans = new Map<string, FanCurve>();
  const idle = new Map<string, string>();
  for (const { node, hood } of placed) {
    const speed = curveAt(hood, setting);
    const reason = cannotBlow(route, node) ?? (speed.known ? undefined : speed.reason);
    if (reason === undefined && speed.known) fans.set(node, speed.curve);
    else idle.set(node, reason ?? 'The hood cannot run.');
  }
  return { fans, idle, network: solveNetwork(toNetwork(route, plan, fans, air)) };
}

function cannotBlow(route: Route, node: string): string | undefined {
  if (route.nodes.get(node)?.segments.length === 0) return 'Nothing is attached to the hood yet.';
  const reached = reachedFrom([node], route);
  for (const id of reached) if (isEnd(route, id)) return undefined;
  return 'The duct from the hood has no way out.';
}

function speedResult(scene: Scene, place: Placed, index: number, setting: SettingSolution): SpeedResult {
  const { hood, node } = place;
  const reason = setting.idle.get(node);
  return {
    hood: hood.id,
    hoodName: hood.name,
    speed: index,
    name: hood.speeds[index]?.name ?? '',
    ratedFlow: speedCurve(hood, index).ratedFlow,
    outcome: reason === undefined ? outcomeOf(scene, place, setting) : { solved: false, reason },
  };
}

function outcomeOf(
  { route, plan, air }: Scene,
  { node, hood }: Placed,
  setting: SettingSolution,
): Solved | Unsolved {
  const { network } = setting;
  if (!network.converged) return { solved: false, reason: network.reason };
  const flowIn = (edge: string) => network.flows.get(edge) ?? 0;
  const flow = flowIn(named.fan(node));
  const totalPressure = fanTotalPressure(setting.fans.get(node) as FanCurve, flow, air);
  const velocity = flow / area(hood.collar);
  const piece = reachedFrom([node], route);
  const legs = new Map<string, LegResult>();
  for (const leg of plan.legs) {
    if (piece.has(leg.from)) legs.set(leg.id, legResult(leg, flowIn(named.duct(leg.id)), air, totalPressure));
  }
  const segments = new Map([...legs].map(([id, result]) => [id, result.segment]));
  return {
    solved: true,
    flow,
    totalPressure,
    staticPressure: totalPressure - (air.density * velocity * velocity) / 2,
    fastest: fastestOf(segments.values()),
    segments,
    fittings: [...legs.values()].flatMap((result) => result.fittings),
    profile: profileOf(pathFrom(node, legs), totalPressure),
    iterations: network.iterations,
    residual: network.residual,
    stall: network.stall.filter((note) => note.edge === named.fan(node)),
  };
}

function fastestOf(
  segments: Iterable<{ readonly id: string; readonly velocity: number }>,
): Solved['fastest'] {
  let fastest: Solved['fastest'] = null;
  for (const { id, velocity } of segments) {
    if (velocity > (fastest?.velocity ?? 0)) fastest = { segment: id, velocity };
  }
  return fastest;
}

/** The legs from a hood to an exit, by the larger flow wherever the run divides. */
function pathFrom(node: string, legs: ReadonlyMap<string, LegResult>): LegResult[] {
  const leaving = new Map<string, LegResult>();
  for (const result of legs.values()) {
    const { leg, segment } = result;
    const best = leaving.get(leg.from);
    if (segment.flow > (best?.segment.flow ?? 0)) leaving.set(leg.from, result);
  }
  const path: LegResult[] = [];
  let next = leaving.get(node);
  while (next && path.length < legs.size) {
    path.push(next);
    next = leaving.get(next.leg.to);
  }
  return path;
}
