import { words } from '../../../words/index.ts';
import type { Page, TextStyle } from '../../pdf/page.ts';
import type { ChartBlock, Fact, SheetBlock } from '../types.ts';
import { chartHeight, drawChart } from './charts.ts';
import type { Drawn } from './drawn.ts';
import { cautionPieces, findingPieces } from './findings.ts';
import type { Piece } from './flow.ts';
import { formulaPieces } from './formula.ts';
import { inks, pen, sizes, style, type Type } from './look.ts';
import { drawLine } from './shapes.ts';
import { tablePieces } from './table.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';

/** Prose is set no wider than this, mm: a longer line is hard to come back from. */
const measure = 150;

/** A block as pieces of running text `width` mm wide. Drawings have pages of their own and give none. */
export function blockPieces(block: SheetBlock, drawn: Drawn, width: number, type: Type): readonly Piece[] {
  switch (block.kind) {
    case 'text': {
      const size = block.quiet ? sizes.small : sizes.body;
      const set = style(type, size, 'regular', block.quiet ? inks.muted : inks.ink, true);
      return wrapped(block.text, Math.min(width, measure), set).map((line, i, lines) =>
        linePiece(line, set, i === 0 ? 1.5 : 0, lines.length < 5 && i < lines.length - 1),
      );
    }
    case 'heading': {
      const set = style(type, sizes.heading, 'semibold', inks.ink, true);
      const lines = wrapped(block.text, width, set);
      return lines.map((line, i) => linePiece(line, set, i === 0 ? 5 : 0, true));
    }
    case 'facts':
      return factPieces(block.facts, width, type);
    case 'cautions':
      // What they warn of stands on the same page.
      return cautionPieces(block.cautions, width, type).map((piece) => ({ ...piece, keep: true }));
    case 'findings':
      return findingPieces(block, drawn, width, type);
    case 'table':
      return tablePieces(block, width, type);
    case 'chart':
      return chartPieces(block, drawn, width, type);
    case 'formula':
      return formulaPieces(block, width, type);
    case 'signatures':
      return block.lines.map((line) => signaturePiece(line, width, type));
    case 'drawing':
      return [];
  }
}

function linePiece(line: string, set: TextStyle, before: number, keep: boolean): Piece {
  return {
    height: lineHeight(set),
    before,
    ...(keep && { keep }),
    draw: (page, x, y) => drawLines(page, { x, y }, [line], set),
  };
}

/** The heading of a section, with a rule over it. */
export function sectionPiece(title: string, width: number, type: Type): Piece {
  const set = style(type, sizes.section, 'semibold', inks.ink, true);
  const lines = wrapped(title, width, set);
  return {
    height: lines.length * lineHeight(set) + 3,
    before: 8,
    keep: true,
    draw(page, x, y) {
      drawLine(page, { line: pen('edge', inks.accent) }, { x, y }, { x: x + width, y });
      drawLines(page, { x, y: y + 1.8 }, lines, set);
    },
  };
}

/** Labelled lines in two columns. */
function factPieces(facts: readonly Fact[], width: number, type: Type): readonly Piece[] {
  const half = (width - 6) / 2;
  const label = style(type, sizes.small, 'regular', inks.muted, true);
  const text = style(type, sizes.body, 'regular');
  const labelWidth = 38;
  const rows = Array.from({ length: Math.ceil(facts.length / 2) }, (_, i) => facts.slice(2 * i, 2 * i + 2));
  return rows.map((row) => {
    const cells = row.map((fact) => ({
      label: wrapped(fact.label, labelWidth - 2, label),
      text: wrapped(fact.text, half - labelWidth, text),
    }));
    const high = ({ label: a, text: b }: (typeof cells)[number]) =>
      Math.max(a.length * lineHeight(label) + 0.4, b.length * lineHeight(text));
    const height = Math.max(...cells.map(high)) + 1.4;
    return {
      height,
      draw(page, x, y) {
        cells.forEach((cell, i) => {
          const left = x + i * (half + 6);
          drawLines(page, { x: left, y: y + 1.1 }, cell.label, label);
          drawLines(page, { x: left + labelWidth, y: y + 0.7 }, cell.text, text);
          drawLine(
            page,
            { line: pen('fine', inks.faint) },
            { x: left, y: y + height },
            { x: left + half, y: y + height },
          );
        });
      },
    };
  });
}

function chartPieces(block: ChartBlock, drawn: Drawn, width: number, type: Type): readonly Piece[] {
  const set = style(type, sizes.heading, 'semibold', inks.ink, true);
  const height = chartHeight(block, drawn);
  return [
    {
      height: lineHeight(set) + 1,
      before: 4,
      keep: true,
      draw: (page, x, y) => drawLines(page, { x, y }, [block.caption], set),
    },
    {
      height,
      draw: (page: Page, x, y) => drawChart(page, { x, y, width, height }, block, drawn, type),
    },
  ];
}

/** A line to sign on: for whom, the name, and the signature with its date. */
function signaturePiece(line: string, width: number, type: Type): Piece {
  const say = words.jobSheet.signatures;
  const bold = style(type, sizes.body, 'semibold', inks.ink, true);
  const quiet = style(type, sizes.small, 'regular', inks.muted, true);
  const height = 17;
  const columns = [
    { from: 34, to: 34 + (width - 40) * 0.45, text: say.name },
    { from: 40 + (width - 40) * 0.45, to: width, text: say.signature },
  ];
  return {
    height,
    draw(page, x, y) {
      page.text({ x, y: y + height - 5 }, line, bold);
      for (const { from, to, text } of columns) {
        drawLine(
          page,
          { line: pen('edge') },
          { x: x + from, y: y + height - 4 },
          { x: x + to, y: y + height - 4 },
        );
        page.text({ x: x + from, y: y + height - 0.8 }, text, quiet);
      }
    },
  };
}
