import { parseFlow, parsePressure, quantity, type System } from '../../units/index.ts';
import { words } from '../../words/index.ts';

const says = words.hood.curve;

/** What stands in a cell, and the value that it was made from where nobody has typed over it. */
export interface Cell {
  readonly text: string;
  /** SI; null for what was typed. */
  readonly si: number | null;
}

/** One point of a fan curve as it is typed. */
export interface CurveRow {
  readonly flow: Cell;
  readonly pressure: Cell;
}

export type Column = keyof CurveRow;

/** A table read back: its points in order of flow, or what is wrong and where. */
export type ReadRows =
  | { readonly ok: true; readonly points: [number, number][] }
  | { readonly ok: false; readonly message: string; readonly row?: number; readonly column?: Column };

export const typed = (text: string): Cell => ({ text, si: null });

export const emptyRow: CurveRow = { flow: typed(''), pressure: typed('') };

/** Points [m3/s, Pa] as rows in the reader's units, without the unit. */
export function rowsOf(points: readonly (readonly [number, number])[], system: System): CurveRow[] {
  return points.map(([flow, pressure]) => ({
    flow: { text: quantity('flow', flow, system).figure, si: flow },
    pressure: {
      text: pressure === 0 ? '0' : quantity('pressure', pressure, system).figure,
      si: pressure,
    },
  }));
}

/**
 * Reads rows back. Empty rows are left out, the rest are put in order of flow; a cell that nobody typed
 * over keeps its exact value. Refuses fewer than two points, two at one flow, and pressures that are all 0.
 */
export function readRows(rows: readonly CurveRow[], system: System): ReadRows {
  const points: [number, number][] = [];
  for (const [row, { flow, pressure }] of rows.entries()) {
    if (flow.text.trim() === '' && pressure.text.trim() === '') continue;
    const q = cell(flow, (text) => parseFlow(text, system), says.flowMissing);
    if (!q.ok) return { ok: false, message: q.message, row, column: 'flow' };
    const p = cell(pressure, (text) => parsePressure(text, system), says.pressureMissing);
    if (!p.ok) return { ok: false, message: p.message, row, column: 'pressure' };
    if (points.some(([other]) => other === q.value))
      return {
        ok: false,
        message: says.sameFlow,
        row,
        column: 'flow',
      };
    points.push([q.value, p.value]);
  }
  if (points.length < 2) return { ok: false, message: says.twoPoints };
  if (!points.some(([, pressure]) => pressure > 0)) return { ok: false, message: says.noPressure };
  return { ok: true, points: points.sort(([a], [b]) => a - b) };
}

function cell(
  { text, si }: Cell,
  parse: (text: string) => ReturnType<typeof parseFlow>,
  missing: string,
): ReturnType<typeof parseFlow> {
  if (si !== null) return { ok: true, value: si };
  return text.trim() === '' ? { ok: false, message: missing } : parse(text);
}

/**
 * Two columns copied from a spreadsheet or a table: rows by line, cells by tab, semicolon or spaces.
 * Null for text that is one cell only. A first line without a figure is taken for a heading.
 */
export function pastedRows(text: string): CurveRow[] | null {
  const lines = text
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  if (lines.length < 2 && !/[\t;]/.test(text.trim())) return null;
  const cells = lines.map((line) =>
    line.split(/[\t;]/.test(line) ? /[\t;]/ : /\s{2,}|(?<=[\d.])\s+(?=[\d.-])/).map((part) => part.trim()),
  );
  const [first] = cells;
  const body = first && !first.some((part) => /\d/.test(part)) ? cells.slice(1) : cells;
  return body.map(([flow = '', pressure = '']) => ({ flow: typed(flow), pressure: typed(pressure) }));
}

/** Rows with others put over them from `at` on, the table growing as it must. */
export function withPasted(rows: readonly CurveRow[], at: number, pasted: readonly CurveRow[]): CurveRow[] {
  return [...rows.slice(0, at), ...pasted, ...rows.slice(at + pasted.length)];
}
