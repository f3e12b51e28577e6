import type { Job } from '../../../graph/document.ts';
import type { FontFile } from '../../pdf/font-file.ts';
import { lackingIn } from '../../pdf/letters.ts';
import type { JobSheet } from '../types.ts';

/** The letters of sheets, and of what their drawings name, that a font lacks; each once. */
export function lackingLetters(
  font: FontFile,
  { sheetNotes, hoods, blocks, exits }: Job,
  sheets: readonly JobSheet[],
): readonly string[] {
  return lackingIn(font, [...textsIn([sheets, sheetNotes, hoods, blocks, exits])].join(' '));
}

/** Every text in a piece of data; pictures are none. */
export function* textsIn(value: unknown): Generator<string> {
  if (typeof value === 'string') {
    if (!value.startsWith('data:')) yield value;
  } else if (typeof value === 'object' && value !== null)
    for (const part of Object.values(value)) yield* textsIn(part);
}
