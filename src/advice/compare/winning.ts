import { produce } from 'immer';
import type { Job } from '../../graph/document.ts';
import { solveScheme } from '../../graph/solve.ts';
import { words } from '../../words/index.ts';
import { compatible } from '../combinations/compatible.ts';
import type { Recipe } from '../proposals/candidate.ts';
import { type Proposal, proposing } from '../proposals.ts';
import { figuresOf, type SchemeFigures } from './figures.ts';
import { prefer, type SchemeGoal, type Standing, standingOf } from './standing.ts';

/** What brings a scheme past another, or as far as changes take it. */
export interface Catching {
  readonly wins: boolean;
  readonly members: readonly Proposal[];
  readonly recipe: Recipe;
  readonly label: string;
  /** Of the changed scheme. */
  readonly figures: SchemeFigures;
}

/** Changes in a row that are tried. */
const most = 4;

/**
 * What would make a scheme that lost preferred to the winner: changes are added one by one, the cheapest that wins
 * or else the one that brings it furthest by the same order that chose the winner; then every change that turns
 * out not to be needed is dropped. Each step is solved. Goes in small pieces, for idle time. `wins` is false where
 * four changes are not enough; null where nothing helps at all.
 */
export function* winning(
  job: Job,
  loser: string,
  winner: SchemeFigures,
  options: { readonly speed: number; readonly goal: SchemeGoal },
): Generator<undefined, Catching | null, undefined> {
  const { speed, goal } = options;
  const mark = standingOf(winner);
  const beats = (standing: Standing) => prefer(standing, mark, goal) < 0;
  let members: readonly Proposal[] = [];
  let at = job;
  let standing = standingOf(figuresOf(job, solveScheme(job, loser), speed));
  for (let step = 0; step < most && !beats(standing); step += 1) {
    const tried: { proposal: Proposal; job: Job; standing: Standing }[] = [];
    for (const proposal of yield* proposing(at, loser, { speed })) {
      yield;
      if (proposal.remedy || !proposal.fits) continue;
      if (!members.every((member) => compatible(member, proposal))) continue;
      const changed = produce(at, proposal.recipe);
      const then = standingOf(figuresOf(changed, proposal.solution, speed));
      if (prefer(then, standing, goal) < 0) tried.push({ proposal, job: changed, standing: then });
    }
    const enough = tried
      .filter((one) => beats(one.standing))
      .sort((a, b) => a.standing.cost - b.standing.cost);
    const [best] = enough.length > 0 ? enough : tried.sort((a, b) => prefer(a.standing, b.standing, goal));
    if (!best) break;
    members = [...members, best.proposal];
    at = best.job;
    standing = best.standing;
  }
  if (members.length === 0) return null;
  if (beats(standing)) members = yield* needed(job, loser, members, speed, beats);
  const recipe = together(members);
  const changed = produce(job, recipe);
  return {
    wins: beats(standing),
    members,
    recipe,
    label: members.length === 1 ? (members[0]?.label ?? '') : words.compare.winning.label(members.length),
    figures: figuresOf(changed, solveScheme(changed, loser), speed),
  };
}

/** The changes without those that the rest wins without. */
function* needed(
  job: Job,
  loser: string,
  members: readonly Proposal[],
  speed: number,
  beats: (standing: Standing) => boolean,
): Generator<undefined, readonly Proposal[], undefined> {
  let left = members;
  for (const member of members.slice(0, -1)) {
    yield;
    const rest = left.filter((one) => one !== member);
    const changed = attempt(job, rest);
    if (changed && beats(standingOf(figuresOf(changed, solveScheme(changed, loser), speed)))) left = rest;
  }
  return left;
}

/** A later change may name what only an earlier one has made; then the earlier one is needed. */
function attempt(job: Job, members: readonly Proposal[]): Job | null {
  try {
    return produce(job, together(members));
  } catch {
    return null;
  }
}

function together(members: readonly Proposal[]): Recipe {
  return (draft) => {
    for (const { recipe } of members) recipe(draft);
  };
}
