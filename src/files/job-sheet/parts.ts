import { costOf, formatMoney, pricesAreInvented } from '../../advice/cost/price.ts';
import { type Part, partWords } from '../../advice/parts.ts';
import { quantity, type System, unitOf } from '../../units/index.ts';
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
          cell: ({ part }) => (part ? amountOf(part, units) : ''),
        },
        { id: 'unit', head: say.unit, weight: 6, cell: ({ part }) => (part ? unitWords(part, units) : '') },
        {
          id: 'each',
          head: say.each,
          align: 'right',
          weight: 9,
          cell: ({ part, price }) => (part && price ? money(price.each) : part ? NONE : ''),
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

const kinds = { m: 'run', m2: 'floorArea' } as const;

function amountOf(part: Part, units: System): SheetCell {
  if (part.unit === 'piece') return { text: String(part.quantity), si: part.quantity };
  return { text: quantity(kinds[part.unit], part.quantity, units).figure, si: part.quantity };
}

function unitWords({ unit }: Part, units: System): string {
  return unit === 'piece' ? say.units.piece : unitOf(kinds[unit], units);
}
