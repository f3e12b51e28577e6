import { words } from '../../../words/index.ts';
import type { FindingsBlock, SheetFinding } from '../types.ts';
import type { Drawn } from './drawn.ts';
import type { Piece } from './flow.ts';
import { drawLetter } from './keys.ts';
import { inks, pen, sizes, style, type Type } from './look.ts';
import { drawLine, drawRect } from './shapes.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';

/** Width of the column that says how grave a finding is, mm. */
const markWidth = 27;
const most = 150;

/** Findings one below the other, with the letters that they have on the drawings. */
export function findingPieces(
  { findings, none }: FindingsBlock,
  drawn: Drawn,
  width: number,
  type: Type,
): readonly Piece[] {
  if (findings.length === 0) {
    const set = style(type, sizes.body, 'regular', inks.ink, true);
    const lines = wrapped(none, Math.min(width, most), set);
    return [
      {
        height: lines.length * lineHeight(set),
        before: 1.5,
        draw: (page, x, y) => drawLines(page, { x, y }, lines, set),
      },
    ];
  }
  return findings.map((finding) => findingPiece(finding, drawn, width, type));
}

function findingPiece(finding: SheetFinding, { lettered }: Drawn, width: number, type: Type): Piece {
  const say = words.paper.findings;
  const letter = lettered.find((each) => each.finding.id === finding.id)?.letter;
  const grave = finding.severity === 'danger' || finding.severity === 'error';
  const mark = style(type, sizes.body, 'semibold', grave ? inks.danger : inks.ink, true);
  const body = style(type, sizes.body, 'regular', inks.ink, true);
  const remedy = style(type, sizes.body, 'semibold', inks.ink, true);
  const small = style(type, sizes.small, 'regular', inks.muted, true);
  const wide = Math.min(width - markWidth, most);
  const under = [
    finding.place && say.where(finding.place),
    finding.source && say.source(finding.source),
  ].filter((text) => text !== '');
  const parts = [
    { lines: wrapped(finding.message, wide, body), set: body },
    { lines: finding.remedy === '' ? [] : wrapped(say.remedy(finding.remedy), wide, remedy), set: remedy },
    { lines: under.flatMap((text) => wrapped(text, wide, small)), set: small },
  ];
  const height = parts.reduce((sum, { lines, set }) => sum + lines.length * lineHeight(set), 0);
  return {
    height: height + 3,
    draw(page, x, y) {
      const top = y + 1.5;
      if (letter) drawLetter(page, { x: x + 2.2, y: top + 2 }, letter, finding.severity, type);
      drawLines(page, { x: x + 6, y: top }, wrapped(finding.mark, markWidth - 7, mark), mark);
      let at = top;
      for (const { lines, set } of parts) at += drawLines(page, { x: x + markWidth, y: at }, lines, set);
      drawLine(
        page,
        { line: pen('fine', inks.faint) },
        { x, y: y + height + 3 },
        { x: x + width, y: y + height + 3 },
      );
    },
  };
}

/** What can hurt someone: each by itself beside a bar, so that it is seen first. */
export function cautionPieces(cautions: readonly string[], width: number, type: Type): readonly Piece[] {
  const set = style(type, sizes.body, 'regular', inks.ink, true);
  const sign = style(type, sizes.section, 'semibold', inks.danger, true);
  return cautions.map((caution, i) => {
    const lines = wrapped(caution, width - 16, set);
    const height = lines.length * lineHeight(set) + 2.4;
    return {
      height,
      ...(i === 0 && { before: 1 }),
      draw(page, x, y) {
        drawRect(page, { x, y, width, height }, { fill: inks.wash });
        drawRect(page, { x, y, width: 1.4, height }, { fill: inks.danger });
        page.text({ x: x + 6, y: y + 1.2 + lineHeight(set) * 0.86 }, '!', sign, 'middle');
        drawLines(page, { x: x + 11, y: y + 1.2 }, lines, set);
      },
    };
  });
}
