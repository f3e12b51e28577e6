import { produce } from 'immer';
import type { Job } from '../graph/document.ts';
import { inferRoute, schemeOf } from '../graph/infer.ts';
import { memoise } from '../graph/memo.ts';
import { placesOf } from '../graph/places.ts';
import type { Route } from '../graph/route.ts';
import type { SchemeSolution, Solved } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';
import {
  type Candidate,
  judgedSpeed,
  type Kind,
  type ProposalKind,
  type Recipe,
} from './proposals/candidate.ts';
import { betterCaps } from './proposals/cap.ts';
import { largerDiameter, noReducer } from './proposals/diameter.ts';
import { fewerTurns } from './proposals/fewer-turns.ts';
import { gentlerBends } from './proposals/gentler-bend.ts';
import { lossesWithTheAirOf } from './proposals/same-air.ts';
import { smoothDuct, stretchedDuct } from './proposals/smooth-duct.ts';

export type { ProposalKind } from './proposals/candidate.ts';

/** A change to a scheme, already tried: its numbers are those of the changed scheme, solved. */
export interface Proposal {
  /** The same for the same change at the same place. */
  readonly id: string;
  readonly kind: ProposalKind;
  readonly title: string;
  /** One sentence with numbers: what costs how much now, and what it would cost. */
  readonly reason: string;
  /** Air gained at the judged speed, m3/s. */
  readonly gain: number;
  readonly gains: readonly { readonly speed: string; readonly before: number; readonly after: number }[];
  readonly recipe: Recipe;
  /** What the undo step is called. */
  readonly label: string;
  /** Of the changed scheme. */
  readonly solution: SchemeSolution;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

export interface ProposalOptions {
  /** Index into the solution's speeds that proposals are judged at; the one that delivers most where absent. */
  readonly speed?: number;
}

const kinds: readonly Kind[] = [
  gentlerBends,
  noReducer,
  largerDiameter,
  smoothDuct,
  stretchedDuct,
  betterCaps,
  fewerTurns,
];

/** Gains below this part of the air delivered are not worth a visit to the shop. */
const leastGain = 0.005;

/**
 * What would let more air out of a scheme: each change is applied to a copy of the job and solved, and
 * those that gain at least 0.5 % are ranked by the air gained at the judged speed. A change that brings
 * an error or a danger that was not there (a bend that does not fit, say) is not proposed. None where the scheme
 * has no solution yet. The job is not changed.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function proposals(job: Job, schemeId: string, options: ProposalOptions = {}): readonly Proposal[] {
  return ranked(job, schemeId, options.speed);
}

const ranked = memoise((job: Job, schemeId: string, asked: number | undefined): readonly Proposal[] => {
  const solution = solveScheme(job, schemeId);
  const judged = judgedSpeed(solution, asked);
  const before = outcomeAt(solution, judged);
  if (!before) return [];
  const { route } = solution;
  const known = gravest(route);
  const after = (recipe: Recipe) => produce(job, recipe);
  const scene = {
    job,
    scheme: schemeOf(job, schemeId),
    route,
    before,
    places: placesOf(route, job.blocks),
    units: job.units,
    sound: (recipe: Recipe) => isSubset(gravest(inferRoute(after(recipe), schemeId)), known),
    flowAfter: (recipe: Recipe) => outcomeAt(solveScheme(after(recipe), schemeId), judged)?.flow ?? 0,
  };
  const tried = kinds
    .flatMap((kind) => kind(scene))
    .filter((candidate) => scene.sound(candidate.recipe))
    .flatMap((candidate) => attempt(candidate, solution, after(candidate.recipe), judged));
  return withoutTwins(tried).sort((a, b) => b.gain - a.gain || (a.id < b.id ? -1 : 1));
});

function outcomeAt(solution: SchemeSolution, speed: number): Solved | undefined {
  const outcome = solution.speeds[speed]?.outcome;
  return outcome?.solved && outcome.flow > 0 ? outcome : undefined;
}

function gravest(route: Route): ReadonlySet<string> {
  return new Set(
    route.findings
      .filter(({ severity }) => severity === 'error' || severity === 'danger')
      .map(({ id }) => id),
  );
}

function isSubset(some: ReadonlySet<string>, all: ReadonlySet<string>): boolean {
  return [...some].every((id) => all.has(id));
}

function attempt(candidate: Candidate, before: SchemeSolution, changed: Job, judged: number): Proposal[] {
  const solution = solveScheme(changed, before.schemeId);
  const now = outcomeAt(before, judged);
  const then = outcomeAt(solution, judged);
  if (!now || !then || then.flow - now.flow < leastGain * now.flow) return [];
  const { reason, ...change } = candidate;
  const gains = before.speeds.map(({ name }, i) => ({
    speed: name,
    before: outcomeAt(before, i)?.flow ?? 0,
    after: outcomeAt(solution, i)?.flow ?? 0,
  }));
  const words = fullStop(reason(lossesWithTheAirOf(now, changed, solution)));
  return [{ ...change, reason: words, gain: then.flow - now.flow, gains, solution }];
}

/** One full stop at the end, also after an abbreviation that has its own. */
function fullStop(words: string): string {
  return words.endsWith('.') ? words : `${words}.`;
}

/** The same duct changed to the same effect is one proposal, however it was come upon; the first one stands. */
function withoutTwins(all: readonly Proposal[]): Proposal[] {
  const same = (a: Proposal, b: Proposal) =>
    Math.abs(a.gain - b.gain) <= 1e-12 &&
    a.segments.length > 0 &&
    [...a.segments].sort().join() === [...b.segments].sort().join();
  return all.filter((one, i) => !all.slice(0, i).some((other) => same(one, other)));
}
