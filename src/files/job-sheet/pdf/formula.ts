import type { FormulaRun } from '../../../graph/derive/formula.ts';
import { words } from '../../../words/index.ts';
import { POINT } from '../../pdf/font.ts';
import type { Page } from '../../pdf/page.ts';
import type { FormulaBlock, FormulaInput } from '../types.ts';
import type { Piece } from './flow.ts';
import { inks, sizes, style, type Type } from './look.ts';
import { drawRuns, wrappedRuns } from './runs.ts';
import { tablePieces } from './table.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';

const formulaSize = 9.5;

/** A formula with what goes into it, its sources, and every place where it was used. */
export function formulaPieces(block: FormulaBlock, width: number, type: Type): readonly Piece[] {
  const heading = style(type, sizes.heading, 'semibold', inks.ink, true);
  const title = wrapped(`${block.number}  ${block.title}`, width, heading);
  const lines = wrappedRuns(block.runs, width - 6, formulaSize, type);
  const formulaHeight = lines.length * formulaSize * POINT * 1.55;
  const quiet = style(type, sizes.small, 'regular', inks.muted, true);
  const prose = [
    ...block.sources.map((source) => `${words.paper.formula.sources}${source}`),
    ...block.notes,
  ].flatMap((text) => wrapped(text, Math.min(width, 160), quiet));
  return [
    {
      height: title.length * lineHeight(heading),
      before: 5,
      keep: true,
      draw: (page, x, y) => drawLines(page, { x, y }, title, heading),
    },
    {
      height: formulaHeight + 1,
      before: 0.6,
      keep: true,
      draw(page, x, y) {
        lines.forEach((line, i) => {
          drawRuns(page, { x: x + 6, y: y + (i + 0.75) * formulaSize * POINT * 1.55 }, line, type);
        });
      },
    },
    ...inputPieces(block.inputs, width, type),
    ...(prose.length > 0
      ? [
          {
            height: prose.length * lineHeight(quiet),
            before: 0.6,
            keep: true,
            draw: (page: Page, x: number, y: number) => drawLines(page, { x, y }, prose, quiet),
          },
        ]
      : []),
    ...block.tables.flatMap((table) => tablePieces(table, width, type, sizes.small)),
  ];
}

/** The inputs in running text: symbol, what it is, its unit, and where it comes from. */
function inputPieces(inputs: readonly FormulaInput[], width: number, type: Type): readonly Piece[] {
  if (inputs.length === 0) return [];
  const runs = inputs.flatMap(({ runs: symbol, name, unit, from }, i): FormulaRun[] => {
    const origin = from === undefined ? '' : ` (${words.paper.formula.from(from)})`;
    const end = i === inputs.length - 1 ? '' : '; ';
    const lead = i === 0 ? `${words.paper.formula.with} ` : '';
    return [
      ...(lead ? [{ set: 'upright' as const, text: lead }] : []),
      ...symbol,
      { set: 'upright', text: ` ${name}${unit === '' ? '' : `, ${unit}`}${origin}${end}` },
    ];
  });
  const lines = wrappedRuns(runs, width, sizes.table, type);
  const high = sizes.table * POINT * 1.5;
  return [
    {
      height: lines.length * high,
      keep: true,
      draw(page, x, y) {
        lines.forEach((line, i) => {
          drawRuns(page, { x, y: y + (i + 0.72) * high }, line, type);
        });
      },
    },
  ];
}
