import { createContext, useContext } from 'react';
import type { LabScene } from '../../advice/lab/bench.ts';
import type { Trial } from '../../advice/lab/trial.ts';
import type { UnitSystem } from '../../graph/document.ts';

/** A way of making the turn; the ratio is 0 for a mitre. */
export interface Made {
  readonly kind: string;
  readonly radiusRatio: number;
}

/** What every page of the lab works with. */
export interface Lab {
  readonly scene: LabScene;
  /** The turn is one of the drawing that is being worked on, and not of the lab's own bench. */
  readonly drawn: boolean;
  readonly units: UnitSystem;
  /** Index into the solution's speeds. */
  readonly speed: number;
  /** The turn as it is drawn. */
  readonly before: Trial;
  readonly choice: Made;
  readonly choose: (choice: Made) => void;
  /** Ask for a prediction before a figure is shown. */
  readonly guessing: boolean;
}

export const LabContext = createContext<Lab | null>(null);

export function useLab(): Lab {
  const lab = useContext(LabContext);
  if (!lab) throw new Error('the pages of the lab stand inside the lab');
  return lab;
}
