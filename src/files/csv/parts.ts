import { costOf, currency } from '../../advice/cost/price.ts';
import { unitOfPart, weightAmount } from '../../advice/parts/amount.ts';
import { type Cut, type CuttingPlan, cuttingOf } from '../../advice/parts/plan.ts';
import { partWords } from '../../advice/parts.ts';
import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { placesOf } from '../../graph/places.ts';
import { sectionWords } from '../../graph/sections.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import { formatLength } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { type Column, inUnit, measured, small, tableOf } from './columns.ts';
import type { CsvTable } from './csv.ts';

const { parts: says, cutting: sayCutting } = words.csv;

/** What has to be bought for each scheme, with weights and prices; one part a row. */
export function partsTable(job: Job, schemeIds: readonly string[]): CsvTable {
  const { units } = job;
  const rows = schemeIds.flatMap((id) => {
    const { name } = schemeOf(job, id);
    return costOf(job, id).lines.map((line) => ({ ...line, scheme: name }));
  });
  type Row = (typeof rows)[number];
  const amount = (head: string, unit: Row['part']['unit']): Column<Row> => {
    const { unit: name, per } = unitOfPart({ unit }, units);
    return inUnit(head, name, ({ part }) => (part.unit === unit ? part.quantity / per : null));
  };
  const weight = weightAmount(undefined, units);
  return tableOf<Row>(rows, [
    { head: says.scheme, cell: ({ scheme }) => scheme },
    { head: says.kind, cell: ({ part }) => says.kinds[part.kind] },
    { head: says.part, cell: ({ part }) => partWords(part, units) },
    { head: says.pieces, cell: ({ part }) => (part.unit === 'piece' ? part.quantity : null) },
    amount(says.length, 'm'),
    amount(says.area, 'm2'),
    amount(says.volume, 'L'),
    { head: says.stockLengths, cell: ({ part }) => part.stock?.count },
    measured(says.stockLength, 'run', units, ({ part }) => part.stock?.length),
    inUnit(says.weight, weight.unit, ({ part }) =>
      part.weight === undefined ? null : part.weight / weight.per,
    ),
    inUnit(says.each, currency, ({ part, price }) => price && price.each * unitOfPart(part, units).per),
    { head: says.per, cell: ({ part, price }) => price && unitOfPart(part, units).unit },
    inUnit(says.amount, currency, ({ amount: paid }) => paid),
    { head: says.from, cell: ({ price }) => says.priceFrom[price?.from ?? 'none'] },
    { head: says.key, cell: ({ part }) => part.key },
  ]);
}

interface CutRow {
  readonly scheme: string;
  readonly plan: CuttingPlan;
  /** Number of the stock length, from 1; number of the piece in it. */
  readonly bar: number;
  readonly piece: number;
  readonly cut: Cut;
  /** Of the last piece of a length. */
  readonly offcut: number | null;
  readonly where: string;
}

/** Every piece of duct to cut, stock length by stock length. */
export function cuttingTable(job: Job, schemeIds: readonly string[]): CsvTable {
  const { units } = job;
  const rows = schemeIds.flatMap((id) => cutRows(job, id));
  return tableOf<CutRow>(rows, [
    { head: sayCutting.scheme, cell: ({ scheme }) => scheme },
    { head: sayCutting.size, cell: ({ plan }) => sectionWords(plan.section, units) },
    { head: sayCutting.material, cell: ({ plan }) => findMaterial(plan.material)?.name ?? plan.material },
    measured(sayCutting.stock, 'run', units, ({ plan }) => plan.stock),
    { head: sayCutting.bar, cell: ({ bar }) => bar },
    { head: sayCutting.piece, cell: ({ piece }) => piece },
    small(sayCutting.cut, units, ({ cut }) => cut.length),
    { head: sayCutting.asWritten, cell: ({ cut }) => formatLength(cut.length, units) },
    small(sayCutting.covers, units, ({ cut }) => cut.covers),
    { head: sayCutting.where, cell: ({ where }) => where },
    small(sayCutting.offcut, units, ({ offcut }) => offcut),
  ]);
}

function cutRows(job: Job, schemeId: string): CutRow[] {
  const scheme = schemeOf(job, schemeId);
  const { plans, route } = cuttingOf(job, schemeId);
  const places = placesOf(route, job.blocks);
  return plans.flatMap((plan) =>
    plan.bars.flatMap(({ cuts, offcut }, b) =>
      cuts.map((cut, p) => ({
        scheme: scheme.name,
        plan,
        bar: b + 1,
        piece: p + 1,
        cut,
        offcut: p === cuts.length - 1 ? offcut : null,
        where: cut.segments.map(places.leg).join(sayCutting.and),
      })),
    ),
  );
}
