import type { ReactNode } from 'react';
import { useRoving } from './roving.ts';

/** A table of figures; those that can be explained are one stop of the Tab key together. */
export function Figures({ children }: { children: ReactNode }) {
  const { ref, onKeyDown } = useRoving<HTMLDListElement>();
  return (
    <dl className="figures" ref={ref} onKeyDown={onKeyDown}>
      {children}
    </dl>
  );
}
