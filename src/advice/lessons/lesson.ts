import { type Draft, produce } from 'immer';
import type { Job, UnitSystem } from '../../graph/document.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import { benchScheme } from '../lab/bench.ts';

/** The figure that a step asks the apprentice to foresee. */
export type Asked =
  | { readonly of: 'flow'; readonly question: string }
  | { readonly of: 'sound'; readonly question: string }
  | { readonly of: 'velocity'; readonly question: string }
  /** Of the dearest fitting at a node. */
  | { readonly of: 'equivalentLength'; readonly node: string; readonly question: string };

export interface LessonStep {
  readonly title: string;
  /** What there is to see and why it matters. */
  readonly text: string;
  /** What to do, as a command to the apprentice. */
  readonly todo: string;
  /** The change to the drawing of the step before; none where the drawing is only looked at. */
  readonly change?: (job: Draft<Job>) => void;
  readonly ask: Asked;
  readonly remember: string;
  /** What of the drawing the step is about. */
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

/** A lesson on an invented run. Its text holds no figures: every number is solved when it is shown. */
export interface Lesson {
  readonly id: 'tight-turns' | 'squeezed-duct' | 'small-cap';
  readonly title: string;
  readonly about: string;
  readonly job: (units: UnitSystem) => Job;
  readonly steps: readonly LessonStep[];
  /** How far what it teaches holds. */
  readonly range: string;
}

export interface LessonState {
  readonly job: Job;
  readonly solution: SchemeSolution;
  /** At the highest speed. */
  readonly outcome: Solved;
}

/**
 * The drawing at the start of a lesson and after each of its steps, solved: one more than there are steps.
 *
 * @throws Error where a lesson's own drawing does not solve, which is a mistake in the lesson
 */
export function lessonStates(lesson: Lesson, units: UnitSystem): LessonState[] {
  let job = lesson.job(units);
  const states = [stateOf(lesson, job)];
  for (const { change } of lesson.steps) {
    if (change) job = produce(job, change);
    states.push(stateOf(lesson, job));
  }
  return states;
}

function stateOf({ id }: Lesson, job: Job): LessonState {
  const solution = solveScheme(job, benchScheme);
  const outcome = solution.speeds.at(-1)?.outcome;
  if (!outcome?.solved) throw new Error(`the drawing of the lesson ${id} does not solve`);
  return { job, solution, outcome };
}

/** The figure asked for, SI (dBA for sound, m for equivalent length); 0 where a fitting is not there. */
export function askedFigure(ask: Asked, { outcome }: LessonState): number {
  switch (ask.of) {
    case 'flow':
      return outcome.flow;
    case 'sound':
      return outcome.sound.cook.level;
    case 'velocity':
      return outcome.fastest?.velocity ?? 0;
    case 'equivalentLength':
      return Math.max(
        0,
        ...outcome.fittings.filter(({ at }) => at === ask.node).map((each) => each.equivalentLength),
      );
  }
}
