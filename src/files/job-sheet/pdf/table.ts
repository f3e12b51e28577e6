import type { TextStyle } from '../../pdf/page.ts';
import type { SheetColumn, SheetRow, SheetTable } from '../types.ts';
import type { Piece } from './flow.ts';
import { inks, pen, sizes, style, type Type } from './look.ts';
import { drawSymbol } from './runs.ts';
import { drawLine, drawRect } from './shapes.ts';
import { baseLine, drawLines, lineHeight, wrapped } from './text.ts';

/** Free space on both sides of a cell's text, mm. */
const gutter = 1.5;
/** A head wider than this goes on in a further line, mm. */
const widestHead = 26;
/** Free space above and below it, over the height of a line. */
const padding = (set: TextStyle) => lineHeight(set) * 0.2;

/** A table `width` mm wide: a head that stands again on every page, a row a piece, notes below. */
export function tablePieces(
  table: SheetTable,
  width: number,
  type: Type,
  largest: number = sizes.table,
): readonly Piece[] {
  const { size, widths } = fitted(table, width, type, largest);
  const cell = style(type, size);
  const head = headPiece(table, widths, style(type, size - 0.6, 'semibold'), type);
  const rows = table.rows.map((row, i) => {
    const piece = rowPiece(table.columns, row, widths, cell, type);
    return { ...piece, repeat: head, ...(staysWithNext(table, i) && { keep: true }) };
  });
  return [
    ...(table.caption === undefined ? [] : [captionPiece(table.caption, width, type)]),
    head,
    ...rows,
    ...table.notes.map((note) => notePiece(note, width, type)),
  ];
}

/** True for a row that no page ends with: one whose next is the last, a sum, what is said of a sum, or a note. */
function staysWithNext({ rows, notes }: SheetTable, i: number): boolean {
  const left = rows.length - 1 - i;
  if (left === 0) return notes.length > 0;
  return i === 0 || left === 1 || rows[i]?.total === true || rows[i + 1]?.total === true;
}

/**
 * Widths of the columns at the largest size of text at which no figure and no word is broken. What is left over goes
 * to texts first, then to heads, then to the column with the longest text.
 */
function fitted(table: SheetTable, width: number, type: Type, largest: number) {
  const steps = [sizes.table, 7.5, sizes.small, 6.5, 6, sizes.tiny].filter((size) => size <= largest);
  const sized = steps.map((size) => {
    const natural = table.columns.map((column, i) => naturalWidth(column, i, table.rows, size, type));
    const sum = (of: 'least' | 'full') => natural.reduce((all, each) => all + each[of], 0);
    return { size, natural, least: sum('least'), full: sum('full') };
  });
  const chosen =
    sized.find(({ size, full }) => size >= sizes.small && full <= width) ??
    sized.find(({ least }) => least <= width) ??
    sized[sized.length - 1];
  if (!chosen) return { size: sizes.table, widths: [] };
  const { size, natural, least } = chosen;
  if (least > width) return { size, widths: natural.map((each) => (each.least * width) / least) };
  const widths = natural.map((each) => each.least);
  const grow = (to: (i: number) => number) => {
    const spare = width - widths.reduce((sum, each) => sum + each, 0);
    const wanted = widths.map((each, i) => Math.max(0, to(i) - each));
    const all = wanted.reduce((sum, each) => sum + each, 0);
    const share = all > 0 ? Math.min(1, spare / all) : 0;
    widths.forEach((each, i) => {
      widths[i] = each + (wanted[i] ?? 0) * share;
    });
  };
  const isText = (i: number) => table.columns[i]?.align === 'left';
  grow((i) => (isText(i) ? (natural[i]?.full ?? 0) : 0));
  grow((i) => natural[i]?.head ?? 0);
  const spare = width - widths.reduce((sum, each) => sum + each, 0);
  const texts = natural.map(({ full }, i) => (isText(i) ? full : 0));
  const widest = texts.indexOf(Math.max(...texts));
  return { size, widths: widths.map((each, i) => each + (i === widest ? spare : 0)) };
}

