/** A file of a font: the letters that it holds, as CSS writes ranges of Unicode, and its bytes as a `data:` address. */
export interface FontPart {
  readonly range: string;
  readonly url: string;
}

/** The family that drawings are set in. */
export const drawingFamily = 'Inter Variable';

/**
 * The parts of a font that hold the letters of a text, by name. A letter is taken from the first part that has it;
 * one that none has is left to the fonts of the reader.
 *
 * @param ranges of each part, as `U+0000-00FF,U+0131`
 */
export function partsFor(ranges: Readonly<Record<string, string>>, text: string): readonly string[] {
  const parts = Object.entries(ranges).map(([name, range]) => [name, spansOf(range)] as const);
  const wanted = new Set<string>();
  for (const letter of new Set(text)) {
    const code = letter.codePointAt(0) ?? 0;
    const part = parts.find(([, spans]) => spans.some(([from, to]) => from <= code && code <= to));
    if (part) wanted.add(part[0]);
  }
  return [...wanted];
}

/** Rules that carry a variable font inside the drawing. */
export function fontRules(parts: readonly FontPart[]): string {
  return parts
    .map(
      ({ range, url }) =>
        `@font-face{font-family:'${drawingFamily}';font-weight:100 900;src:url(${url}) format('woff2');unicode-range:${range}}`,
    )
    .join('');
}

function spansOf(range: string): readonly (readonly [number, number])[] {
  return range.split(',').map((span) => {
    const [from = '', to = from] = span.trim().replace(/^U\+/i, '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)];
  });
}
