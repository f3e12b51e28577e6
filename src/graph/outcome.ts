import { fanTotalPressure } from '../hydraulics/fan.ts';
import type { WayLoss } from '../hydraulics/junction-solve.ts';
import { area } from '../hydraulics/section.ts';
import type { FanCurve } from '../hydraulics/types.ts';
import { type LegAir, temperaturesOf } from './heat.ts';
import { lazily } from './memo.ts';
import { named } from './named.ts';
import { type Run, runFrom } from './network.ts';
import type { PlannedLeg } from './plan.ts';
import { type LegFlow, legResult, profileOf, withJunctions } from './results.ts';
import { type Placed, type Scene, type SettingSolution, settingOf } from './setting.ts';
import type { BoosterResult, Solved, Unsolved } from './solution.ts';
import { soundOf } from './sound.ts';

/**
 * What the air does at one hood and setting, read back from the solved network. What is told leg by leg is put
 * together when it is first asked for: of the speeds that are solved mostly one is shown.
 */
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
  const run = runFrom(route, plan, node);
  const flows = run.legs.map(({ edge }) => flowIn(edge.id));
  const onPath = pathOf(run, flows);
  const idOf = (i: number) => (run.legs[i] as PlannedLeg).id;
  const path = onPath.map(idOf);
  const inRun = boostersOn(path, scene, boosters, setting, flowIn);
  const given = inRun.reduce((sum, booster) => sum + booster.pressure, totalPressure);
  const temperatures = temperaturesOf(scene, node, run, flows);
  const ways = waysByEdge(solved.ways);
  const legFlow = (i: number): LegFlow => {
    const leg = run.legs[i] as PlannedLeg;
    return { leg, flow: flows[i] as number, ways: ways.get(leg.edge.id) ?? [] };
  };
  const legs = lazily(() =>
    run.legs.map((leg, i) => {
      const plain = legResult(leg, flows[i] as number, air, given, temperatures[i] as LegAir);
      return withJunctions(plain, ways.get(leg.edge.id) ?? [], plan, given);
    }),
  );
  const segments = lazily(() => new Map(legs().map(({ segment }) => [segment.id, segment])));
  const fittings = lazily(() => legs().flatMap((result) => result.fittings));
  const profile = lazily(() =>
    profileOf(
      onPath.flatMap((i) => legs()[i] ?? []),
      (network.pressures.get(named.room) ?? 0) + totalPressure,
      new Map(inRun.map((booster) => [booster.node, booster.pressure])),
    ),
  );
  const sound = lazily(() =>
    soundOf(scene, { node, hood }, setting, onPath.map(legFlow), inRun, { flow, totalPressure }),
  );
  return {
    solved: true,
    flow,
    totalPressure,
    staticPressure: totalPressure - (air.density * velocity * velocity) / 2,
    fastest: fastestOf(run, flows),
    get segments() {
      return segments();
    },
    get fittings() {
      return fittings();
    },
    get profile() {
      return profile();
    },
    iterations: network.iterations,
    residual: network.residual,
    stall: network.stall.filter((note) => note.edge === named.fan(node)),
    path,
    condensing: onPath.flatMap((i) => {
      const { wallTemperature, condensation } = temperatures[i] as LegAir;
      const { risk, insulation } = condensation;
      return risk ? [{ segment: idOf(i), wallTemperature, insulation }] : [];
    }),
    boosters: inRun,
    house,
    get sound() {
      return sound();
    },
    rounds: { count: solved.rounds, change: solved.change },
  };
}

function fastestOf({ legs }: Run, flows: readonly number[]): Solved['fastest'] {
  let fastest: Solved['fastest'] = null;
  legs.forEach((leg, i) => {
    const velocity = Math.abs(flows[i] as number) / leg.area;
    if (velocity > (fastest?.velocity ?? 0)) fastest = { segment: leg.id, velocity };
  });
  return fastest;
}

/** The legs from a hood to an exit, by the larger flow wherever the run divides. */
function pathOf({ legs, first, after }: Run, flows: readonly number[]): number[] {
  const path: number[] = [];
  const largest = (ways: readonly number[]) => {
    let best = -1;
    for (const i of ways) if ((flows[i] as number) > (flows[best] ?? 0)) best = i;
    return best;
  };
  let next = largest(first);
  while (next >= 0 && path.length < legs.length) {
    path.push(next);
    next = largest(after[next] ?? []);
  }
  return path;
}

function boostersOn(
  path: readonly string[],
  { boosters: placed, air, route }: Scene,
  running: ReadonlyMap<string, FanCurve>,
  setting: number,
  flowIn: (edge: string) => number,
): BoosterResult[] {
  if (running.size === 0) return [];
  return path.flatMap((leg) => {
    const node = route.segments.get(leg)?.to ?? '';
    const curve = running.get(node);
    const hood = placed.find((place) => place.node === node)?.hood;
    if (!curve || !hood) return [];
    const flow = flowIn(named.fan(node));
    const speed = hood.speeds[settingOf(hood, setting)]?.name ?? '';
    return [{ node, name: hood.name, speed, flow, pressure: fanTotalPressure(curve, flow, air) }];
  });
}

function waysByEdge(ways: readonly WayLoss[]): ReadonlyMap<string, WayLoss[]> {
  const byEdge = new Map<string, WayLoss[]>();
  for (const way of ways) byEdge.set(way.edge, [...(byEdge.get(way.edge) ?? []), way]);
  return byEdge;
}
