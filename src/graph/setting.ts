import { type Junction, type JunctionSolution, solveWithJunctions } from '../hydraulics/junction-solve.ts';
import { area } from '../hydraulics/section.ts';
import type { Air, FanCurve } from '../hydraulics/types.ts';
import { words } from '../words/index.ts';
import type { Hood, Job, Scheme } from './document.ts';
import { houseOf, limitOf, makeUpToHold } from './house.ts';
import { named } from './named.ts';
import { hasWayOut, toNetwork } from './network.ts';
import type { Plan } from './plan.ts';
import type { Route } from './route.ts';
import type { HouseResult } from './solution.ts';
import { type SpeedCurve, speedCurve } from './speeds.ts';

const says = words.route.unsolved;

/** A hood, or a fan in the run, where it stands in the scheme. */
export interface Placed {
  readonly node: string;
  readonly hood: Hood;
}

/** One scheme with all that surrounds it, before any fan runs. */
export interface Scene {
  readonly job: Pick<Job, 'air' | 'kitchen' | 'house' | 'exits'>;
  readonly scheme: Scheme;
  readonly route: Route;
  readonly plan: Plan;
  readonly air: Air;
  readonly placed: readonly Placed[];
  readonly boosters: readonly Placed[];
  readonly junctions: readonly Junction[];
}

/** One solve: the fans that ran, what came of it, and for the others why they did not. */
export interface SettingSolution {
  readonly fans: ReadonlyMap<string, FanCurve>;
  readonly boosters: ReadonlyMap<string, FanCurve>;
  readonly idle: ReadonlyMap<string, string>;
  readonly solved: JunctionSolution;
  readonly house: HouseResult | null;
}

/** Hoods of the job as they stand in the scheme, in the order of the job. */
export function placedHoods(scheme: Scheme, hoods: readonly Hood[]): Placed[] {
  return hoods.flatMap((hood) =>
    scheme.nodes
      .filter((node) => node.role === 'hood' && node.hood === hood.id)
      .map((node) => ({ node: node.id, hood })),
  );
}

/** Fans in the run that the air can pass: one leg in, one leg out, and data behind them. */
export function placedBoosters(scheme: Scheme, hoods: readonly Hood[], route: Route): Placed[] {
  return scheme.nodes.flatMap((node) => {
    const hood = node.role === 'fan' ? hoods.find((candidate) => candidate.id === node.fan) : undefined;
    const legs = route.nodes.get(node.id)?.segments ?? [];
    const arriving = legs.filter((id) => route.segments.get(id)?.to === node.id);
    return hood && legs.length === 2 && arriving.length === 1 ? [{ node: node.id, hood }] : [];
  });
}

/** Where three or more ducts meet, with what their losses depend on. */
export function junctionsOf(route: Route): Junction[] {
  return [...route.nodes.values()]
    .filter((node) => node.kind === 'junction')
    .map((node) => ({
      id: node.id,
      ports: node.segments.flatMap((id) => {
        const leg = route.segments.get(id);
        if (!leg) return [];
        const inward = leg.to === node.id;
        const [x, y, z] = leg.direction;
        const away = inward ? ([-x, -y, -z] as const) : leg.direction;
        return [{ edge: named.duct(id), inward, area: area(leg.section), away }];
      }),
    }));
}

/** The curve of a fan at a setting: its speed of that number, or its highest where it has fewer. */
export function curveAt(hood: Hood, setting: number): SpeedCurve {
  return speedCurve(hood, settingOf(hood, setting));
}

/** Index of the speed that a fan runs at when the setting is `setting`. */
export function settingOf(hood: Hood, setting: number): number {
  return Math.min(setting, hood.speeds.length - 1);
}

/** Solves the network with every hood and every fan in the run at one setting. */
export function solveSetting(scene: Scene, setting: number): SettingSolution {
  const { route, plan, air, job } = scene;
  const fans = new Map<string, FanCurve>();
  const idle = new Map<string, string>();
  for (const { node, hood } of scene.placed) {
    const speed = curveAt(hood, setting);
    const reason = cannotBlow(route, node) ?? (speed.known ? undefined : speed.reason);
    if (reason === undefined && speed.known) fans.set(node, speed.curve);
    else idle.set(node, reason ?? says.cannotRun);
  }
  const boosters = new Map<string, FanCurve>();
  for (const { node, hood } of scene.boosters) {
    const speed = curveAt(hood, setting);
    if (speed.known) boosters.set(node, speed.curve);
  }
  const solveAround = (around: Parameters<typeof toNetwork>[4]) =>
    solveWithJunctions(toNetwork(route, plan, fans, boosters, around, air), scene.junctions);
  const solved = solveAround(job.house ? houseOf(job.house) : { pressure: 0 });
  const house = job.house ? houseResult(job.house, solved, fans, solveAround, air) : null;
  return { fans, boosters, idle, solved, house };
}

function cannotBlow(route: Route, node: string): string | undefined {
  if (route.nodes.get(node)?.segments.length === 0) return says.nothingAttached;
  return hasWayOut(route, node) ? undefined : says.noWayOut;
}

/** The house at one setting; where it is beyond its limit, solved once more with the room held there. */
function houseResult(
  drawn: NonNullable<Job['house']>,
  { network }: JunctionSolution,
  fans: ReadonlyMap<string, FanCurve>,
  solveAround: (around: { readonly pressure: number }) => JunctionSolution,
  air: Air,
): HouseResult | null {
  if (!network.converged) return null;
  const house = houseOf(drawn);
  const limit = limitOf(drawn);
  const hoodFlow = (flows: ReadonlyMap<string, number>) =>
    [...fans.keys()].reduce((sum, node) => sum + (flows.get(named.fan(node)) ?? 0), 0);
  const pressure = network.pressures.get(named.room) ?? 0;
  const result = {
    pressure,
    leakage: network.flows.get('house/leakage') ?? 0,
    makeUp:
      house.makeUpAir?.kind === 'fan' ? house.makeUpAir.flow : (network.flows.get('house/make-up') ?? 0),
    hoods: hoodFlow(network.flows),
    otherExhaust: house.otherExhaust,
    limit,
    makeUpNeeded: null,
  };
  if (!limit || -pressure <= limit.value) return result;
  const held = solveAround({ pressure: -limit.value }).network;
  if (!held.converged) return result;
  const makeUpNeeded = makeUpToHold(house, hoodFlow(held.flows), limit.value, air.density);
  return { ...result, makeUpNeeded };
}
