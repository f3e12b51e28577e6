import { words } from '../../../words/index.ts';
import type { TitleBlock } from '../types.ts';
import type { Piece } from './flow.ts';
import { inks, sizes, style, type Type } from './look.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';

/** Letters that are named; of more their number stands there. */
const mostNamed = 12;

/** The head of a sheet's first page: what it is, the job and the scheme, and which letters are missing on it. */
export function openingPiece(
  title: TitleBlock,
  lacking: readonly string[],
  width: number,
  type: Type,
): Piece {
  const kind = style(type, sizes.body, 'semibold', inks.accent, true);
  const large = style(type, sizes.title, 'semibold', inks.ink, true);
  const sub = style(type, sizes.section, 'regular', inks.muted, true);
  const job = wrapped(title.job, width, large);
  const scheme = wrapped(title.scheme, width, sub);
  const small = style(type, sizes.small, 'regular', inks.danger, true);
  const missing = lacking.length === 0 ? [] : wrapped(missingLine(lacking), Math.min(width, 150), small);
  return {
    height:
      lineHeight(kind) +
      job.length * lineHeight(large) +
      scheme.length * lineHeight(sub) +
      missing.length * lineHeight(small),
    draw(page, x, y) {
      let at = y + drawLines(page, { x, y }, [title.heading], kind);
      at += drawLines(page, { x, y: at }, job, large);
      at += drawLines(page, { x, y: at }, scheme, sub);
      drawLines(page, { x, y: at }, missing, small);
    },
  };
}

function missingLine(lacking: readonly string[]): string {
  const names = lacking.slice(0, mostNamed).map((letter) => {
    const code = letter.codePointAt(0) ?? 0;
    return `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  });
  return words.paper.letters.onSheet(lacking.length, names.join(', '), lacking.length - names.length);
}
