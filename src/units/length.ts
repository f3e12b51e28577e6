import { words } from '../words/index.ts';
import { FOOT, INCH } from './constants.ts';
import { type Parsed, parsed, refused, type System } from './parsed.ts';
import { currentStyle, type Fraction, type Style } from './style.ts';
import { localised, plain, quoted, readNumber, readSign, unclearWords } from './text.ts';

export type LengthUnit = 'in' | 'ft' | 'mm' | 'cm' | 'm';

/** Metres are `number · times / over`: whole numbers, so that 6 in is 0.1524 m to the last digit. */
const metres: Record<LengthUnit, { readonly times: number; readonly over: number }> = {
  in: { times: 254, over: 10_000 },
  ft: { times: 3048, over: 10_000 },
  mm: { times: 1, over: 1000 },
  cm: { times: 1, over: 100 },
  m: { times: 1, over: 1 },
};

const unitNames: readonly (readonly [RegExp, LengthUnit])[] = [
  [/^(?:"|inch(?:es)?\b|in\b\.?)/, 'in'],
  [/^(?:'|feet\b|foot\b|ft\b\.?)/, 'ft'],
  [/^(?:millimet(?:re|er)s?\b|mm\b\.?)/, 'mm'],
  [/^(?:centimet(?:re|er)s?\b|cm\b\.?)/, 'cm'],
  [/^(?:met(?:re|er)s?\b|m\b\.?)/, 'm'],
];

/** Smaller units that may follow a larger one, as in 3' 4", and how many of them it holds. */
const holds: Readonly<Record<LengthUnit, Partial<Record<LengthUnit, number>>>> = {
  ft: { in: 12 },
  m: { cm: 100, mm: 1000 },
  cm: { mm: 10 },
  in: {},
  mm: {},
};

const say = words.units.length;

export interface ParseLengthOptions {
  /** What a number without a unit means; what the style writes if not given. */
  readonly bare?: LengthUnit;
  /** Lets a length be below 0, for a height or a place; refused otherwise. */
  readonly negative?: boolean;
  readonly style?: Style;
}

/** What a length is written in, and what a number without a unit means: inches, or feet where decimals of feet are written; mm, cm or m. */
function writtenIn(system: System, { inches, metric }: Style): LengthUnit {
  if (system === 'metric') return metric;
  return inches === 'decimal feet' ? 'ft' : 'in';
}

/**
 * A length in metres from what people type: `6"`, `3' 4 1/2"`, `3 ft 4 1/2 in`, `40-1/2"`, `150mm`,
 * `1,02 m`, with typographic marks or plain ones. A number without a unit is in what the style writes
 * in `system` (inches and mm if nothing else was chosen), or in inches after feet. Refuses mixed systems,
 * units in the wrong order, an unclear comma or point (`1,200 m`) and, unless `negative`, anything below 0.
 */
export function parseLength(text: string, system: System, options: ParseLengthOptions = {}): Parsed {
  const style = options.style ?? currentStyle();
  const bare = options.bare ?? writtenIn(system, style);
  const samples = system === 'imperial' ? ['3\' 4 1/2"', '40.5"'] : ['1020 mm', '1.02 m'];
  const [one = '', other = ''] = samples.map((each) => localised(each, style));
  const sample = words.units.either(one, other);
  const [sign, unsigned] = readSign(plain(text));
  if (unsigned === '') return refused(say.missing(sample));
  let rest = unsigned;
  let total = 0;
  let last: LengthUnit | null = null;
  while (rest !== '') {
    const number = readNumber(rest, style, true);
    if (!number) return refused(notALength(text, rest, sample));
    const named = readUnit(number.rest);
    const unit: LengthUnit | null = named?.unit ?? (last === null ? bare : last === 'ft' ? 'in' : null);
    if (unit === null) return refused(say.noUnit(quoted(text), sample));
    const held: number | undefined = last === null ? 1 : holds[last][unit];
    if (held === undefined) return refused(wrongOrder(text, last ?? unit, unit, sample));
    if (number.unclear) return refused(unclearWords(text, number, style, true));
    total = total * held + number.value;
    last = unit;
    rest = named ? named.rest : number.rest;
    if (!named && rest !== '') return refused(notALength(text, rest, sample));
    rest = rest.replace(/^(?:[-,] ?|and )(?=[\d.])/, '');
  }
  const { times, over } = metres[last ?? bare];
  const length = (total * times) / over;
  if (!Number.isFinite(length)) return refused(say.tooLarge(quoted(text)));
  if (sign < 0 && length > 0 && !options.negative) return refused(say.negative(sample));
  return parsed(length === 0 ? 0 : sign * length);
}

function readUnit(text: string): { unit: LengthUnit; rest: string } | null {
  for (const [pattern, unit] of unitNames) {
    const found = pattern.exec(text);
    if (found) return { unit, rest: text.slice(found[0].length).trimStart() };
  }
  return null;
}

function notALength(text: string, rest: string, sample: string): string {
  return rest === plain(text)
    ? say.unread(quoted(text), sample)
    : say.unreadAt(quoted(text), quoted(rest), sample);
}

function wrongOrder(text: string, last: LengthUnit, unit: LengthUnit, sample: string): string {
  if (last === unit) return say.twice(quoted(text), unit, sample);
  return say.wrongOrder(quoted(text), unit, last, sample);
}

/**
 * A duct's diameter or side in metres: a length more than 0, with `ø` or `dia` before or after it if liked.
 * A number without a unit is inches or mm, which sizes are written in whatever lengths are.
 */
export function parseDiameter(text: string, system: System, style: Style = currentStyle()): Parsed {
  const stripped = text.replace(/[øØ⌀]|\bdia(?:m(?:eter|etre)?)?\b\.?/gi, ' ').trim();
  const length = parseLength(stripped, system, { bare: system === 'imperial' ? 'in' : 'mm', style });
  if (length.ok && length.value === 0) return refused(say.noDiameter);
  return length;
}

export interface FormatLengthOptions {
  /** Writes at least to this fraction of an inch, where the style writes coarser ones. */
  readonly atLeast?: Fraction;
  /** Writes to this fraction of an inch and to whole mm at most, where the style writes finer ones. */
  readonly atMost?: Fraction;
  /** Inches alone, never feet: `40 1/2"`. */
  readonly inchesOnly?: boolean;
  readonly style?: Style;
}

/**
 * A length as the trade dimensions it: `3'-4 1/2"` to the nearest fraction of the style (1/8 in if nothing
 * else was chosen), `3'-0 1/2"` where inches follow feet with a fraction alone, `4 1/2"` under a foot;
 * `40.50"` or `3.38 ft` where decimals are chosen. In the metric system whole mm below 10 m and metres with
 * two decimals from there (common practice), or cm with one decimal, or m with three, as chosen. Never grouped.
 */
export function formatLength(metres: number, system: System, options: FormatLengthOptions = {}): string {
  if (!Number.isFinite(metres)) return '–';
  const style = options.style ?? currentStyle();
  if (system === 'metric') return metricLength(metres, style);
  if (style.inches === 'decimal feet' && !options.inchesOnly)
    return `${style.figure(metres / FOOT, options.atLeast ? 3 : 2)} ft`;
  if (typeof style.inches === 'string') return `${style.figure(metres / INCH, 2)}"`;
  const precision = Math.min(Math.max(style.inches, options.atLeast ?? 1), options.atMost ?? 64);
  const parts = Math.round((Math.abs(metres) / INCH) * precision);
  const sign = metres < 0 && parts > 0 ? '−' : '';
  const feet = options.inchesOnly ? 0 : Math.floor(parts / (12 * precision));
  const inches = inchesText(parts - feet * 12 * precision, precision, feet > 0);
  return feet > 0 ? `${sign}${feet}'-${inches}"` : `${sign}${inches}"`;
}

function metricLength(metres: number, style: Style): string {
  if (style.metric === 'm') return `${style.figure(metres, 3)} m`;
  if (style.metric === 'cm') return `${style.figure(metres * 100, 1)} cm`;
  const mm = Math.round(metres * 1000);
  return Math.abs(mm) < 10_000 ? `${style.figure(mm, 0)} mm` : `${style.figure(metres, 2)} m`;
}

function inchesText(parts: number, precision: number, afterFeet: boolean): string {
  const whole = Math.floor(parts / precision);
  let over = parts - whole * precision;
  let under = precision;
  while (over > 0 && over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  if (over === 0) return `${whole}`;
  return whole === 0 && !afterFeet ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

/**
 * A duct's diameter or side: `8"`, `3 1/4"` to the nearest 1/8 in or finer, whole mm: a size that is bought
 * is never rounded to another.
 */
export function formatDiameter(metres: number, system: System, style: Style = currentStyle()): string {
  return system === 'imperial'
    ? formatLength(metres, system, { inchesOnly: true, atLeast: 8, style })
    : Number.isFinite(metres)
      ? `${Math.round(metres * 1000)} mm`
      : '–';
}
