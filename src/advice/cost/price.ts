import file from '#shared/prices.json' with { type: 'json' };
import type { Job } from '../../graph/document.ts';
import { perimeter } from '../../hydraulics/section.ts';
import { formatLarge } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { boughtOf, type Part, partsOf } from '../parts.ts';

export interface Price {
  /** Per metre, square metre, litre or piece. */
  readonly each: number;
  /** `yours` from the job's own list, `example` from the invented one. */
  readonly from: 'yours' | 'example';
}

export interface CostLine {
  readonly part: Part;
  readonly price: Price | null;
  /** Null where the part has no price. */
  readonly amount: number | null;
}

/** Parts only, duct in whole stock lengths: no labour, no tax, no opening and closing of walls. */
export interface Cost {
  readonly total: number;
  readonly lines: readonly CostLine[];
  /** Parts that nobody has priced, which the total leaves out. */
  readonly unpriced: number;
}

/** Said wherever money is shown. */
export const pricesAreInvented = words.partsList.invented;
export const currency: string = file.currency;

type Curve = readonly (readonly number[])[];
const curves = file as unknown as Readonly<Record<string, Readonly<Record<string, Curve>>>>;

/**
 * What one of a part costs: by the job's own price for its key, else by the invented example list, interpolated
 * between diameters and held at the ends of its range; duct that is not round as round duct of the same girth.
 * A bend of less than 90° costs a share of a square one that falls in a straight line (assumption). Null where
 * neither list has it.
 */
export function priceOf(part: Part, own: Job['prices']): Price | null {
  const mine = own[part.key];
  if (mine !== undefined) return { each: mine, from: 'yours' };
  const each = example(part);
  return each === null ? null : { each, from: 'example' };
}

function example(part: Part): number | null {
  if (part.kind === 'insulation') return file.insulation['per m2 and m of thickness'] * (part.thickness ?? 0);
  if (part.kind === 'make-up air') {
    const list = file['make-up air'];
    return part.row === 'opening'
      ? list['opening, each'] + list['opening, per m2'] * (part.size ?? 0)
      : list['fan, each'] + list['fan, per m3/s'] * (part.size ?? 0);
  }
  const plain = (file.each as Readonly<Record<string, number>>)[part.key];
  if (plain !== undefined) return plain;
  const curve = curves[part.kind]?.[part.row];
  if (!curve || !part.section) return null;
  const each = along(curve, perimeter(part.section) / Math.PI);
  if (part.kind !== 'bend') return each;
  const least = file.bendAtNoAngle;
  return each * (least + ((1 - least) * Math.min(part.angle ?? 90, 90)) / 90);
}

function along(curve: Curve, at: number): number {
  const [first] = curve;
  if (!first) return 0;
  let [x0 = 0, y0 = 0] = first;
  if (at <= x0) return y0;
  for (const [x = 0, y = 0] of curve.slice(1)) {
    if (at <= x) return y0 + ((y - y0) * (at - x0)) / (x - x0);
    [x0, y0] = [x, y];
  }
  return y0;
}

/** What the parts of a scheme cost, line by line. @throws RangeError if the job has no scheme of that id */
export function costOf(job: Job, schemeId: string): Cost {
  const lines = partsOf(job, schemeId).map((part): CostLine => {
    const price = priceOf(part, job.prices);
    return { part, price, amount: price && price.each * boughtOf(part) };
  });
  return {
    total: lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0),
    lines,
    unpriced: lines.filter(({ amount }) => amount === null).length,
  };
}

/**
 * What a changed scheme costs more than the one as drawn, parts against parts: nothing is taken to be standing
 * yet. Below zero where it costs less.
 */
export function costDifference(before: Job, after: Job, schemeId: string): number {
  return costOf(after, schemeId).total - costOf(before, schemeId).total;
}

/** Whole units of money in the reader's style: "$240"; `signed` for a difference: "+$240", "−$12", "±$0". */
export function formatMoney(amount: number, signed = false): string {
  const whole = formatLarge(Math.round(Math.abs(amount)));
  const sign = whole === '0' ? (signed ? '±' : '') : amount < 0 ? '−' : signed ? '+' : '';
  return `${sign}${currency}${whole}`;
}

/** A price with its small change: "$0.08". */
export function formatPrice(each: number): string {
  return `${currency}${formatLarge(each, 2)}`;
}
