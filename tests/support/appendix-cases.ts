import type { FormulaBlock, JobSheet, SheetTable } from '../../src/files/job-sheet/types.ts';

/** One use of a formula as it is printed: symbols with their figures, and what came out. */
export interface PrintedCase {
  readonly block: FormulaBlock;
  readonly formula: string;
  readonly inputs: readonly (readonly [symbol: string, figure: string])[];
  readonly result: string;
  /** Where and at which speed, for a test that fails. */
  readonly name: string;
}

export function formulasOf(sheet: JobSheet): FormulaBlock[] {
  return sheet.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'formula' ? [block] : [])),
  );
}

/** Every use of every formula of an appendix, read from its printed tables. */
export function casesOf(sheet: JobSheet): PrintedCase[] {
  return formulasOf(sheet).flatMap((block) =>
    block.tables.flatMap((table) =>
      table.columns.some(({ id }) => id === 'symbol') ? fromColumns(block, table) : fromRows(block, table),
    ),
  );
}

/** A table with a row a place: the inputs stand side by side under their symbols. */
function fromRows(block: FormulaBlock, { columns, rows }: SheetTable): PrintedCase[] {
  const at = (id: string) => columns.findIndex((column) => column.id === id);
  return rows.map((row): PrintedCase => {
    const text = (i: number) => row.cells[i]?.text ?? '';
    return {
      block,
      formula: block.formula,
      inputs: columns.flatMap(({ id, head }, i) =>
        id.startsWith('input ') ? [[head, text(i)] as const] : [],
      ),
      result: text(at('result')),
      name: `${block.number} ${block.title}: ${text(at('where'))}, ${text(at('speed'))}`,
    };
  });
}

/** A table with a column a speed: the inputs stand under each other, the result below them. */
function fromColumns(block: FormulaBlock, { columns, rows }: SheetTable): PrintedCase[] {
  const symbolAt = columns.findIndex(({ id }) => id === 'symbol');
  return columns.flatMap(({ id, head }, i): PrintedCase[] => {
    if (!id.startsWith('speed')) return [];
    const figures = rows.map((row) => [row.cells[symbolAt]?.text ?? '', row.cells[i]?.text ?? ''] as const);
    return [
      {
        block,
        formula: block.formula,
        inputs: figures
          .filter((_, k) => rows[k]?.id.startsWith('input') === true)
          .filter(([, text]) => text !== ''),
        result: figures[rows.findIndex((row) => row.id.startsWith('result'))]?.[1] ?? '',
        name: `${block.number} ${block.title}: ${head}`,
      },
    ];
  });
}
