import { INCH } from './constants.ts';
import { type Parsed, parsed, refused, type System } from './parsed.ts';
import { plain, quoted, readNumber, readSign } from './text.ts';

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

export interface ParseLengthOptions {
  /** What a number without a unit means; inches in the imperial system and mm in the metric. */
  readonly bare?: LengthUnit;
  /** Lets a length be below 0, for a height or a place; refused otherwise. */
  readonly negative?: boolean;
}

/**
 * A length in metres from what people type: `6"`, `3' 4 1/2"`, `3 ft 4 1/2 in`, `40-1/2"`, `150mm`,
 * `1,02 m`, with typographic marks or plain ones. A number without a unit is in inches or mm by
 * `system`, or in inches after feet. Refuses mixed systems, units in the wrong order, an unclear comma
 * (`1,200 m`) and, unless `negative`, anything below 0.
 */
export function parseLength(text: string, system: System, options: ParseLengthOptions = {}): Parsed {
  const bare = options.bare ?? (system === 'imperial' ? 'in' : 'mm');
  const sample = system === 'imperial' ? `3' 4 1/2" or 40.5"` : '1020 mm or 1.02 m';
  const [sign, unsigned] = readSign(plain(text));
  if (unsigned === '') return refused(`Type a length, such as ${sample}.`);
  let rest = unsigned;
  let total = 0;
  let last: LengthUnit | null = null;
  while (rest !== '') {
    const number = readNumber(rest);
    if (!number) return refused(notALength(text, rest, sample));
    const named = readUnit(number.rest);
    const unit: LengthUnit | null = named?.unit ?? (last === null ? bare : last === 'ft' ? 'in' : null);
    if (unit === null) return refused(`${quoted(text)} ends in a number without a unit: write ${sample}.`);
    const held: number | undefined = last === null ? 1 : holds[last][unit];
    if (held === undefined) return refused(wrongOrder(text, last ?? unit, unit, sample));
    if (number.ambiguousComma) return refused(unclearComma(text, number.value));
    total = total * held + number.value;
    last = unit;
    rest = named ? named.rest : number.rest;
    if (!named && rest !== '') return refused(notALength(text, rest, sample));
    rest = rest.replace(/^(?:[-,] ?|and )(?=[\d.])/, '');
  }
  const { times, over } = metres[last ?? bare];
  const length = (total * times) / over;
  if (!Number.isFinite(length)) return refused(`${quoted(text)} is too large to be a length.`);
  if (sign < 0 && length > 0 && !options.negative)
    return refused(`A length cannot be below 0: write ${sample}.`);
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
    ? `${quoted(text)} is not a length: write ${sample}.`
    : `${quoted(text)} is not a length at ${quoted(rest)}: write ${sample}.`;
}

function wrongOrder(text: string, last: LengthUnit, unit: LengthUnit, sample: string): string {
  if (last === unit) return `${quoted(text)} gives ${unit} twice: write ${sample}.`;
  return `${quoted(text)} puts ${unit} after ${last}: write ${sample}.`;
}

function unclearComma(text: string, asDecimal: number): string {
  const thousands = Math.round(asDecimal * 1000);
  return `${quoted(text)} can be read as ${thousands} or as ${asDecimal}: write one of these, without the comma.`;
}

/** A duct's diameter in metres: a length more than 0, with `ø` or `dia` before or after it if liked. */
export function parseDiameter(text: string, system: System): Parsed {
  const stripped = text.replace(/[øØ⌀]|\bdia(?:m(?:eter|etre)?)?\b\.?/gi, ' ').trim();
  const length = parseLength(stripped, system);
  if (length.ok && length.value === 0) return refused('A diameter must be more than 0.');
  return length;
}

export interface FormatLengthOptions {
  /** Smallest fraction of an inch shown is 1/precision; 8 if not given. */
  readonly precision?: 1 | 2 | 4 | 8 | 16 | 32 | 64;
  /** Inches alone, never feet: `40 1/2"`. */
  readonly inchesOnly?: boolean;
}

/**
 * A length as the trade dimensions it: `3'-4 1/2"` to the nearest 1/8 in, `3'-0 1/2"` where inches
 * follow feet with a fraction alone, `4 1/2"` under a foot; whole mm below 10 m, metres with two decimals from there (common practice).
 */
export function formatLength(metres: number, system: System, options: FormatLengthOptions = {}): string {
  if (!Number.isFinite(metres)) return '–';
  if (system === 'metric') {
    const mm = Math.round(metres * 1000);
    return Math.abs(mm) < 10_000 ? `${mm + 0} mm` : `${metres.toFixed(2)} m`;
  }
  const precision = options.precision ?? 8;
  const parts = Math.round((Math.abs(metres) / INCH) * precision);
  const sign = metres < 0 && parts > 0 ? '-' : '';
  const feet = options.inchesOnly ? 0 : Math.floor(parts / (12 * precision));
  const inches = inchesText(parts - feet * 12 * precision, precision, feet > 0);
  return feet > 0 ? `${sign}${feet}'-${inches}"` : `${sign}${inches}"`;
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

/** A duct's diameter or side: `8"`, `3 1/4"` to the nearest 1/8 in; `203 mm` in whole mm. */
export function formatDiameter(metres: number, system: System): string {
  return system === 'imperial'
    ? formatLength(metres, system, { inchesOnly: true })
    : Number.isFinite(metres)
      ? `${Math.round(metres * 1000)} mm`
      : '–';
}
