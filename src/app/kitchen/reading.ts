import type { Parsed } from '../../units/index.ts';

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

/** Reads a number with a point or a comma for its decimals; refuses one outside its range with a sentence. */
export function readPlain(text: string, { what, low, high, unit, whole }: PlainNumber): Parsed {
  const range = `${what} is a ${whole ? 'whole ' : ''}number from ${low} to ${high}.`;
  const bare = (unit ? text.trim().replace(unit, '') : text).trim().replace('−', '-').replace(',', '.');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(bare))
    return { ok: false, message: `“${text.trim()}” is not clear. ${range}` };
  const value = Number(bare);
  if (value < low || value > high || (whole && !Number.isInteger(value)))
    return { ok: false, message: range };
  return { ok: true, value };
}

/** A share of one from `50 %` or `50`; a share typed as `0.5` is refused, for it may be half a percent. */
export function readPercent(text: string, what: string): Parsed {
  const read = readPlain(text, { what: `${what}, in percent,`, low: 0, high: 100, unit: /\s*%$/ });
  if (!read.ok) return read;
  if (read.value > 0 && read.value < 1 && !text.includes('%'))
    return {
      ok: false,
      message: `Write ${what.toLowerCase()} in percent: ${100 * read.value} % or ${read.value} %?`,
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
  return { ok: false, message: `${what} is between ${show(low)} and ${show(high)}.` };
}

/** Refuses 0 where a quantity must be there. */
export function above(read: Parsed, message: string): Parsed {
  return read.ok && !(read.value > 0) ? { ok: false, message } : read;
}

/** At most `digits` decimals, and none that say nothing. */
export function trimmed(value: number, digits = 2): string {
  return String(Number(value.toFixed(digits)));
}

/** The pressure of a house as the trade speaks of it, in Pa with one decimal: `−4.2 Pa`. */
export function housePascals(pressure: number): string {
  const rounded = Math.abs(pressure).toFixed(1);
  return `${pressure < 0 && rounded !== '0.0' ? '−' : ''}${rounded} Pa`;
}
