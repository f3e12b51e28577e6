import { costOf, formatMoney, formatPrice, pricesAreInvented } from '../../advice/cost/price.ts';
import { amountOf, unitOfPart } from '../../advice/parts/amount.ts';
import { type Part, partWords } from '../../advice/parts.ts';
import type { System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Subject } from './subject.ts';
import { NONE, tableOf } from './tables.ts';
import type { SheetBlock, SheetCell } from './types.ts';

const say = words.jobSheet.parts;

/** What has to be bought, with the prices that the job has or the invented ones. */
export function partBlocks({ job, scheme, units }: Subject): SheetBlock[] {
  const { lines, total, unpriced } = costOf(job, scheme.id);
  if (lines.length === 0) return [{ kind: 'text', text: say.empty }];
  const sum = { part: null, price: null, amount: total };
  const notes = [pricesAreInvented, ...(unpriced > 0 ? [say.unpriced(unpriced)] : [])];
  return [
    tableOf(
      'parts',
      [...lines, sum],
      [
        {
          id: 'part',
          head: say.part,
          weight: 50,
          cell: ({ part }) => (part ? partWords(part, units) : say.total),
        },
        {
          id: 'quantity',
          head: say.quantity,
          align: 'right',
          weight: 9,
          cell: ({ part }) => (part ? figure(part, units) : ''),
        },
        {
          id: 'unit',
          head: say.unit,
          weight: 6,
          cell: ({ part }) => (part ? unitOfPart(part, units).unit : ''),
        },
        {
          id: 'each',
          head: say.each,
          align: 'right',
          weight: 9,
          cell: ({ part, price }) => (part && price ? priceCell(price.each, part, units) : part ? NONE : ''),
        },
        {
          id: 'amount',
          head: say.amount,
          align: 'right',
          weight: 9,
          cell: ({ amount }) => (amount === null ? NONE : money(amount)),
        },
        {
          id: 'from',
          head: say.from,
          weight: 8,
          cell: ({ part, price }) => (part ? say.priceFrom[price?.from ?? 'none'] : ''),
        },
      ],
      { rowId: ({ part }) => part?.key ?? 'total', total: ({ part }) => part === null, notes },
    ),
  ];
}

function money(amount: number): SheetCell {
  return { text: formatMoney(amount), si: amount };
}

/** A price in the unit that the amount stands in. */
function priceCell(each: number, part: Part, units: System): SheetCell {
  return { text: formatPrice(each * unitOfPart(part, units).per), si: each };
}

function figure(part: Part, units: System): SheetCell {
  return { text: amountOf(part, units).figure, si: part.quantity };
}
