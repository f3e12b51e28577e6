/** What stands in a cell; nothing where there is nothing to say. Numbers stay numbers. */
export type Cell = string | number | null;

/** A table as a spreadsheet takes it: units in its heads, one thing a row. */
export interface CsvTable {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * How a spreadsheet of the reader's country reads numbers: a decimal point and commas between cells, or a decimal comma
 * and semicolons.
 */
export type CsvStyle = 'point' | 'comma';

/** So that a spreadsheet takes the text for UTF-8. */
const byteOrderMark = '\uFEFF';
const lineEnd = '\r\n';

/** First characters that some spreadsheet takes for the beginning of a formula; full-width forms are among them. */
const formula = /^[=+\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]/;

/**
 * A table as text for spreadsheets: RFC 4180 with UTF-8 and its mark, lines ended by CR LF. A text that a spreadsheet
 * would take for a formula gets an apostrophe before it, which shows that it is text; a number is written as it is, its
 * sign with it. Values that are not finite leave their cell empty.
 */
export function csvText({ heads, rows }: CsvTable, style: CsvStyle = 'point'): string {
  const separator = style === 'comma' ? ';' : ',';
  const lines = [heads, ...rows].map((row) =>
    row.map((cell) => written(cell, style, separator)).join(separator),
  );
  return byteOrderMark + lines.map((line) => line + lineEnd).join('');
}

function written(cell: Cell, style: CsvStyle, separator: string): string {
  if (cell === null) return '';
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) return '';
    const text = plainDigits(cell);
    return style === 'comma' ? text.replace('.', ',') : text;
  }
  const safe = formula.test(cell) ? `'${cell}` : cell;
  const quotes = safe !== cell || safe !== safe.trim() || /["\r\n]/.test(safe) || safe.includes(separator);
  return quotes ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Digits without an exponent, which some spreadsheets take for text. */
function plainDigits(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : text;
}
