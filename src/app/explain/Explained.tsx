import type { ReactNode } from 'react';
import type { FigureRef } from '../../graph/derive/derivation.ts';
import { words } from '../../words/index.ts';
import { useExplain } from './explainer.ts';

interface ExplainedProps {
  readonly refTo: FigureRef;
  readonly children: ReactNode;
  readonly className?: string;
}

/** A figure that can be asked where it comes from: quiet until it is pointed at or reached by a key. */
export function Explained({ refTo, children, className }: ExplainedProps) {
  const explain = useExplain();
  return (
    <button
      type="button"
      className={className ? `explained ${className}` : 'explained'}
      data-explain={refTo.figure}
      aria-haspopup="dialog"
      aria-description={words.explain.figure.description}
      onClick={(event) => explain(refTo, event.currentTarget)}
    >
      {children}
    </button>
  );
}
