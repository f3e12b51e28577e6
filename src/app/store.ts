import { produce } from 'immer';
import { createStore } from 'zustand/vanilla';
import {
  type Board,
  type BoardSettings,
  type BoardState,
  firstKinds,
  nothing,
  type Recipe,
  type SectionDepths,
} from '../canvas/board.ts';
import { surviving } from '../canvas/selection.ts';
import type { Job } from '../graph/document.ts';
import { commit, type History, redo, redoLabel, startHistory, undo, undoLabel } from '../graph/history.ts';
import type { SchemeSolution } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';

/** What has been done since the board was made; tests count on it. */
export interface BoardStats {
  readonly solves: number;
  readonly commits: number;
}

/** The sheets' board, and what only the panels around the sheets need. */
export interface AppStore extends Board {
  /** Starts over with another document: no undo steps, nothing selected. */
  open(job: Job): void;
  /** The committed document's solution of any scheme, solved at most once a document. */
  solutionOf(schemeId: string): SchemeSolution;
  /** Every edit by name, those taken back included, and how many of them stand. */
  steps(): Steps;
  /** Takes edits back, or makes them again, until as many stand. */
  goTo(at: number): void;
  /** Keeps the document as it is: an edit, undo among them, calls `refused` instead; null lets edits be made again. */
  hold(refused: (() => void) | null): void;
  /** Solves the document again, where the same results are to be told in other words or figures. */
  reword(): void;
  readonly stats: BoardStats;
}

export interface Steps {
  readonly labels: readonly string[];
  readonly at: number;
}

export interface BoardOptions {
  readonly settings?: Partial<BoardSettings>;
  readonly solve?: (job: Job, schemeId: string) => SchemeSolution;
}

/**
 * The one store: a committed document with its undo steps, the preview of a gesture over it, and
 * what the sheets show. A scheme is solved again only when something that the air depends on has
 * changed by identity; `preview(null)` brings back the very objects that were there before.
 */
export function createBoard(job: Job, options: BoardOptions = {}): AppStore {
  const stats = { solves: 0, commits: 0 };
  const solve = (of: Job, schemeId: string) => {
    stats.solves += 1;
    return (options.solve ?? solveScheme)(of, schemeId);
  };
  const settled = new Map<string, Solving>();
  let history: History = startHistory(job);

  const solutionOf = (of: Job, schemeId: string): SchemeSolution => {
    const known = settled.get(schemeId);
    if (known && sameAir(known.job, of, schemeId)) return known.solution;
    const solution = solve(of, schemeId);
    settled.set(schemeId, { job: of, solution });
    return solution;
  };

  const first = schemeIn(job, options.settings?.schemeId);
  const store = createStore<BoardState>(() => ({
    tool: 'select',
    kinds: firstKinds,
    selection: nothing,
    hover: nothing,
    speed: topSpeed(solutionOf(job, first)),
    colourBy: 'velocity',
    section: 'section-x',
    workingHeight: 2.3,
    sectionDepth: uncut,
    ghost: null,
    theme: 'light',
    ...options.settings,
    schemeId: first,
    job,
    live: job,
    solution: solutionOf(job, first),
    units: job.units,
    undoLabel: null,
    redoLabel: null,
  }));

  /** Takes over a history: the document, its solution, and settings that still point at something. */
  const settle = (next: History, afresh = false) => {
    history = next;
    const state = store.getState();
    const document = next.job;
    const schemeId = schemeIn(document, afresh ? undefined : state.schemeId);
    const solution = solutionOf(document, schemeId);
    const top = topSpeed(solution);
    for (const id of settled.keys()) if (!document.schemes.some((s) => s.id === id)) settled.delete(id);
    store.setState({
      schemeId,
      job: document,
      live: document,
      solution,
      units: document.units,
      undoLabel: undoLabel(next),
      redoLabel: redoLabel(next),
      selection:
        afresh || schemeId !== state.schemeId ? nothing : surviving(state.selection, document, schemeId),
      hover: nothing,
      ghost: null,
      ...(afresh ? { sectionDepth: uncut } : {}),
      speed: afresh ? top : Math.min(state.speed, top),
    });
  };

  const endPreview = () => {
    const state = store.getState();
    if (state.live !== state.job)
      store.setState({ live: state.job, solution: solutionOf(state.job, state.schemeId) });
  };

  let refused: (() => void) | null = null;
  const step = (next: History) => {
    if (refused) {
      endPreview();
      refused();
    } else if (next === history) endPreview();
    else settle(next);
  };

  return {
    stats,
    getState: store.getState,
    subscribe: store.subscribe,

    dispatch(label, recipe) {
      const next = refused ? history : commit(history, label, recipe);
      if (next !== history) stats.commits += 1;
      step(next);
    },

    preview(recipe: Recipe | null) {
      if (recipe === null || refused) {
        endPreview();
        return;
      }
      const state = store.getState();
      const live = produce(state.job, recipe);
      if (live === state.live) return;
      const solution = sameAir(state.live, live, state.schemeId)
        ? state.solution
        : sameAir(state.job, live, state.schemeId)
          ? solutionOf(state.job, state.schemeId)
          : solve(live, state.schemeId);
      store.setState({ live, solution });
    },

    set(change) {
      const state = store.getState();
      if (change.schemeId === undefined || change.schemeId === state.schemeId) {
        store.setState(change);
        return;
      }
      const schemeId = schemeIn(state.job, change.schemeId);
      const solution = solutionOf(state.job, schemeId);
      store.setState({
        live: state.job,
        selection: nothing,
        hover: nothing,
        ghost: null,
        speed: Math.min(state.speed, topSpeed(solution)),
        ...change,
        schemeId,
        solution,
      });
    },

    undo: () => step(undo(history)),
    redo: () => step(redo(history)),

    steps: () => ({
      labels: [...history.past, ...history.future.toReversed()].map(({ label }) => label),
      at: history.past.length,
    }),

    goTo(at) {
      let next = history;
      while (next.past.length > at && next.past.length > 0) next = undo(next);
      while (next.past.length < at && next.future.length > 0) next = redo(next);
      step(next);
    },

    open(document) {
      settled.clear();
      settle(startHistory(document), true);
    },

    hold(next) {
      refused = next;
      if (refused) endPreview();
    },

    reword() {
      settled.clear();
      const { job, schemeId } = store.getState();
      store.setState({ live: job, solution: solutionOf(job, schemeId) });
    },

    solutionOf: (schemeId) => solutionOf(store.getState().job, schemeId),
  };
}

const uncut: SectionDepths = { 'section-x': null, 'section-y': null };

interface Solving {
  readonly job: Job;
  readonly solution: SchemeSolution;
}

/** True where nothing that a scheme's solution is made from differs between two documents. */
function sameAir(a: Job, b: Job, schemeId: string): boolean {
  if (a === b) return true;
  return (
    a.air === b.air &&
    a.kitchen === b.kitchen &&
    a.house === b.house &&
    a.hoods === b.hoods &&
    a.blocks === b.blocks &&
    a.exits === b.exits &&
    a.units === b.units &&
    a.profile === b.profile &&
    a.schemes.find((s) => s.id === schemeId) === b.schemes.find((s) => s.id === schemeId)
  );
}

function schemeIn(job: Job, wanted: string | undefined): string {
  const scheme = job.schemes.find((s) => s.id === wanted) ?? job.schemes[0];
  if (!scheme) throw new Error('a job has at least one scheme');
  return scheme.id;
}

function topSpeed(solution: SchemeSolution): number {
  return Math.max(0, solution.speeds.length - 1);
}
