import { formatPercent, type QuantityKind, quantity, type System, unitOf } from '../../units/index.ts';
import type { SheetCell, SheetColumn, SheetRow, SheetTable } from './types.ts';

/** A column with what stands in it. */
export interface ColumnOf<Row> extends Omit<SheetColumn, 'align'> {
  readonly align?: SheetColumn['align'];
  readonly cell: (row: Row, index: number) => SheetCell | string;
}

/** What a cell without a figure says. */
export const NONE = '–';

/** A table of rows, column by column. */
export function tableOf<Row>(
  id: string,
  rows: readonly Row[],
  columns: readonly ColumnOf<Row>[],
  more: {
    readonly caption?: string;
    readonly notes?: readonly string[];
    readonly rowId?: (row: Row, index: number) => string;
    readonly total?: (row: Row) => boolean;
  } = {},
): SheetTable {
  return {
    kind: 'table',
    id,
    ...(more.caption === undefined ? {} : { caption: more.caption }),
    columns: columns.map(({ cell: _, ...column }) => ({ align: 'left', ...column })),
    rows: rows.map((row, i): SheetRow => {
      const cells = columns.map(({ cell }) => {
        const said = cell(row, i);
        return typeof said === 'string' ? { text: said } : said;
      });
      return { id: more.rowId?.(row, i) ?? String(i), cells, ...(more.total?.(row) ? { total: true } : {}) };
    }),
    notes: more.notes ?? [],
  };
}

/** A column of figures of one kind, its unit in the head; a dash where there is none (`undefined`), nothing where there can be none (`null`). */
export function figures<Row>(
  id: string,
  head: string,
  kind: QuantityKind,
  units: System,
  of: (row: Row) => number | null | undefined,
  poor?: (row: Row) => boolean,
): ColumnOf<Row> {
  return {
    id,
    head,
    unit: unitOf(kind, units),
    align: 'right',
    weight: 8,
    cell: (row) => figureCell(of(row), (si) => quantity(kind, si, units).figure, poor?.(row)),
  };
}

/** A column of shares in percent, with dashes and blanks as for `figures`. */
export function shares<Row>(
  id: string,
  head: string,
  of: (row: Row) => number | null | undefined,
  poor?: (row: Row) => boolean,
): ColumnOf<Row> {
  return {
    id,
    head,
    unit: '%',
    align: 'right',
    weight: 7,
    cell: (row) => {
      const si = of(row);
      const share = si === null || Number.isFinite(si) ? si : undefined;
      return figureCell(share, (known) => formatPercent(known).replace(' %', ''), poor?.(row));
    },
  };
}

function figureCell(
  si: number | null | undefined,
  text: (si: number) => string,
  poor = false,
): SheetCell | string {
  if (si === null) return '';
  if (si === undefined) return NONE;
  return { text: text(si), si, ...(poor && { poor }) };
}
