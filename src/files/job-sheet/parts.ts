import { type CostLine, formatMoney, formatPrice, pricesAreInvented } from '../../advice/cost/price.ts';
import { amountOf, stockWords, unitOfPart, weightAmount } from '../../advice/parts/amount.ts';
import type { Bar, CuttingPlan } from '../../advice/parts/plan.ts';
import { type Totals, totalsOf } from '../../advice/parts/totals.ts';
import { boughtOf, partWords } from '../../advice/parts.ts';
import { sectionWords } from '../../graph/sections.ts';
import { findMaterial } from '../../hydraulics/catalogue.ts';
import { formatLength, formatPercent, formatRun, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { NONE, tableOf } from './tables.ts';
import type { SheetBlock, SheetCell, SheetTable } from './types.ts';

const say = words.jobSheet.parts;

/** What has to be bought, with the prices that the job has or the invented ones, and how the duct is cut. */
export function partBlocks(subject: Subject): SheetBlock[] {
  const totals = totalsOf(subject.job, subject.scheme.id);
  if (totals.cost.lines.length === 0) return [{ kind: 'text', text: say.empty }];
  return [
    listTable(totals, subject.units),
    ...(totals.plans.length > 0 ? [{ kind: 'heading' as const, text: say.cutting }] : []),
    ...totals.plans.map((plan) => planTable(plan, subject)),
  ];
}

type Row = CostLine | 'sum';

function listTable({ cost, weight, unweighed, run, bought, waste }: Totals, units: System): SheetTable {
  const column = (id: string, head: string, width: number, cell: (line: CostLine) => SheetCell | string) => ({
    id,
    head,
    weight: width,
    align: 'right' as const,
    cell: (row: Row) => (row === 'sum' ? '' : cell(row)),
  });
  const { figure, unit } = weightAmount(weight, units);
  return tableOf<Row>(
    'parts',
    [...cost.lines, 'sum'],
    [
      {
        id: 'part',
        head: say.part,
        weight: 44,
        cell: (row) => (row === 'sum' ? say.total : partWords(row.part, units)),
      },
      column('quantity', say.quantity, 12, ({ part }) => ({
        text: textOf(amountOf(part, units)),
        si: part.quantity,
      })),
      column('buy', say.buy, 13, ({ part }) => {
        const text = stockWords(part, units);
        return text === null ? '' : { text, si: boughtOf(part) };
      }),
      column('weight', say.weight, 10, ({ part }) =>
        part.weight === undefined
          ? NONE
          : { text: textOf(weightAmount(part.weight, units)), si: part.weight },
      ),
      column('each', say.each, 9, ({ part, price }) =>
        price ? { text: formatPrice(price.each * unitOfPart(part, units).per), si: price.each } : NONE,
      ),
      {
        id: 'amount',
        head: say.amount,
        align: 'right',
        weight: 9,
        cell: (row) => money(row === 'sum' ? cost.total : row.amount),
      },
      {
        id: 'from',
        head: say.from,
        weight: 9,
        cell: (row) => (row === 'sum' ? '' : say.priceFrom[row.price?.from ?? 'none']),
      },
    ],
    {
      rowId: (row) => (row === 'sum' ? 'total' : row.part.key),
      total: (row) => row === 'sum',
      notes: [
        pricesAreInvented,
        ...(cost.unpriced > 0 ? [say.unpriced(cost.unpriced)] : []),
        say.weighs(`${figure} ${unit}`, unweighed),
        ...(bought > 0
          ? [say.duct(formatRun(run, units), formatRun(bought, units), formatPercent(waste))]
          : []),
        words.partsList.caution,
      ],
    },
  );
}

function planTable(plan: CuttingPlan, { units, legNumbers }: Subject): SheetTable {
  const { key, section, material, bars, stock, waste, proved } = plan;
  const what = `${sectionWords(section, units)} ${(findMaterial(material)?.name ?? material).toLowerCase()}`;
  const legsOf = (segments: readonly string[]) => segments.map((id) => legNumbers.get(id) ?? NONE).join(', ');
  return tableOf<Bar>(
    `cutting/${key}`,
    bars,
    [
      { id: 'bar', head: say.bar, align: 'right', weight: 6, cell: (_, i) => String(i + 1) },
      {
        id: 'pieces',
        head: say.pieces,
        weight: 70,
        cell: ({ cuts }) =>
          cuts
            .map(({ length, segments }) => say.piece(formatLength(length, units), legsOf(segments)))
            .join('; '),
      },
      {
        id: 'left',
        head: say.left,
        align: 'right',
        weight: 14,
        cell: ({ offcut }) => ({ text: formatLength(offcut, units), si: offcut }),
      },
    ],
    { caption: say.plan(what, bars.length, formatLength(stock, units), formatPercent(waste), proved) },
  );
}

function textOf({ figure, unit }: { readonly figure: string; readonly unit: string }): string {
  return `${figure} ${unit}`;
}

function money(amount: number | null): SheetCell {
  return amount === null ? { text: NONE } : { text: formatMoney(amount), si: amount };
}
