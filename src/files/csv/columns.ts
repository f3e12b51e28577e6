import { INCH, type QuantityKind, quantity, type System, unitOf } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Cell, CsvTable } from './csv.ts';

export interface Column<Row> {
  readonly head: string;
  readonly cell: (row: Row) => Cell | undefined;
}

/** Rows of one kind as a table. */
export function tableOf<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): CsvTable {
  return {
    heads: columns.map(({ head }) => head),
    rows: rows.map((row) => columns.map(({ cell }) => cell(row) ?? null)),
  };
}

/** Tables of the same columns one under the other; null where their columns, and so their units, differ. */
export function joined(tables: readonly CsvTable[]): CsvTable | null {
  const heads = tables[0]?.heads ?? [];
  if (tables.some((table) => table.heads.join('\n') !== heads.join('\n'))) return null;
  return { heads, rows: tables.flatMap(({ rows }) => rows) };
}

/** A column of figures in the unit of their kind, which its head names. */
export function measured<Row>(
  head: string,
  kind: QuantityKind,
  units: System,
  of: (row: Row) => number | null | undefined,
): Column<Row> {
  return inUnit(head, unitOf(kind, units), (row) => {
    const si = of(row);
    return si === null || si === undefined ? null : quantity(kind, si, units).value;
  });
}

/** A column of figures that are in their unit already. */
export function inUnit<Row>(
  head: string,
  unit: string,
  of: (row: Row) => number | null | undefined,
): Column<Row> {
  return { head: words.csv.headed(head, unit), cell: (row) => rounded(of(row)) };
}

/** A column of small lengths, such as a duct's sides: inches or millimetres, decimals and no fractions. */
export function small<Row>(
  head: string,
  units: System,
  of: (row: Row) => number | null | undefined,
): Column<Row> {
  const [unit, per] = units === 'imperial' ? ['in', INCH] : ['mm', 0.001];
  return inUnit(head, unit, (row) => {
    const si = of(row);
    return si === null || si === undefined ? null : si / per;
  });
}

/** Six figures: more than any of them is known to, and none that only the computer's arithmetic made. */
function rounded(value: number | null | undefined): number | null {
  return value === null || value === undefined ? null : Number(value.toPrecision(6));
}