function naturalWidth(column: SheetColumn, i: number, rows: readonly SheetRow[], size: number, type: Type) {
  const cell = style(type, size);
  const bold = style(type, size, 'semibold');
  const head = style(type, size - 0.6, 'semibold');
  const wide = (text: string, set: TextStyle) => set.font.width(text, set.size, set.tabular) + 2 * gutter;
  const longestWord = (text: string, set: TextStyle) =>
    Math.max(0, ...text.split(/\s+/).map((word) => wide(word, set)));
  const texts = rows.map((row) => [row.cells[i]?.text ?? '', row.total ? bold : cell] as const);
  const whole = Math.max(0, ...texts.map(([text, set]) => wide(text, set)));
  const least =
    column.align === 'right' ? whole : Math.max(0, ...texts.map(([t, set]) => longestWord(t, set)));
  const unit = column.unit ? wide(column.unit, head) : 0;
  const inHead = Math.max(unit, column.symbol ? wide(column.head, head) : longestWord(column.head, head));
  return {
    least: Math.max(least, inHead),
    full: Math.max(whole, inHead),
    head: Math.max(whole, Math.min(wide(column.head, head), widestHead)),
  };
}

function captionPiece(caption: string, width: number, type: Type): Piece {
  const set = style(type, sizes.heading, 'semibold', inks.ink, true);
  const lines = wrapped(caption, width, set);
  return {
    height: lines.length * lineHeight(set) + 1,
    before: 4,
    keep: true,
    draw: (page, x, y) => drawLines(page, { x, y }, lines, set),
  };
}

function headPiece(table: SheetTable, widths: readonly number[], set: TextStyle, type: Type): Piece {
  const quiet = { ...set, font: type.regular, colour: inks.muted };
  const cells = table.columns.map(({ head, symbol }, i) => {
    const face = symbol ? { ...set, font: type.italic } : set;
    return { face, lines: wrapped(head, (widths[i] ?? 0) - 2 * gutter + 0.01, face) };
  });
  const units = table.columns.some(({ unit }) => unit) ? 1 : 0;
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const height = (most + units) * lineHeight(set) + 2 * padding(set);
  const width = widths.reduce((sum, each) => sum + each, 0);
  return {
    height,
    before: 2,
    keep: true,
    draw(page, x, y) {
      drawRect(page, { x, y, width, height }, { fill: inks.wash });
      drawLine(page, { line: pen('edge') }, { x, y }, { x: x + width, y });
      drawLine(page, { line: pen('edge') }, { x, y: y + height }, { x: x + width, y: y + height });
      let left = x;
      table.columns.forEach(({ align, unit, symbol, head }, i) => {
        const { face, lines } = cells[i] ?? { face: set, lines: [] };
        const wide = widths[i] ?? 0;
        const at = align === 'right' ? left + wide - gutter : left + gutter;
        const top = y + padding(set) + (most - lines.length) * lineHeight(set);
        if (symbol) drawSymbol(page, { x: at, y: top + baseLine(set) }, head, set.size, align, type);
        else drawLines(page, { x: at, y: top }, lines, face, align);
        if (unit)
          drawLines(page, { x: at, y: y + padding(set) + most * lineHeight(set) }, [unit], quiet, align);
        left += wide;
      });
    },
  };
}

function rowPiece(
  columns: readonly SheetColumn[],
  row: SheetRow,
  widths: readonly number[],
  cell: TextStyle,
  type: Type,
): Piece {
  const cells = columns.map(({ align, symbolCells }, i) => {
    const said = row.cells[i] ?? { text: '' };
    const font = row.total || said.poor ? type.semibold : cell.font;
    const set = { ...cell, font, colour: said.poor ? inks.danger : cell.colour };
    const lines = wrapped(said.text, (widths[i] ?? 0) - 2 * gutter + 0.01, set);
    return { align, set, symbol: symbolCells ? said.text : null, lines };
  });
  const most = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const height = most * lineHeight(cell) + 2 * padding(cell);
  const width = widths.reduce((sum, each) => sum + each, 0);
  return {
    height,
    draw(page, x, y) {
      const line = row.total ? pen('edge') : pen('fine', inks.faint);
      const at = row.total ? y : y + height;
      drawLine(page, { line }, { x, y: at }, { x: x + width, y: at });
      if (row.total) drawLine(page, { line }, { x, y: y + height }, { x: x + width, y: y + height });
      let left = x;
      cells.forEach(({ align, set, symbol, lines }, i) => {
        const wide = widths[i] ?? 0;
        const edge = align === 'right' ? left + wide - gutter : left + gutter;
        const top = y + padding(cell);
        if (symbol) drawSymbol(page, { x: edge, y: top + baseLine(set) }, symbol, set.size, align, type);
        else drawLines(page, { x: edge, y: top }, lines, set, align);
        left += wide;
      });
    },
  };
}

function notePiece(note: string, width: number, type: Type): Piece {
  const set = style(type, sizes.small, 'regular', inks.muted, true);
  const lines = wrapped(note, Math.min(width, 150), set);
  return {
    height: lines.length * lineHeight(set),
    before: 1,
    draw: (page, x, y) => drawLines(page, { x, y }, lines, set),
  };
}
