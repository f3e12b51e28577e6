import { directionWords } from '../../graph/directions.ts';
import { sentence } from '../../graph/places.ts';
import { type PlannedFitting, type PlannedLeg, planOf } from '../../graph/plan.ts';
import { sectionWords } from '../../graph/sections.ts';
import type { FittingResult, SegmentResult } from '../../graph/solution.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import { formatDiameter, formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Design, Subject } from './subject.ts';
import { type ColumnOf, figures, NONE, shares, tableOf } from './tables.ts';
import type { SheetBlock } from './types.ts';

const say = words.jobSheet.route;

type RouteRow =
  | {
      readonly kind: 'leg';
      readonly leg: PlannedLeg;
      readonly result: SegmentResult | undefined;
      readonly design: Design | undefined;
    }
  | {
      readonly kind: 'fitting';
      readonly id: string;
      readonly label: string;
      readonly at: string;
      readonly leg: PlannedLeg;
      readonly result: FittingResult | undefined;
    }
  | { readonly kind: 'total'; readonly design: Design };

/**
 * The run as it is built, in the order of the air: each leg with the fittings that it is charged with, then the
 * whole path of each hood. Air and losses are those of the highest speed that has a solution.
 */
export function routeBlocks(subject: Subject): SheetBlock[] {
  const { designs, solution, units, scheme } = subject;
  const rows = rowsOf(subject);
  if (rows.length === 0) return [{ kind: 'text', text: say.empty }];
  const drawn = (id: string) => solution.route.segments.get(id);
  const columns: ColumnOf<RouteRow>[] = [
    {
      id: 'number',
      head: say.number,
      align: 'right',
      weight: 4,
      cell: (row) => (row.kind === 'leg' ? String(subject.legNumbers.get(row.leg.id) ?? NONE) : ''),
    },
    { id: 'part', head: say.part, weight: 37, cell: (row) => partWords(row, subject) },
    {
      id: 'direction',
      head: say.direction,
      weight: 11,
      cell: (row) => {
        const leg = row.kind === 'leg' ? drawn(row.leg.id) : undefined;
        return leg ? directionWords(leg.direction) || NONE : '';
      },
    },
    {
      id: 'length',
      head: say.length,
      align: 'right',
      weight: 13,
      cell: (row) => {
        if (row.kind === 'fitting') return '';
        const si = row.kind === 'leg' ? row.leg.length : pathLength(row.design, subject);
        return { text: formatLength(si, units), si };
      },
    },
    {
      id: 'size',
      head: say.size,
      weight: 14,
      cell: (row) => (row.kind === 'leg' ? sectionWords(row.leg.section, units) : ''),
    },
    {
      id: 'material',
      head: say.material,
      weight: 14,
      cell: (row) => {
        const leg = row.kind === 'leg' ? drawn(row.leg.id) : undefined;
        if (!leg) return '';
        const name = findMaterial(leg.material)?.name ?? leg.material;
        return leg.insulation > 0 ? say.insulated(name, formatDiameter(leg.insulation, units)) : name;
      },
    },
    figures('velocity', say.velocity, 'velocity', units, (row) =>
      row.kind === 'leg' ? row.result?.velocity : null,
    ),
    {
      ...figures<RouteRow>('equivalent', say.equivalent, 'run', units, (row) => equivalentOf(row)),
      weight: 11,
    },
    figures('loss', say.loss, 'pressure', units, (row) => lossOf(row)),
    shares('share', say.share, (row) => (row.kind === 'total' ? null : row.result?.share)),
  ];
  const notes = [
    ...designs.map(({ speed }) => say.atSpeed(speed.hoodName, speed.name)),
    ...(designs.length === 0 ? [say.unsolved] : []),
    ...(scheme.notes ? [scheme.notes] : []),
  ];
  return [
    tableOf('route', rows, columns, {
      rowId: (row) =>
        row.kind === 'leg' ? row.leg.id : row.kind === 'fitting' ? row.id : `path/${row.design.speed.hood}`,
      total: (row) => row.kind === 'total',
      notes,
    }),
  ];
}

function partWords(row: RouteRow, { designs, places }: Subject): string {
  if (row.kind === 'total') return designs.length > 1 ? say.totalOf(row.design.speed.hoodName) : say.total;
  const place = (id: string) => places.brief(id);
  if (row.kind === 'leg') return say.legTo(place(row.leg.to));
  return row.at === row.leg.id ? sentence(row.label) : say.at(sentence(row.label), place(row.at));
}

function rowsOf({ solution, scheme, designs }: Subject): RouteRow[] {
  const { legs } = planOf(solution.route, scheme);
  const carrying = (id: string) => designs.find(({ solved }) => solved.segments.has(id));
  const rows = legs.flatMap((leg): RouteRow[] => {
    const design = carrying(leg.id);
    const results = design?.solved.fittings.filter(({ segment }) => segment === leg.id) ?? [];
    const planned: readonly Pick<PlannedFitting, 'id' | 'at'>[] = results.length > 0 ? results : leg.fittings;
    const fittings = planned.map((one): RouteRow => {
      const result = results.find(({ id }) => id === one.id);
      const label = result?.label ?? leg.fittings.find(({ id }) => id === one.id)?.loss.label ?? '';
      return { kind: 'fitting', id: one.id, label, at: one.at, leg, result };
    });
    const before = fittings.filter((row) => row.kind === 'fitting' && row.at === leg.from);
    const after = fittings.filter((row) => !before.includes(row));
    return [...before, { kind: 'leg', leg, result: design?.solved.segments.get(leg.id), design }, ...after];
  });
  return [
    ...rows,
    ...(rows.length > 0 ? designs.map((design): RouteRow => ({ kind: 'total', design })) : []),
  ];
}

function pathLength({ solved }: Design, { solution }: Subject): number {
  return solved.path.reduce((sum, id) => sum + (solution.route.segments.get(id)?.length ?? 0), 0);
}

function onPath({ solved }: Design): readonly FittingResult[] {
  const path = new Set(solved.path);
  return solved.fittings.filter(({ segment }) => path.has(segment));
}

function equivalentOf(row: RouteRow): number | null | undefined {
  if (row.kind === 'total')
    return onPath(row.design).reduce((sum, { equivalentLength }) => sum + equivalentLength, 0);
  return row.kind === 'fitting' ? row.result?.equivalentLength : null;
}

function lossOf(row: RouteRow): number | undefined {
  if (row.kind === 'leg') return row.result?.frictionLoss;
  if (row.kind === 'fitting') return row.result?.loss;
  const friction = row.design.solved.path.reduce(
    (sum, id) => sum + (row.design.solved.segments.get(id)?.frictionLoss ?? 0),
    0,
  );
  return friction + onPath(row.design).reduce((sum, { loss }) => sum + loss, 0);
}
