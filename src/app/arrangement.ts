import type { BoardState } from '../canvas/board.ts';
import type { Route } from '../graph/route.ts';
import { words } from '../words/index.ts';
import type { AppStore } from './store.ts';
import type { Ui } from './ui.ts';

const says = words.shell.arrangements;

/** Which views stand on the desk: the floor and one section, both sections, or those and the isometric. */
export type Arrangement = 'two' | 'three' | 'four';

export const arrangements: readonly { readonly id: Arrangement; readonly title: string }[] = [
  { id: 'two', title: says.two },
  { id: 'three', title: says.three },
  { id: 'four', title: says.four },
];

const key = 'gentlebend.arrangement';

/** The arrangement chosen in this browser before, else two sheets. */
export function keptArrangement(): Arrangement {
  try {
    const kept = localStorage.getItem(key);
    return arrangements.find(({ id }) => id === kept)?.id ?? 'two';
  } catch {
    return 'two';
  }
}

/** Arranges the views, and remembers it. */
export function arrange(ui: Ui, arrangement: Arrangement): void {
  ui.setState({ arrangement });
  try {
    localStorage.setItem(key, arrangement);
  } catch {
    // A browser that keeps nothing still arranges the sheets.
  }
}

/** The section that shows more of a route's length across its line of sight; looking north where both show as much. */
export function tellingSection(route: Route): BoardState['section'] {
  let [east, north] = [0, 0];
  for (const { direction, length } of route.segments.values()) {
    east += Math.abs(direction[0]) * length;
    north += Math.abs(direction[1]) * length;
  }
  return north > east ? 'section-y' : 'section-x';
}

/** Shows the telling section of every job and scheme that comes on the desk, until a person picks one. */
export function followTellingSection(board: AppStore): void {
  let shown = tellingSection(board.getState().solution.route);
  board.set({ section: shown });
  const stop = board.subscribe((state, before) => {
    if (state.section !== shown) {
      stop();
      return;
    }
    const other =
      state.schemeId !== before.schemeId || (state.undoLabel === null && state.job !== before.job);
    if (!other) return;
    shown = tellingSection(state.solution.route);
    if (shown !== state.section) board.set({ section: shown });
  });
}
