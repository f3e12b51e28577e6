import { fanTotalPressure } from '../hydraulics/fan.ts';
import type { WayLoss } from '../hydraulics/junction-solve.ts';
import { area } from '../hydraulics/section.ts';
import type { FanCurve } from '../hydraulics/types.ts';
import { type LegAir, temperaturesOf } from './heat.ts';
import { named, reachedFrom } from './network.ts';
import type { PlannedLeg } from './plan.ts';
import { type LegResult, legResult, profileOf, withJunctions } from './results.ts';
import { type Placed, type Scene, type SettingSolution, settingOf } from './setting.ts';
import type { BoosterResult, Solved, Unsolved } from './solution.ts';
import { soundOf } from './sound.ts';

/** What the air does at one hood and setting, read back from the solved network. */
export function outcomeOf(
  scene: Scene,
  { node, hood }: Placed,
  setting: number,
  { fans, boosters, solved, house }: SettingSolution,
): Solved | Unsolved {
  const { route, plan, air } = scene;
  const { network } = solved;
  if (!network.converged) return { solved: false, reason: network.reason };
  const flowIn = (edge: string) => network.flows.get(edge) ?? 0;
  const flow = flowIn(named.fan(node));
  const totalPressure = fanTotalPressure(fans.get(node) as FanCurve, flow, air);
  const velocity = flow / area(hood.collar);
  const piece = reachedFrom([node], route);
  const planned = plan.legs.filter((leg) => piece.has(leg.from));
  const path = pathFrom(node, planned, (leg) => flowIn(named.duct(leg)));
  const inRun = boostersOn(path, scene, boosters, setting, flowIn);
  const given = inRun.reduce((sum, booster) => sum + booster.pressure, totalPressure);
  const temperatures = temperaturesOf(scene, node, planned, (leg) => flowIn(named.duct(leg)));
  const ways = waysByLeg(solved.ways);
  const legs = new Map<string, LegResult>();
  for (const leg of planned) {
    const heat = temperatures.get(leg.id) as LegAir;
    const plain = legResult(leg, flowIn(named.duct(leg.id)), air, given, heat);
    legs.set(leg.id, withJunctions(plain, ways.get(leg.id) ?? [], plan, given));
  }
  const run = path.map((leg) => legs.get(leg.id) as LegResult);
  const segments = new Map([...legs].map(([id, result]) => [id, result.segment]));
  return {
    solved: true,
    flow,
    totalPressure,
    staticPressure: totalPressure - (air.density * velocity * velocity) / 2,
    fastest: fastestOf(segments.values()),
    segments,
    fittings: [...legs.values()].flatMap((result) => result.fittings),
    profile: profileOf(
      run,
      (network.pressures.get(named.room) ?? 0) + totalPressure,
      new Map(inRun.map((booster) => [booster.node, booster.pressure])),
    ),
    iterations: network.iterations,
    residual: network.residual,
    stall: network.stall.filter((note) => note.edge === named.fan(node)),
    path: path.map((leg) => leg.id),
    boosters: inRun,
    house,
    sound: soundOf(scene, { node, hood }, setting, run, inRun, { flow, totalPressure }),
    rounds: { count: solved.rounds, change: solved.change },
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
function pathFrom(node: string, legs: readonly PlannedLeg[], flowIn: (leg: string) => number): PlannedLeg[] {
  const leaving = new Map<string, PlannedLeg>();
  for (const leg of legs) {
    const best = leaving.get(leg.from);
    if (flowIn(leg.id) > (best ? flowIn(best.id) : 0)) leaving.set(leg.from, leg);
  }
  const path: PlannedLeg[] = [];
  let next = leaving.get(node);
  while (next && path.length < legs.length) {
    path.push(next);
    next = leaving.get(next.to);
  }
  return path;
}

function boostersOn(
  path: readonly PlannedLeg[],
  { boosters: placed, air }: Scene,
  running: ReadonlyMap<string, FanCurve>,
  setting: number,
  flowIn: (edge: string) => number,
): BoosterResult[] {
  return path.flatMap((leg) => {
    const curve = running.get(leg.to);
    const hood = placed.find((place) => place.node === leg.to)?.hood;
    if (!curve || !hood) return [];
    const flow = flowIn(named.fan(leg.to));
    const speed = hood.speeds[settingOf(hood, setting)]?.name ?? '';
    return [{ node: leg.to, name: hood.name, speed, flow, pressure: fanTotalPressure(curve, flow, air) }];
  });
}

function waysByLeg(ways: readonly WayLoss[]): ReadonlyMap<string, WayLoss[]> {
  const byLeg = new Map<string, WayLoss[]>();
  for (const way of ways) {
    const leg = way.edge.slice(named.duct('').length);
    byLeg.set(leg, [...(byLeg.get(leg) ?? []), way]);
  }
  return byLeg;
}
