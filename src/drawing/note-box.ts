/** Size of a note's plate in pixels: known without a screen, so that it can be hit where it is drawn. */
export interface NoteSize {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly string[];
}

export const NOTE_LINE = 16;
export const NOTE_PADDING = 7;

/** Lines longer than this many characters are broken at a space. */
const LONGEST_LINE = 36;

/** Widths in px at 12 px of the letters of the drawing's font, by what they are like. */
const widths: readonly (readonly [RegExp, number])[] = [
  [/[\s.,:;'|!iIjlftr()]/, 3.9],
  [/[mwMW@%]/, 10],
  [/[A-Z0-9]/, 7.6],
];
const usual = 6.6;

/** About how wide a line of text is in the drawing's font at a size, both in px. */
export function roughWidth(line: string, size: number): number {
  let width = 0;
  for (const letter of line) width += widths.find(([like]) => like.test(letter))?.[1] ?? usual;
  return (width * size) / 12;
}

/** The lines of a note and the plate that they stand on. */
export function noteSize(text: string): NoteSize {
  const lines = text.split('\n').flatMap(broken);
  const width = Math.max(16, ...lines.map((line) => roughWidth(line, 12))) + 2 * NOTE_PADDING;
  return { lines, width: Math.ceil(width), height: lines.length * NOTE_LINE + NOTE_PADDING };
}

function broken(line: string): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of line.split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (longer.length > LONGEST_LINE && current !== '') {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  return [...lines, current];
}
