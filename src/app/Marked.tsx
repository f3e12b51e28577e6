import { Fragment, type ReactNode } from 'react';
import { stressed } from '../words/strong.ts';

interface MarkedProps {
  readonly text: string;
  /** What a stressed part becomes; strong where absent. */
  readonly as?: (text: string) => ReactNode;
}

/** A text of the words with its stressed parts set apart. */
export function Marked({ text, as = (part) => <strong>{part}</strong> }: MarkedProps) {
  return stressed(text).map((piece, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: a piece has no other name than its place
    <Fragment key={i}>{piece.strong ? as(piece.text) : piece.text}</Fragment>
  ));
}
