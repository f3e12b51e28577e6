import { createContext, useContext } from 'react';
import type { FigureRef } from '../../graph/derive/derivation.ts';

/** Opens the derivation of a figure beside the element that shows it. */
export type Explain = (ref: FigureRef, from: Element) => void;

export const ExplainContext = createContext<Explain | null>(null);

export function useExplain(): Explain {
  const explain = useContext(ExplainContext);
  if (!explain) throw new Error('figures stand inside the explainer');
  return explain;
}
