import type { FormulaBlock, JobSheet, SheetBlock, SheetTable } from '../files/job-sheet/types.ts';
import { words } from '../words/index.ts';
import { table } from './table.ts';

const say = words.jobSheet.print;

/** A job sheet as text; its drawings and charts are named only. */
export function sheetText({ title, sections }: JobSheet): string {
  const facts = title.facts.map(({ label, text }) => `${label}: ${text}`);
  return [
    [title.heading, ...facts].join('\n'),
    ...sections.flatMap((section) => [underlined(section.title), ...section.blocks.map(blockText)]),
  ]
    .filter((text) => text !== '')
    .map((text) => `${text}\n`)
    .join('\n');
}

function underlined(text: string): string {
  return `${text}\n${'='.repeat(text.length)}`;
}

function blockText(block: SheetBlock): string {
  switch (block.kind) {
    case 'text':
    case 'heading':
      return block.text;
    case 'facts':
      return block.facts.map(({ label, text }) => `  ${label}: ${text}`).join('\n');
    case 'cautions':
      return block.cautions.map((caution) => `! ${caution}`).join('\n');
    case 'findings':
      if (block.findings.length === 0) return block.none;
      return block.findings
        .map(({ mark, message, place, remedy, source }) =>
          [
            `${mark}: ${message}`,
            ...(place === '' ? [] : [`${say.where} ${place}`]),
            ...(remedy === '' ? [] : [`${say.remedy} ${remedy}`]),
            ...(source === '' ? [] : [`${say.source} ${source}`]),
          ].join('\n  '),
        )
        .join('\n');
    case 'table':
      return tableText(block);
    case 'formula':
      return formulaText(block);
    case 'drawing':
    case 'chart':
      return `[${block.description}]`;
    case 'signatures':
      return block.lines.map((line) => `${line}: ${'_'.repeat(40)}`).join('\n\n');
  }
}

function tableText({ caption, columns, rows, notes }: SheetTable): string {
  const body = table(
    rows,
    columns.map(({ head, unit, align }, i) => ({
      title: unit === undefined ? head : `${head}, ${unit}`,
      align,
      cell: ({ cells }) => cells[i]?.text ?? '',
    })),
  ).trimEnd();
  return [...(caption ? [caption] : []), body, ...notes].join('\n');
}

function formulaText({ number, title, formula, inputs, tables, sources, notes }: FormulaBlock): string {
  return [
    `${number} ${title}`,
    `  ${formula}`,
    ...inputs.map(({ symbol, name, unit, from }) => {
      const said = [name, unit, from].filter(Boolean).join(', ');
      return `    ${symbol}: ${said}`;
    }),
    ...tables.map(tableText),
    ...sources.map((source) => `  ${say.source} ${source}`),
    ...notes.map((note) => `  ${note}`),
  ].join('\n');
}
