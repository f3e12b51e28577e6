import { Fragment } from 'react';
import { stressed } from '../words/strong.ts';

/** A text of the words with its stressed parts set strong. */
export function Marked({ text }: { readonly text: string }) {
  return stressed(text).map((piece, i) =>
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece has no other name than its place
    piece.strong ? <strong key={i}>{piece.text}</strong> : <Fragment key={i}>{piece.text}</Fragment>,
  );
}
