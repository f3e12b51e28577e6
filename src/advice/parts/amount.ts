import { FOOT, formatLength, formatNumber, formatTrimmed, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Part } from './part.ts';

const { units: names } = words.partsList;

/** A figure as it stands in a list: the text, its unit, and how much of the part's own unit that unit is. */
export interface Amount {
  readonly figure: string;
  readonly unit: string;
  /** Metres, square metres, litres or kg in one of `unit`. */
  readonly per: number;
}

const gallon = 3.785411784;
const pound = 0.45359237;

/** The unit that a kind of amount is bought and priced in: feet or metres, square feet or square metres, litres. */
export function unitOfPart({ unit }: Pick<Part, 'unit'>, units: System): Omit<Amount, 'figure'> {
  const imperial = units === 'imperial';
  switch (unit) {
    case 'm':
      return imperial ? { unit: names.foot, per: FOOT } : { unit: names.metre, per: 1 };
    case 'm2':
      return imperial ? { unit: names.squareFoot, per: FOOT ** 2 } : { unit: names.squareMetre, per: 1 };
    case 'L':
      return imperial ? { unit: names.gallon, per: gallon } : { unit: names.litre, per: 1 };
    case 'piece':
      return { unit: names.piece, per: 1 };
  }
}

/** How much of a part the run needs: `18.4 ft`, `12 ea`; pieces are whole, and what is poured keeps two decimals. */
export function amountOf(part: Pick<Part, 'unit' | 'quantity'>, units: System): Amount {
  const { unit, per } = unitOfPart(part, units);
  const value = part.quantity / per;
  if (part.unit === 'piece') return { figure: formatTrimmed(value), unit, per };
  return { figure: formatNumber(value, part.unit === 'L' || units === 'metric' ? 2 : 1), unit, per };
}

/** `5 x 5'-0"`: the stock lengths that duct is bought in; null for what is not. */
export function stockWords({ stock }: Pick<Part, 'stock'>, units: System): string | null {
  return stock ? names.stock(formatNumber(stock.count), formatLength(stock.length, units)) : null;
}

/** What something weighs: `12.4 lb`, `5.6 kg`; a dash where nobody can tell. */
export function weightAmount(kilograms: number | undefined, units: System): Amount {
  const imperial = units === 'imperial';
  const [unit, per] = imperial ? [names.pound, pound] : [names.kilogram, 1];
  return { figure: kilograms === undefined ? '–' : formatNumber(kilograms / per, 1), unit, per };
}
