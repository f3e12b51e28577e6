import { requiredAirflow } from '../../advice/required.ts';
import { directionWords } from '../../graph/directions.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { type Places, placesOf } from '../../graph/places.ts';
import type { RouteSegment } from '../../graph/route.ts';
import { sectionWords } from '../../graph/sections.ts';
import type { SegmentResult, Solved, SpeedResult } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import { findBend, findMaterial } from '../../hydraulics/catalogue.ts';
import { words } from '../../words/index.ts';
import { inUnit, measured, small, tableOf } from './columns.ts';
import type { CsvTable } from './csv.ts';

const { route: sayRoute, results: sayResults } = words.csv;

interface LegRow {
  readonly scheme: string;
  readonly number: number;
  readonly leg: RouteSegment;
  readonly places: Places;
  readonly turn: { readonly kind: string; readonly angle: number; readonly radiusRatio: number } | undefined;
  /** At the highest speed that has numbers. */
  readonly speed: string | null;
  readonly result: SegmentResult | undefined;
  /** Of the fittings that the leg is charged with, Pa. */
  readonly fittings: number | null;
}

/** The route leg by leg in the order of the air, with what it carries and costs at the highest speed solved. */
export function routeTable(job: Job, schemeIds: readonly string[]): CsvTable {
  const { units } = job;
  const rows = schemeIds.flatMap((id) => legRows(job, id));
  const across = ({ section }: RouteSegment) =>
    section.shape === 'round' ? section.diameter : section.width;
  return tableOf<LegRow>(rows, [
    { head: sayRoute.scheme, cell: ({ scheme }) => scheme },
    { head: sayRoute.number, cell: ({ number }) => number },
    { head: sayRoute.from, cell: ({ places, leg }) => places.node(leg.from) },
    { head: sayRoute.to, cell: ({ places, leg }) => places.node(leg.to) },
    { head: sayRoute.direction, cell: ({ leg }) => directionWords(leg.direction) },
    measured(sayRoute.length, 'run', units, ({ leg }) => leg.length),
    measured(sayRoute.straight, 'run', units, ({ leg }) => leg.straight),
    { head: sayRoute.size, cell: ({ leg }) => sectionWords(leg.section, units) },
    small(sayRoute.width, units, ({ leg }) => across(leg)),
    small(sayRoute.height, units, ({ leg }) => (leg.section.shape === 'round' ? null : leg.section.height)),
    { head: sayRoute.material, cell: ({ leg }) => findMaterial(leg.material)?.name ?? leg.material },
    small(sayRoute.insulation, units, ({ leg }) => leg.insulation),
    { head: sayRoute.turn, cell: ({ turn }) => turn && (findBend(turn.kind)?.name ?? turn.kind) },
    measured(sayRoute.angle, 'angle', units, ({ turn }) => turn?.angle),
    { head: sayRoute.ratio, cell: ({ turn }) => turn && Number(turn.radiusRatio.toPrecision(4)) },
    { head: sayRoute.speed, cell: ({ speed }) => speed },
    measured(sayRoute.flow, 'flow', units, ({ result }) => result?.flow),
    measured(sayRoute.velocity, 'velocity', units, ({ result }) => result?.velocity),
    measured(sayRoute.friction, 'pressure', units, ({ result }) => result?.frictionLoss),
    measured(sayRoute.fittings, 'pressure', units, ({ fittings }) => fittings),
    { head: sayRoute.id, cell: ({ leg }) => leg.id },
  ]);
}

function legRows(job: Job, schemeId: string): LegRow[] {
  const { route, speeds } = solveScheme(job, schemeId);
  const scheme = schemeOf(job, schemeId).name;
  const places = placesOf(route, job.blocks);
  return route.order.flatMap((id, i): LegRow[] => {
    const leg = route.segments.get(id);
    if (!leg) return [];
    const at = speeds.findLast(({ outcome }) => outcome.solved && outcome.segments.has(id));
    const solved = at?.outcome.solved ? at.outcome : null;
    const charged = solved?.fittings.filter(({ segment }) => segment === id);
    return [
      {
        scheme,
        number: i + 1,
        leg,
        places,
        turn: route.nodes.get(leg.to)?.bend,
        speed: at?.name ?? null,
        result: solved?.segments.get(id),
        fittings: charged ? charged.reduce((sum, { loss }) => sum + loss, 0) : null,
      },
    ];
  });
}

interface SpeedRow extends SpeedResult {
  readonly scheme: string;
  readonly places: Places;
  readonly need: number;
  readonly solved: Solved | null;
}

/** Every scheme at every speed: the air delivered, its pressures, its sound, and what it does to the house. */
export function resultsTable(job: Job, schemeIds: readonly string[]): CsvTable {
  const { units } = job;
  const need = requiredAirflow(job.kitchen).governing.flow;
  const rows = schemeIds.flatMap((id): SpeedRow[] => {
    const { route, speeds } = solveScheme(job, id);
    const places = placesOf(route, job.blocks);
    const scheme = schemeOf(job, id).name;
    return speeds.map((speed) => {
      const solved = speed.outcome.solved ? speed.outcome : null;
      return { ...speed, scheme, places, need, solved };
    });
  });
  return tableOf<SpeedRow>(rows, [
    { head: sayResults.scheme, cell: ({ scheme }) => scheme },
    { head: sayResults.hood, cell: ({ hoodName }) => hoodName },
    { head: sayResults.speed, cell: ({ name }) => name },
    measured(sayResults.delivered, 'flow', units, ({ solved }) => solved?.flow),
    measured(sayResults.rated, 'flow', units, ({ ratedFlow }) => ratedFlow),
    measured(sayResults.required, 'flow', units, (row) => row.need),
    inUnit(sayResults.ofRated, '%', ({ solved, ratedFlow }) =>
      solved && ratedFlow > 0 ? (100 * solved.flow) / ratedFlow : null,
    ),
    measured(sayResults.total, 'pressure', units, ({ solved }) => solved?.totalPressure),
    measured(sayResults.static, 'pressure', units, ({ solved }) => solved?.staticPressure),
    measured(sayResults.fastest, 'velocity', units, ({ solved }) => solved?.fastest?.velocity),
    {
      head: sayResults.in,
      cell: ({ solved, places }) => solved?.fastest && places.leg(solved.fastest.segment),
    },
    inUnit(sayResults.cook, 'dBA', ({ solved }) => solved?.sound.cook.level),
    inUnit(sayResults.sones, sayResults.sone, ({ solved }) => solved?.sound.cook.sones),
    inUnit(sayResults.outside, 'dBA', ({ solved }) => solved?.sound.outside.level),
    measured(sayResults.house, 'pressure', units, ({ solved }) => solved?.house?.pressure),
    { head: sayResults.reason, cell: ({ outcome }) => (outcome.solved ? null : outcome.reason) },
  ]);
}
