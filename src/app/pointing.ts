import { nothing, type Selection } from '../canvas/board.ts';
import { useApp, useBoard } from './context.ts';

/** What stands for a place of the run: it and the sheets point at one another, and it selects its place. */
export interface Pointing {
  /** True while the sheets, or something else, point at its place. */
  readonly lit: boolean;
  readonly point: () => void;
  readonly leave: () => void;
  readonly choose: () => void;
}

export function usePointing(place: Selection): Pointing {
  const { board, sheets } = useApp();
  const hover = useBoard((state) => state.hover);
  return {
    lit:
      place.nodes.some((id) => hover.nodes.includes(id)) ||
      place.segments.some((id) => hover.segments.includes(id)),
    point: () => board.set({ hover: place }),
    leave: () => board.set({ hover: nothing }),
    choose: () => {
      board.set({ selection: place });
      sheets.reveal(place);
    },
  };
}
