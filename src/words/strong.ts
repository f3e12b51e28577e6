/** What begins and ends a stressed part of a text: characters that nobody types. */
const [begin, end] = ['\u0002', '\u0003'];

/** Stresses a part of a text, wherever in the sentence a language has it. */
export function strong(text: string): string {
  return `${begin}${text}${end}`;
}

/** A text in pieces, each with whether it is stressed. */
export function stressed(text: string): readonly { readonly text: string; readonly strong: boolean }[] {
  return text
    .split(begin)
    .flatMap((piece, i) => {
      const [first = '', rest] = piece.split(end);
      return rest === undefined
        ? [{ text: first, strong: false }]
        : [
            { text: first, strong: i > 0 },
            { text: rest, strong: false },
          ];
    })
    .filter((piece) => piece.text !== '');
}
