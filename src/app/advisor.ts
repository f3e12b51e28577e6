import { type Proposal, proposals } from '../advice/proposals.ts';
import type { Board } from '../canvas/board.ts';
import type { Job } from '../graph/document.ts';

export interface AdvisorState {
  /** True from an edit until its proposals stand. */
  readonly computing: boolean;
  readonly proposals: readonly Proposal[];
  /** Name of the speed that the gains are judged at. */
  readonly speed: string | null;
}

export interface Advisor {
  getState(): AdvisorState;
  subscribe(listener: () => void): () => void;
  stop(): void;
}

export interface AdvisorOptions {
  /** Runs `work` when there is time for it; the returned function calls it off. */
  readonly schedule?: (work: () => void) => () => void;
  readonly propose?: typeof proposals;
}

/**
 * Proposals for what the board shows, computed when the hands are still: never during a gesture, and
 * an edit calls off what has not begun.
 */
export function createAdvisor(board: Board, options: AdvisorOptions = {}): Advisor {
  const schedule = options.schedule ?? whenIdle;
  const propose = options.propose ?? proposals;
  const listeners = new Set<() => void>();
  let state: AdvisorState = { computing: true, proposals: [], speed: null };
  let asked: { job: Job; schemeId: string; speed: number } | null = null;
  let callOff = () => {};

  const tell = (next: AdvisorState) => {
    state = next;
    for (const listener of listeners) listener();
  };

  const compute = () => {
    const { job, live, schemeId, speed, solution } = board.getState();
    if (live !== job) {
      callOff = schedule(compute);
      return;
    }
    const judged = solution.speeds[speed];
    tell({
      computing: false,
      proposals: propose(job, schemeId, judged ? { speed } : {}),
      speed: judged?.name ?? null,
    });
  };

  const look = () => {
    const { job, schemeId, speed } = board.getState();
    if (asked && asked.job === job && asked.schemeId === schemeId && asked.speed === speed) return;
    const elsewhere = asked !== null && asked.schemeId !== schemeId;
    asked = { job, schemeId, speed };
    callOff();
    tell({ ...state, computing: true, proposals: elsewhere ? [] : state.proposals });
    callOff = schedule(compute);
  };

  look();
  const leave = board.subscribe(look);
  return {
    getState: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    stop() {
      leave();
      callOff();
    },
  };
}

/** Idle time after a short rest, or half a second later at most. */
function whenIdle(work: () => void): () => void {
  let idle: number | null = null;
  const rest = window.setTimeout(() => {
    if (typeof window.requestIdleCallback !== 'function') work();
    else idle = window.requestIdleCallback(work, { timeout: 500 });
  }, 150);
  return () => {
    window.clearTimeout(rest);
    if (idle !== null) window.cancelIdleCallback(idle);
  };
}
