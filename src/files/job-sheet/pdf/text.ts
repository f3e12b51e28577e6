import { POINT } from '../../pdf/font.ts';
import type { At, Page, TextStyle } from '../../pdf/page.ts';

/** Height of a line of text over its size. */
const leading = 1.38;

/** Height of a line of text, mm. */
export function lineHeight({ size }: TextStyle): number {
  return size * POINT * leading;
}

/** From the top of a line of text to its base line, mm: capitals stand in the middle. */
export function baseLine(style: TextStyle): number {
  return (lineHeight(style) + style.size * POINT * 0.72) / 2;
}

/** Lines of at most `width` mm, broken at spaces; a word that is longer by itself is broken where it must be. */
export function wrapped(text: string, width: number, style: TextStyle): readonly string[] {
  const wide = (line: string) => style.font.width(line, style.size, style.tabular);
  return text.split('\n').flatMap((paragraph) => {
    const lines: string[] = [];
    let line = '';
    for (const word of paragraph.split(' ').flatMap((each) => pieces(each, width, wide))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line !== '' && wide(longer) > width) {
        lines.push(line);
        line = word;
      } else line = longer;
    }
    return [...lines, line];
  });
}

function pieces(word: string, width: number, wide: (text: string) => number): string[] {
  if (wide(word) <= width) return [word];
  const made: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && wide(piece + letter) > width) {
      made.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...made, piece];
}

/** At most `most` lines; the last ends in an ellipsis where more were left out. */
export function clamped(text: string, width: number, style: TextStyle, most: number): readonly string[] {
  const lines = wrapped(text, width, style);
  if (lines.length <= most) return lines;
  let last = `${lines[most - 1] ?? ''}…`;
  while (last.length > 1 && style.font.width(last, style.size, style.tabular) > width)
    last = `${last.slice(0, -2).trimEnd()}…`;
  return [...lines.slice(0, most - 1), last];
}

/** Draws lines below one another; `at` is the upper left corner. Returns their height, mm. */
export function drawLines(
  page: Page,
  at: At,
  lines: readonly string[],
  style: TextStyle,
  align: 'left' | 'middle' | 'right' = 'left',
): number {
  const high = lineHeight(style);
  const base = baseLine(style);
  lines.forEach((line, i) => {
    page.text({ x: at.x, y: at.y + i * high + base }, line, style, align);
  });
  return lines.length * high;
}
