import type { FontFile } from './font-file.ts';

/** What stands where a font has no letter: a white square. */
export const stand = '□';

/** Signs that a font may lack, and what looks the same. */
const alike: Readonly<Record<string, string>> = {
  '⌀': 'Ø',
  '⋅': '·',
  '∙': '·',
  '∕': '/',
  '∼': '~',
  '‧': '·',
};

/** What takes no room and has no shape of its own: joiners, marks of direction, variants of a sign. */
const unseen = /\p{Cf}|[\ufe00-\ufe0f]/gu;

/** One character of a text and the one whose shape is shown for it. */
export interface Letter {
  readonly code: number;
  readonly shown: number;
}

/**
 * A text as a font can show it. A letter that it lacks is written in plainer ones where that says the same (`２` as
 * 2, `㎡` as m2), else as a white square, which keeps its meaning for whoever copies the text.
 */
export function lettersOf(font: FontFile, text: string): readonly Letter[] {
  return Array.from(text.normalize('NFC').replace(unseen, '')).flatMap((letter) => shownFor(font, letter));
}

/** The letters of a text that a font can only show as a white square, each once, in the order of the text. */
export function lackingIn(font: FontFile, text: string): readonly string[] {
  const square = codeOf(stand);
  return [
    ...new Set(
      lettersOf(font, text).flatMap(({ code, shown }) =>
        shown === square && code !== square ? [String.fromCodePoint(code)] : [],
      ),
    ),
  ];
}

function shownFor(font: FontFile, letter: string): readonly Letter[] {
  const has = (one: string) => font.glyphOf(codeOf(one)) !== 0;
  const code = codeOf(letter);
  if (has(letter)) return [{ code, shown: code }];
  const twin = alike[letter];
  if (twin && has(twin)) return [{ code, shown: codeOf(twin) }];
  const plainer = [...letter.normalize('NFKC')];
  if (plainer.every(has)) return plainer.map((one) => ({ code: codeOf(one), shown: codeOf(one) }));
  return [{ code, shown: codeOf(stand) }];
}

function codeOf(letter: string): number {
  return letter.codePointAt(0) ?? 0;
}
