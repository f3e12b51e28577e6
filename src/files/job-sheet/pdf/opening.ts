import type { TitleBlock } from '../types.ts';
import type { Piece } from './flow.ts';
import { inks, sizes, style, type Type } from './look.ts';
import { drawLines, lineHeight, wrapped } from './text.ts';

/** The head of a sheet's first page: what it is, the job and the scheme. */
export function openingPiece(title: TitleBlock, width: number, type: Type): Piece {
  const kind = style(type, sizes.body, 'semibold', inks.accent, true);
  const large = style(type, sizes.title, 'semibold', inks.ink, true);
  const sub = style(type, sizes.section, 'regular', inks.muted, true);
  const job = wrapped(title.job, width, large);
  const scheme = wrapped(title.scheme, width, sub);
  return {
    height: lineHeight(kind) + job.length * lineHeight(large) + scheme.length * lineHeight(sub),
    draw(page, x, y) {
      let at = y + drawLines(page, { x, y }, [title.heading], kind);
      at += drawLines(page, { x, y: at }, job, large);
      drawLines(page, { x, y: at }, scheme, sub);
    },
  };
}
