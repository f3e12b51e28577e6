export interface Column<Row> {
  readonly title: string;
  readonly align?: 'left' | 'right';
  readonly cell: (row: Row) => string;
}

/** Rows as plain text in columns, with a rule under the titles. Empty for no rows. */
export function table<Row>(rows: readonly Row[], columns: readonly Column<Row>[], indent = '  '): string {
  if (rows.length === 0) return '';
  const body = rows.map((row) => columns.map((column) => column.cell(row)));
  const titles = columns.map((column) => column.title);
  const widths = columns.map((_, i) =>
    Math.max(...[titles, ...body].map((cells) => widthOf(cells[i] ?? ''))),
  );
  const line = (cells: readonly string[]) =>
    (indent + cells.map((cell, i) => pad(cell, widths[i] ?? 0, columns[i]?.align)).join('  ')).trimEnd();
  return [line(titles), indent + widths.map((width) => '-'.repeat(width)).join('  '), ...body.map(line)]
    .map((text) => `${text}\n`)
    .join('');
}

/** Characters as a terminal shows them: combining marks take no room. */
function widthOf(text: string): number {
  return [...text.normalize('NFC').replace(/\p{Mark}/gu, '')].length;
}

function pad(text: string, width: number, align: 'left' | 'right' = 'left'): string {
  const room = ' '.repeat(Math.max(0, width - widthOf(text)));
  return align === 'right' ? room + text : text + room;
}
