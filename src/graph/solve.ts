import { airAt } from '../hydraulics/air.ts';
import { words } from '../words/index.ts';
import type { Hood, Job, Scheme } from './document.ts';
import { gravestFirst } from './findings/drawing.ts';
import { solvedFindings } from './findings/solved.ts';
import { fitFindings } from './fit.ts';
import { inferRoute, schemeOf } from './infer.ts';
import { memoise } from './memo.ts';
import { outcomeOf } from './outcome.ts';
import { planOf } from './plan.ts';
import type { Finding, Route } from './route.ts';
import {
  junctionsOf,
  type Placed,
  placedBoosters,
  placedHoods,
  type Scene,
  type SettingSolution,
  solveSetting,
} from './setting.ts';
import type { SchemeSolution, SpeedResult } from './solution.ts';
import { speedCurve } from './speeds.ts';

const says = words.route.solve;

/**
 * Solves a scheme at every speed of every hood on it, with the house around the kitchen where the job has
 * one. With several hoods, speed k of one is solved with every other at its speed k, or at its highest where
 * it has fewer; fans in the run likewise.
 *
 * @param job read only; repeated calls with the same scheme, hoods, house and air are free
 * @throws RangeError if the job has no scheme of that id
 */
export function solveScheme(job: Job, schemeId: string): SchemeSolution {
  const { hoods, air, kitchen, house, exits, blocks, units, profile } = job;
  const route = inferRoute(job, schemeId);
  return solved(
    route,
    schemeOf(job, schemeId),
    hoods,
    air,
    kitchen,
    house,
    exits,
    blocks,
    units,
    profile,
    fitFindings(job, route),
  );
}

const solved = memoise(
  (
    route: Route,
    scheme: Scheme,
    hoods: Job['hoods'],
    state: Job['air'],
    kitchen: Job['kitchen'],
    house: Job['house'],
    exits: Job['exits'],
    blocks: Job['blocks'],
    units: Job['units'],
    profile: Job['profile'],
    fit: readonly Finding[],
  ): SchemeSolution => {
    const air = airAt(state);
    const scene: Scene = {
      job: { air: state, kitchen, house, exits },
      scheme,
      route,
      plan: planOf(route, scheme),
      air,
      placed: placedHoods(scheme, hoods),
      boosters: placedBoosters(scheme, hoods, route),
      junctions: junctionsOf(route),
    };
    const settings = Math.max(0, ...scene.placed.map(({ hood }) => hood.speeds.length));
    const solutions = Array.from({ length: settings }, (_, k) => solveSetting(scene, k));
    const ran = scene.placed.map((place) => ({
      ...place,
      speeds: place.hood.speeds.map((_, k) => speedResult(scene, place, k, solutions[k] as SettingSolution)),
    }));
    const inRun = new Set(scheme.nodes.flatMap((node) => (node.role === 'fan' ? (node.fan ?? []) : [])));
    const missing = hoods.filter((hood) => !inRun.has(hood.id));
    return {
      schemeId: scheme.id,
      route,
      air,
      speeds: ran.length > 0 ? ran.flatMap(({ speeds }) => speeds) : missing.flatMap(unplaced),
      findings: gravestFirst([
        ...route.findings,
        ...fit,
        ...solvedFindings({ scene, ran, solutions, blocks, units, profile }),
      ]),
    };
  },
);

/** Without any hood on the sheets every speed of every hood says so, so that a reader sees what is missing. */
function unplaced(hood: Hood): SpeedResult[] {
  return hood.speeds.map(({ name }, speed) => ({
    hood: hood.id,
    hoodName: hood.name,
    speed,
    name,
    ratedFlow: speedCurve(hood, speed).ratedFlow,
    outcome: { solved: false, reason: says.notOnSheets },
  }));
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
    outcome: reason === undefined ? outcomeOf(scene, place, index, setting) : { solved: false, reason },
  };
}
