import { formatNumber, formatTrimmed, type Parsed, parseNumber } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const says = words.kitchen.reading;

/** A number without a unit that a person may type, and what it may be. */
export interface PlainNumber {
  /** "Air changes at 50 Pa": begins the sentence that says what is wrong. */
  readonly what: string;
  readonly low: number;
  readonly high: number;
  /** Spellings of a unit that may follow, such as `%` or `ACH50`. */
  readonly unit?: RegExp;
  readonly whole?: boolean;
}

/** Reads a number as `parseNumber` does; refuses one outside its range with a sentence. */
export function readPlain(text: string, { what, low, high, unit, whole }: PlainNumber): Parsed {
  const range = (whole ? says.wholeRange : says.range)(what, formatTrimmed(low), formatTrimmed(high));
  const read = parseNumber(unit ? text.trim().replace(unit, '') : text);
  if (!read.ok) return { ok: false, message: says.unclear(text.trim(), range) };
  const { value } = read;
  if (value < low || value > high || (whole && !Number.isInteger(value)))
    return { ok: false, message: range };
  return read;
}

/** A share of one from `50 %` or `50`; a share typed as `0.5` is refused, for it may be half a percent. */
export function readPercent(text: string, what: string): Parsed {
  const read = readPlain(text, { what: says.inPercent(what), low: 0, high: 100, unit: /\s*%$/ });
  if (!read.ok) return read;
  if (read.value > 0 && read.value < 1 && !text.includes('%'))
    return {
      ok: false,
      message: says.percentOrShare(
        what.toLowerCase(),
        formatTrimmed(100 * read.value, 4),
        formatTrimmed(read.value, 6),
      ),
    };
  return { ok: true, value: read.value / 100 };
}

/** Holds a value that was read to a range in SI, told in the words of the reader's units. */
export function within(
  read: Parsed,
  low: number,
  high: number,
  what: string,
  show: (si: number) => string,
): Parsed {
  if (!read.ok || (read.value >= low && read.value <= high)) return read;
  return { ok: false, message: says.between(what, show(low), show(high)) };
}

/** Refuses 0 where a quantity must be there. */
export function above(read: Parsed, message: string): Parsed {
  return read.ok && !(read.value > 0) ? { ok: false, message } : read;
}

/** The pressure of a house as the trade speaks of it, in Pa with one decimal: `−4.2 Pa`. */
export function housePascals(pressure: number): string {
  return says.pascals(formatNumber(pressure, 1));
}
