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
  /** True for `1,200`, which is 1200 to some people and 1.2 to others. */
  readonly ambiguousComma: boolean;
}

const mixed = /^(\d+)(?: ?- ?| )(\d+) ?\/ ?(\d+)/;
const fraction = /^(\d+) ?\/ ?(\d+)/;
const spacedThousands = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?(?![\d/.,]| ?\/)/;
const digits = /^(?:\d[\d.,]*\d|\d[.,]?|[.,]\d+)/;

/**
 * Reads a number with no sign: `12`, `4.5`, `4,5`, `1 200`, `1/2`, `4 1/2`, `40-1/2`.
 * Refuses (`null`) a zero denominator and separators that make no number, such as `1.2.3`.
 */
export function readNumber(text: string): NumberRead | null {
  const whole = mixed.exec(text);
  if (whole) return ratio(text, whole[0], Number(whole[1]), Number(whole[2]), Number(whole[3]));
  const part = fraction.exec(text);
  if (part) return ratio(text, part[0], 0, Number(part[1]), Number(part[2]));
  const spaced = spacedThousands.exec(text);
  const run = spaced ?? digits.exec(text);
  if (!run) return null;
  const read = decimal(run[0].replaceAll(' ', ''));
  return read && { ...read, rest: text.slice(run[0].length).trimStart() };
}

function ratio(text: string, taken: string, whole: number, over: number, under: number): NumberRead | null {
  if (under === 0) return null;
  return { value: whole + over / under, rest: text.slice(taken.length).trimStart(), ambiguousComma: false };
}

function decimal(figures: string): Omit<NumberRead, 'rest'> | null {
  const commas = figures.split(',').length - 1;
  const points = figures.split('.').length - 1;
  const ambiguousComma = points === 0 && /^[1-9]\d{0,2},\d{3}$/.test(figures);
  let value: number;
  if (commas > 0 && points > 0) {
    const [group, mark] = figures.lastIndexOf(',') > figures.lastIndexOf('.') ? ['.', ','] : [',', '.'];
    if (!groupedInThrees(figures.split(mark as string), group as string)) return null;
    value = Number(figures.replaceAll(group as string, '').replace(mark as string, '.'));
  } else if (commas > 1 || points > 1) {
    const group = commas > 1 ? ',' : '.';
    if (!groupedInThrees([figures], group)) return null;
    value = Number(figures.replaceAll(group, ''));
  } else {
    value = Number(figures.replace(',', '.'));
  }
  return Number.isFinite(value) ? { value, ambiguousComma } : null;
}

function groupedInThrees(parts: readonly string[], group: string): boolean {
  if (parts.length > 2) return false;
  const pattern = group === ',' ? /^\d{1,3}(?:,\d{3})+$/ : /^\d{1,3}(?:\.\d{3})+$/;
  return pattern.test(parts[0] ?? '');
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
  return `“${shown.length > 24 ? `${shown.slice(0, 23)}…` : shown}”`;
}
