import { produce } from 'immer';
import type { Job } from '../../graph/document.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import { formatFlow } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import { byGoal, type Goal, type Measure, ranked } from '../goals.ts';
import { type Candidate, judgedSpeed, type Recipe } from '../proposals/candidate.ts';
import { type Effects, effectsOf, outcomeAt } from '../proposals/effects.ts';
import type { Proposal, ProposalOptions } from '../proposals.ts';
import { improving, proposing, remedying } from '../proposals.ts';
import { requiredAirflow } from '../required.ts';
import { alikeAsOne } from './alike.ts';
import { compatible } from './compatible.ts';

const says = words.rules.combined;

/** Two or three changes made together and solved together. */
export interface Combination extends Effects {
  readonly id: string;
  readonly title: string;
  readonly reason: string;
  /** In the order in which they are made; the numbers of each but the first are with those before it. */
  readonly members: readonly Proposal[];
  /** How many of the last of them are for something else than air: what the scheme calls for once the others are made. */
  readonly remedies: number;
  readonly recipe: Recipe;
  readonly label: string;
  readonly solution: SchemeSolution;
  /** What the scheme calls for beside air even then: what is neither part of it nor could be. */
  readonly calls: readonly Proposal[];
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

export interface CombinationOptions extends ProposalOptions {
  readonly goal?: Goal;
  /** The single changes, where they are known already. */
  readonly singles?: readonly Proposal[];
  /** Combinations that are carried on from one size to the next; 4 where absent. */
  readonly width?: number;
  /** How many are given at most; 3 where absent. */
  readonly most?: number;
}

/** Every change on the way has to gain this part of the air before all of them. */
const leastGain = 0.005;
/** Legs of the longest run that combinations are looked for in: each of them is solved many times over. */
export const longestCombined = 150;
/** Changes for air in the largest combination. */
const largest = 3;
/** Remedies that are added to a combination at most: wrap, make-up air, and wrap again for the air that then moves. */
const mostRemedies = 3;

interface State {
  readonly job: Job;
  readonly solution: SchemeSolution;
  readonly members: readonly Proposal[];
  readonly effects: Effects;
}

/**
 * The best pairs and triples of changes for a goal, best first, by a beam search. The second and third change
 * are proposed for the scheme as the first ones leave it, so that a bend is chosen for the duct that it will be
 * made in; changes of the same duct, turn or cap are not stacked. Every combination that is looked at is solved, and
 * what is given fits its room and gains more air than any of its changes alone. Insulation and make-up air that the
 * scheme then calls for are made in the same step where they settle what they are for and cost no air.
 * Deterministic. None of a run of more than `longestCombined` legs.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function combinations(
  job: Job,
  schemeId: string,
  options: CombinationOptions = {},
): readonly Combination[] {
  const search = combining(job, schemeId, options);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

/** The same search in small pieces: it hands control back between them. */
export function* combining(
  job: Job,
  schemeId: string,
  options: CombinationOptions = {},
): Generator<undefined, readonly Combination[], undefined> {
  const { goal = 'air', width = 4, most = 3 } = options;
  const solution = solveScheme(job, schemeId);
  const judged = judgedSpeed(solution, options.speed);
  const flow = outcomeAt(solution, judged)?.flow;
  if (flow === undefined || solution.route.segments.size > longestCombined) return [];
  const measure: Measure = { need: requiredAirflow(job.kitchen).governing.flow, flow };
  const singles = options.singles ?? (yield* proposing(job, schemeId, options));
  const alone = new Map(singles.map(({ id, gain }) => [id, gain]));
  const order = byGoal(goal, measure);
  const best = (states: readonly State[]) => distinct([...states].sort((a, b) => order(asOne(a), asOne(b))));

  const alike = alikeAsOne(schemeId);
  let beam: State[] = ranked(
    singles.filter(({ remedy, fits }) => !remedy && fits),
    goal,
    measure,
  )
    .slice(0, width)
    .map((single) => ({
      job: alike(produce(job, single.recipe)),
      solution: single.solution,
      members: [single],
      effects: single,
    }));
  const all: State[] = [];
  for (let size = 2; size <= largest; size += 1) {
    const next: State[] = [];
    for (const state of beam) {
      const wanted = (change: Candidate) => state.members.every((member) => compatible(member, change));
      const more = yield* improving(state.job, schemeId, { speed: judged, wanted, alike });
      for (const proposal of more) {
        yield;
        const changed = alike(produce(state.job, proposal.recipe));
        const effects = effectsOf(job, solution, changed, proposal.solution, judged);
        if (!effects?.fits || effects.gain < (alone.get(proposal.id) ?? 0) + leastGain * flow) continue;
        const members = [...state.members, proposal];
        next.push({ job: changed, solution: proposal.solution, members, effects });
      }
    }
    const kept = best(next);
    beam = kept.slice(0, width);
    all.push(...kept);
  }
  const found: Combination[] = [];
  for (const state of given(best(all), most)) {
    const { whole, calls } = yield* completed(state, job, solution, judged);
    const remedies = whole.members.length - state.members.length;
    found.push({ ...combinationOf(whole, job, measure, judged, singles), remedies, calls });
  }
  return ranked(found, goal, measure);
}

/** A combination with what it then calls for beside air, as far as that pays; and what is still called for. */
function* completed(
  state: State,
  job: Job,
  before: SchemeSolution,
  judged: number,
): Generator<undefined, { readonly whole: State; readonly calls: readonly Proposal[] }, undefined> {
  let whole = state;
  for (let added = 0; ; added += 1) {
    const calls = yield* remedying(whole.job, before.schemeId, { speed: judged });
    const next = added < mostRemedies ? firstThatPays(whole, calls, job, before, judged) : undefined;
    if (!next) return { whole, calls };
    whole = next;
  }
}

/** A remedy pays where it settles a finding, fits, and leaves the air that the changes before it won. */
function firstThatPays(
  { job: made, members, effects: won }: State,
  calls: readonly Proposal[],
  job: Job,
  before: SchemeSolution,
  judged: number,
): State | undefined {
  for (const call of calls) {
    if (call.settles.length === 0 || !members.every((member) => compatible(member, call))) continue;
    const changed = produce(made, call.recipe);
    const effects = effectsOf(job, before, changed, call.solution, judged);
    if (!effects?.fits || effects.gain < (1 - leastGain) * won.gain) continue;
    return { job: changed, solution: call.solution, members: [...members, call], effects };
  }
  return undefined;
}

function idOf({ members }: Pick<State, 'members'>): string {
  return members.map(({ id }) => id).join(' & ');
}

function asOne(state: State): Effects & { readonly id: string } {
  return { ...state.effects, id: idOf(state) };
}

/** The same changes in another order, or others to the same effect, are one combination; the first stands. */
function distinct(states: readonly State[]): State[] {
  const known = new Set<string>();
  return states.filter((state) => {
    const scheme = state.job.schemes.find(({ id }) => id === state.solution.schemeId);
    const made = JSON.stringify([scheme?.defaults, scheme?.nodes, scheme?.segments]);
    if (known.has(made)) return false;
    known.add(made);
    return true;
  });
}

/** The best that differ, and among them the best pair: the smallest step that pays. */
function given(states: readonly State[], most: number): State[] {
  const taken = apart(states).slice(0, most);
  const pair = states.find(({ members }) => members.length === 2);
  if (!pair || taken.some(({ members }) => members.length === 2)) return taken;
  return [...taken.slice(0, most - 1), pair];
}

/** Leaves out what differs from a better one in no more than one change. */
function apart(states: readonly State[]): State[] {
  const taken: State[] = [];
  for (const state of states) {
    const ids = new Set(state.members.map(({ id }) => id));
    const near = taken.some(
      ({ members }) => members.filter(({ id }) => !ids.has(id)).length <= 1 && members.length >= ids.size,
    );
    if (!near) taken.push(state);
  }
  return taken;
}

function combinationOf(
  state: State,
  job: Job,
  { flow }: Measure,
  judged: number,
  singles: readonly Proposal[],
): Omit<Combination, 'calls' | 'remedies'> {
  const { members, effects, solution } = state;
  const { units } = job;
  const speed = solution.speeds[judged]?.name ?? '';
  const ids = new Set(members.map(({ id }) => id));
  const alone = Math.max(...singles.filter(({ id }) => ids.has(id)).map(({ gain }) => gain), 0);
  return {
    ...effects,
    id: idOf(state),
    title: members.map(({ title }) => title).join(' + '),
    reason: says.together(
      speed,
      formatFlow(flow, units),
      formatFlow(flow + effects.gain, units),
      formatFlow(flow + alone, units),
    ),
    members,
    recipe: (draft) => {
      for (const { recipe } of members) recipe(draft);
    },
    label: says.label(members.length),
    solution,
    nodes: [...new Set(members.flatMap(({ nodes }) => nodes))],
    segments: [...new Set(members.flatMap(({ segments }) => segments))],
  };
}
