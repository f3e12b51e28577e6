import type { BoardState } from '../../canvas/board.ts';
import { toScreen } from '../../drawing/viewport.ts';
import { project } from '../../graph/sheet.ts';
import type { words } from '../../words/index.ts';
import type { App } from '../command.ts';

/** A place of the window, px. */
export interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export type Side = 'above' | 'below' | 'left' | 'right';

export interface GuideStep {
  readonly id: keyof typeof words.guide.steps;
  /** Where the card stands if it has room there. */
  readonly side: Side;
  /** Readies the desk, so that what is shown is there. */
  begin?(app: App): void;
  /** Where the real thing stands now; `null` while it is not on the screen. */
  place(app: App): Place | null;
  /** For what is opened and looked at: true while it is. The step is done when it is closed again. */
  during?(): boolean;
  /** True once it was done; `from` is how the board was when the step began. */
  done?(app: App, from: BoardState): boolean;
}

function elementPlace(selector: string): Place | null {
  const box = document.querySelector(selector)?.getBoundingClientRect();
  if (!box || box.width === 0) return null;
  return { left: box.left, top: box.top, width: box.width, height: box.height };
}

/** Pixels around a turn that are shown with it. */
const AROUND = 46;

/** The turn farthest along the air that the floor sheet shows as one, m away from the hood's own. */
export function shownTurn({ solution }: BoardState): string | null {
  const turns = [...solution.route.nodes.values()].filter(({ bend }) => {
    const legs = [bend?.upstream, bend?.downstream].map((id) => id && solution.route.segments.get(id));
    return legs.every((leg) => leg && Math.hypot(leg.direction[0], leg.direction[1]) > 0.5);
  });
  return turns.at(-1)?.id ?? null;
}

function turnPlace({ board, sheets }: App): Place | null {
  const state = board.getState();
  const node = state.solution.route.nodes.get(shownTurn(state) ?? '');
  const sheet = document.querySelector<HTMLElement>('[data-sheet="floor"]');
  const view = sheets.views().floor;
  if (!node || !sheet || !view) return null;
  const box = sheet.getBoundingClientRect();
  const at = toScreen(project(node.at, 'floor'), view);
  return {
    left: box.left + sheet.clientLeft + at.x - AROUND,
    top: box.top + sheet.clientTop + at.y - AROUND,
    width: 2 * AROUND,
    height: 2 * AROUND,
  };
}

const radii = ({ solution }: BoardState) =>
  [...solution.route.nodes.values()].map(({ bend }) => bend?.radius ?? 0).join();

/** The tour over the example, in its order. */
export const steps: readonly GuideStep[] = [
  {
    id: 'strip',
    side: 'above',
    place: () => elementPlace('.strip .speed-cards'),
    done: ({ board }, from) => board.getState().speed !== from.speed,
  },
  {
    id: 'turn',
    side: 'right',
    begin: ({ board }) => board.set({ tool: 'select' }),
    place: turnPlace,
    done: ({ board }) => {
      const { selection, solution } = board.getState();
      return selection.nodes.some((id) => solution.route.nodes.get(id)?.bend !== undefined);
    },
  },
  {
    id: 'radius',
    side: 'right',
    begin: ({ board, ui }) => {
      const turn = shownTurn(board.getState());
      if (turn !== null) board.set({ selection: { nodes: [turn], segments: [] } });
      ui.setState({ panel: 'selected' });
    },
    place: turnPlace,
    done: ({ board }, from) => {
      const state = board.getState();
      return state.live === state.job && state.job !== from.job && radii(state) !== radii(from);
    },
  },
  {
    id: 'undo',
    side: 'below',
    place: () => elementPlace('.top-bar [role="toolbar"] button'),
    done: ({ board }, from) => board.getState().job !== from.job,
  },
  {
    id: 'proposal',
    side: 'left',
    begin: ({ ui }) => ui.setState({ panel: 'proposals' }),
    place: () => elementPlace('[data-proposal]'),
    done: ({ board }, from) => {
      const { job, undoLabel } = board.getState();
      return job !== from.job && undoLabel !== null;
    },
  },
  {
    id: 'figure',
    side: 'above',
    place: () => elementPlace('.speed-card[data-chosen] [data-explain="flow"]'),
    during: () => document.querySelector('.explain-dialog') !== null,
  },
  {
    id: 'scheme',
    side: 'below',
    place: () => elementPlace('.scheme-tabs [role="radiogroup"]'),
    done: ({ board }, from) => board.getState().schemeId !== from.schemeId,
  },
];
