import { words } from '../words/index.ts';
import { currentStyle, type Style } from './style.ts';

/**
 * Brings typed text to plain characters: typographic primes and quotes become ' and ", `½` becomes
 * ` 1/2`, `m³` becomes `m3`, every kind of space one space, every kind of dash a hyphen. Lower case.
 */
export function plain(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞↉]/g, (c) => ` ${c.normalize('NFKC')}`)
    .replace(/[′’‘`´ʹʼ]/g, "'")
    .replace(/[″”“„ʺ〃]/g, '"')
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replace(/[⁄∕]/g, '/')
    .replace(/[−‐‑‒–—]/g, '-')
    .replace(/''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase();
}

/** The start of a text read as a number, and the rest; `null` where no number begins. */
export interface NumberRead {
  readonly value: number;
  readonly rest: string;
  /**
   * The sign in `1,200` or `1.200` where it is not the locale's decimal sign: 1200 to some people and 1.2, which
   * is `value`, to others.
   */
  readonly unclear: ',' | '.' | null;
}

const mixed = /^(\d+)(?: ?- ?| )(\d+) ?\/ ?(\d+)/;
const fraction = /^(\d+) ?\/ ?(\d+)/;
const spacedThousands = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d/.,]| ?\/)/;
const apostropheThousands = /^\d{1,3}(?:'\d{3})+(?:[.,]\d+)?(?![\d/.,']| ?\/)/;
const digits = /^(?:\d[\d.,]*\d|\d[.,]?|[.,]\d+)/;

/**
 * Reads a number with no sign: `12`, `4.5`, `4,5`, `1 200`, `1/2`, `4 1/2`, `40-1/2`. A point or a comma is the
 * decimal sign wherever it cannot group thousands; where it could, it is if the locale says so, and else
 * `unclear`. Apostrophes group where the locale groups with them, unless they are `feet`.
 * Refuses (`null`) a zero denominator and separators that make no number, such as `1.2.3`.
 */
export function readNumber(text: string, style: Style = currentStyle(), feet = false): NumberRead | null {
  const whole = mixed.exec(text);
  if (whole) return ratio(text, whole[0], Number(whole[1]), Number(whole[2]), Number(whole[3]));
  const part = fraction.exec(text);
  if (part) return ratio(text, part[0], 0, Number(part[1]), Number(part[2]));
  const spaced =
    spacedThousands.exec(text) ?? (style.group === "'" && !feet ? apostropheThousands.exec(text) : null);
  const run = spaced ?? digits.exec(text);
  if (!run) return null;
  const read = decimal(run[0].replace(/[ ']/g, ''), style);
  return read && { ...read, rest: text.slice(run[0].length).trimStart() };
}

function ratio(text: string, taken: string, whole: number, over: number, under: number): NumberRead | null {
  if (under === 0) return null;
  return { value: whole + over / under, rest: text.slice(taken.length).trimStart(), unclear: null };
}

function decimal(figures: string, style: Style): Omit<NumberRead, 'rest'> | null {
  const commas = figures.split(',').length - 1;
  const points = figures.split('.').length - 1;
  let unclear: NumberRead['unclear'] = null;
  let value: number;
  if (commas > 0 && points > 0) {
    const [group, mark] = figures.lastIndexOf(',') > figures.lastIndexOf('.') ? ['.', ','] : [',', '.'];
    const [whole = '', ...after] = figures.split(mark as string);
    if (after.length !== 1 || !grouped(whole, group as string, style)) return null;
    value = Number(figures.replaceAll(group as string, '').replace(mark as string, '.'));
  } else if (commas > 1 || points > 1) {
    const group = commas > 1 ? ',' : '.';
    if (!grouped(figures, group, style)) return null;
    value = Number(figures.replaceAll(group, ''));
  } else {
    const sign = commas > 0 ? ',' : points > 0 ? '.' : null;
    if (sign !== null && sign !== style.decimal && /^[1-9]\d{0,2}[.,]\d{3}$/.test(figures)) unclear = sign;
    value = Number(figures.replace(',', '.'));
  }
  return Number.isFinite(value) ? { value, unclear } : null;
}

function grouped(figures: string, sign: string, { inTwos, group }: Style): boolean {
  const between = inTwos && sign === group ? '2,3' : '3';
  return new RegExp(`^\\d{1,3}(?:\\${sign}\\d{${between}})*\\${sign}\\d{3}$`).test(figures);
}

/** A leading sign taken off: [sign, rest]. */
export function readSign(text: string): [1 | -1, string] {
  if (text.startsWith('-')) return [-1, text.slice(1).trimStart()];
  if (text.startsWith('+')) return [1, text.slice(1).trimStart()];
  return [1, text];
}

/** What was typed, shortened, for a sentence. */
export function quoted(text: string): string {
  const shown = text.trim();
  return words.units.quotedText(shown.length > 24 ? `${shown.slice(0, 23)}…` : shown);
}

/** Why a number is not clear, in the figures of the locale. */
export function unclearWords(
  text: string,
  { value, unclear }: Pick<NumberRead, 'value' | 'unclear'>,
  style: Style,
  length = false,
): string {
  const { comma, point, lengthComma, lengthPoint } = words.units.unclear;
  const say = unclear === '.' ? (length ? lengthPoint : point) : length ? lengthComma : comma;
  return say(quoted(text), String(Math.round(value * 1000)), style.figure(value, 3, { least: 0 }));
}

/** A sample such as `1.02 m` with the locale's decimal sign. */
export function localised(sample: string, { decimal }: Style): string {
  return sample.replace(/(\d)\.(?=\d)/g, `$1${decimal}`);
}
