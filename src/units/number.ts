import { words } from '../words/index.ts';
import { type Parsed, parsed, refused } from './parsed.ts';
import { currentStyle, type Style } from './style.ts';
import { plain, quoted, readNumber, readSign, unclearWords } from './text.ts';

/** A number without a unit, with so many decimals, as it is read back: `0,62`; a dash where it is not finite. */
export function formatNumber(value: number, decimals = 0, style: Style = currentStyle()): string {
  return Number.isFinite(value) ? style.figure(value, decimals) : '–';
}

/** A number with at most so many decimals, and none that say nothing: `1,5`; a dash where it is not finite. */
export function formatTrimmed(value: number, decimals = 2, style: Style = currentStyle()): string {
  return Number.isFinite(value) ? style.figure(value, decimals, { least: 0 }) : '–';
}

/** A number to so many significant figures, without zeros that say nothing: `0,2431`, `142300`; a dash where it is not finite. */
export function formatSignificant(value: number, digits = 4, style: Style = currentStyle()): string {
  if (!Number.isFinite(value)) return '–';
  const size = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  const decimals = Math.min(20, Math.max(0, digits - 1 - size));
  return style.figure(Number(value.toPrecision(digits)), decimals, { least: 0 });
}

/** A share of 1 as percent: `0.784` as "78 %"; small shares keep a digit. */
export function formatPercent(share: number, style: Style = currentStyle()): string {
  const value = 100 * share;
  return `${formatNumber(value, Math.abs(value) < 9.95 && Math.abs(value) >= 0.05 ? 1 : 0, style)} %`;
}

/** A number that is only shown, its thousands set apart from five figures on: `45.678`; a dash where it is not finite. */
export function formatLarge(value: number, decimals = 0, style: Style = currentStyle()): string {
  return Number.isFinite(value) ? style.figure(value, decimals, { grouped: true }) : '–';
}

/**
 * A number without a unit as people type it, with the locale's decimal sign or another's, `1 1/2` and `½`
 * included. Refuses anything after it, and a sign that is a decimal to some and groups thousands to others.
 */
export function parseNumber(text: string, style: Style = currentStyle()): Parsed {
  const [sign, unsigned] = readSign(plain(text));
  const read = readNumber(unsigned, style);
  if (read?.rest !== '') return refused(words.units.number.unread(quoted(text)));
  if (read.unclear) return refused(unclearWords(text, read, style));
  return parsed(read.value === 0 ? 0 : sign * read.value);
}
