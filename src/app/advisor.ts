import { type Combination, combining } from '../advice/combinations/search.ts';
import { type Goal, type Measure, ranked } from '../advice/goals.ts';
import { outcomeAt } from '../advice/proposals/effects.ts';
import { type Proposal, proposing } from '../advice/proposals.ts';
import { requiredAirflow } from '../advice/required.ts';
import type { Board } from '../canvas/board.ts';
import type { Job } from '../graph/document.ts';
import { currentStyle, type Style } from '../units/index.ts';
import { inIdlePieces, type Schedule } from './idle-work.ts';

export interface AdvisorState {
  /** True from an edit until its proposals stand. */
  readonly computing: boolean;
  /** Best first by the goal. */
  readonly proposals: readonly Proposal[];
  /** True from an edit, or another goal, until the combinations stand. */
  readonly combining: boolean;
  readonly combinations: readonly Combination[];
  readonly goal: Goal;
  /** Airflow that the cooktop asks for, and the air delivered as things are, m3/s. */
  readonly measure: Measure;
  /** Name of the speed that the gains are judged at. */
  readonly speed: string | null;
}

export interface Advisor {
  getState(): AdvisorState;
  subscribe(listener: () => void): () => void;
  setGoal(goal: Goal): void;
  stop(): void;
}

export interface AdvisorOptions {
  readonly schedule?: Schedule;
  readonly propose?: typeof proposing;
  readonly combine?: typeof combining;
}

/**
 * Proposals and their combinations for what the board shows, computed in small pieces when the hands are still:
 * never during a gesture, and an edit calls off what is not done.
 */
export function createAdvisor(board: Board, options: AdvisorOptions = {}): Advisor {
  const { schedule, propose = proposing, combine = combining } = options;
  const listeners = new Set<() => void>();
  let state: AdvisorState = {
    computing: true,
    proposals: [],
    combining: true,
    combinations: [],
    goal: 'air',
    measure: { need: 0, flow: 0 },
    speed: null,
  };
  let asked: { job: Job; schemeId: string; speed: number; style: Style } | null = null;
  let callOff = () => {};

  const tell = (change: Partial<AdvisorState>) => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  const idle = {
    busy: () => board.getState().live !== board.getState().job,
    ...(schedule && { schedule }),
  };

  const lookForCombinations = (singles: readonly Proposal[], rest: number) => {
    const { job, schemeId, speed, solution } = board.getState();
    const judged = solution.speeds[speed] ? { speed } : {};
    callOff = inIdlePieces(
      () => combine(job, schemeId, { ...judged, goal: state.goal, singles }),
      (combinations) => tell({ combining: false, combinations }),
      { ...idle, rest },
    );
  };

  const look = () => {
    const { job, schemeId, speed, solution } = board.getState();
    const style = currentStyle();
    const same = asked?.job === job && asked.schemeId === schemeId && asked.speed === speed;
    if (same && asked?.style === style) return;
    const elsewhere = asked !== null && asked.schemeId !== schemeId;
    asked = { job, schemeId, speed, style };
    callOff();
    tell({
      computing: true,
      combining: true,
      ...(elsewhere ? { proposals: [], combinations: [] } : {}),
    });
    const judged = solution.speeds[speed];
    callOff = inIdlePieces(
      () => propose(job, schemeId, judged ? { speed } : {}),
      (found) => {
        const measure = {
          need: requiredAirflow(job.kitchen).governing.flow,
          flow: outcomeAt(solution, speed)?.flow ?? 0,
        };
        const proposals = ranked(found, state.goal, measure);
        tell({ computing: false, proposals, measure, speed: judged?.name ?? null });
        lookForCombinations(proposals, 0);
      },
      idle,
    );
  };

  look();
  const leave = board.subscribe(look);
  return {
    getState: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    setGoal(goal) {
      if (goal === state.goal) return;
      tell({ goal, proposals: ranked(state.proposals, goal, state.measure) });
      if (state.computing) return;
      callOff();
      tell({ combining: true, combinations: [] });
      lookForCombinations(state.proposals, 0);
    },
    stop() {
      leave();
      callOff();
    },
  };
}
