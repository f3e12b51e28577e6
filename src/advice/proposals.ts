import { produce } from 'immer';
import type { Job } from '../graph/document.ts';
import { fitFindings } from '../graph/fit.ts';
import { inferRoute, schemeOf } from '../graph/infer.ts';
import { memoise } from '../graph/memo.ts';
import { placesOf } from '../graph/places.ts';
import type { Route, RouteNode } from '../graph/route.ts';
import type { SchemeSolution, Solved } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';
import { byGoal } from './goals.ts';
import {
  type Candidate,
  judgedSpeed,
  type Kind,
  type ProposalKind,
  type Recipe,
  type Scene,
} from './proposals/candidate.ts';
import { betterCaps } from './proposals/cap.ts';
import { largerDiameter, noReducer } from './proposals/diameter.ts';
import { type Effects, effectsOf, newMisfits, outcomeAt } from './proposals/effects.ts';
import { fewerTurns } from './proposals/fewer-turns.ts';
import { gentlerBends } from './proposals/gentler-bend.ts';
import { movedTurns } from './proposals/moved-turn.ts';
import { insulated, makeUpAir } from './proposals/remedies.ts';
import { lossesWithTheAirOf } from './proposals/same-air.ts';
import { smoothDuct, stretchedDuct } from './proposals/smooth-duct.ts';
import { twoBends } from './proposals/two-45s.ts';

export type { ProposalKind } from './proposals/candidate.ts';

/** A change to a scheme, already tried: its numbers are those of the changed scheme, solved. */
export interface Proposal extends Effects {
  /** The same for the same change at the same place. */
  readonly id: string;
  readonly kind: ProposalKind;
  readonly title: string;
  /** One sentence with numbers: what costs how much now, and what it would cost. */
  readonly reason: string;
  /** It is for something else than air. */
  readonly remedy?: true;
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

/** What a search over many changed schemes asks for beside. */
export interface SearchOptions extends ProposalOptions {
  /** Only candidates that it is true of are tried; all where absent. */
  readonly wanted?: (candidate: Candidate) => boolean;
  /** Stands in for a changed job: see `alikeAsOne`. */
  readonly alike?: (changed: Job) => Job;
}

const kinds: readonly Kind[] = [
  gentlerBends,
  noReducer,
  largerDiameter,
  smoothDuct,
  stretchedDuct,
  betterCaps,
  fewerTurns,
  twoBends,
  movedTurns,
];
/** For something else than air. */
const remedyKinds: readonly Kind[] = [insulated, makeUpAir];

/** Gains below this part of the air delivered are not worth a visit to the shop. */
const leastGain = 0.005;

/**
 * What would make a scheme better: each change is applied to a copy of the job and solved. Changes for air
 * that gain at least 0.5 % are ranked by the air gained at the judged speed; changes for something else (a duct that
 * drips, a house drawn too low) come after them. A change that brings an error or a danger to the drawing is not
 * proposed; one that meets a block says so and comes last. Of a very long run only the costliest turns are
 * looked at (`turnsLookedAt`). None where the scheme has no solution yet. The job is
 * not changed.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function proposals(job: Job, schemeId: string, options: ProposalOptions = {}): readonly Proposal[] {
  return found(job, schemeId, options.speed);
}

const found = memoise((job: Job, schemeId: string, asked: number | undefined): readonly Proposal[] => {
  const search = proposing(job, schemeId, asked === undefined ? {} : { speed: asked });
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
});

/** The same search in small pieces: it hands control back between them. */
export function* proposing(
  job: Job,
  schemeId: string,
  options: ProposalOptions = {},
): Generator<undefined, readonly Proposal[], undefined> {
  return yield* trying(job, schemeId, [...kinds, ...remedyKinds], options);
}

/** Only what gains a scheme air; likewise in small pieces. */
export function* improving(
  job: Job,
  schemeId: string,
  options: SearchOptions = {},
): Generator<undefined, readonly Proposal[], undefined> {
  return yield* trying(job, schemeId, kinds, options);
}

/** Only what a scheme calls for beside air, such as make-up air; likewise in small pieces. */
export function* remedying(
  job: Job,
  schemeId: string,
  options: ProposalOptions = {},
): Generator<undefined, readonly Proposal[], undefined> {
  return yield* trying(job, schemeId, remedyKinds, options);
}

function* trying(
  job: Job,
  schemeId: string,
  kinds: readonly Kind[],
  options: SearchOptions,
): Generator<undefined, readonly Proposal[], undefined> {
  const solution = solveScheme(job, schemeId);
  const judged = judgedSpeed(solution, options.speed);
  const { wanted = () => true, alike = (changed) => changed } = options;
  const scene = sceneOf(job, solution, judged, alike);
  if (!scene) return [];
  const tried: Proposal[] = [];
  for (const kind of kinds)
    for (const candidate of kind(scene)) {
      yield;
      if (!candidate || !wanted(candidate) || !scene.sound(candidate.recipe)) continue;
      tried.push(...attempt(candidate, scene, judged));
    }
  return withoutTwins(tried).sort(byGoal('air', { need: 0, flow: scene.before.flow }));
}

/** What proposals for a scheme look at; undefined where it has no air at the judged speed. */
function sceneOf(
  job: Job,
  solution: SchemeSolution,
  judged: number,
  alike: (changed: Job) => Job,
): Scene | undefined {
  const before = outcomeAt(solution, judged);
  if (!before) return undefined;
  const { route, schemeId } = solution;
  const known = gravest(route);
  const fit = fitFindings(job, route);
  const made = new WeakMap<Recipe, Job>();
  const after = (recipe: Recipe) => {
    const known = made.get(recipe) ?? alike(produce(job, recipe));
    made.set(recipe, known);
    return known;
  };
  return {
    job,
    scheme: schemeOf(job, schemeId),
    route,
    turns: costliestTurns(route, before),
    after,
    solution,
    before,
    places: placesOf(route, job.blocks),
    units: job.units,
    sound: (recipe) => isSubset(gravest(inferRoute(after(recipe), schemeId)), known),
    fits: (recipe) => {
      const changed = after(recipe);
      return newMisfits(fitFindings(changed, inferRoute(changed, schemeId)), fit).length === 0;
    },
    flowAfter: (recipe) => outcomeAt(solveScheme(after(recipe), schemeId), judged)?.flow ?? 0,
  };
}

/** Turns that are looked at in a run of so many legs: a candidate costs in proportion to the run. */
export function turnsLookedAt(legs: number): number {
  return Math.max(fewestTurns, Math.min(mostTurns, Math.floor(candidateLegs / Math.max(legs, 1))));
}

const [fewestTurns, mostTurns, candidateLegs] = [4, 32, 3200];

/** In flow order the turns whose bends cost most, as many as are looked at. */
function costliestTurns(route: Route, before: Solved): readonly RouteNode[] {
  const turns = [...route.nodes.values()].filter(({ bend }) => bend);
  const many = turnsLookedAt(route.segments.size);
  if (turns.length <= many) return turns;
  const losses = new Map<string, number>();
  for (const { at, kind, loss } of before.fittings) if (kind === 'bend') losses.set(at, loss);
  const lossAt = ({ id }: RouteNode) => losses.get(id) ?? 0;
  const chosen = new Set([...turns].sort((a, b) => lossAt(b) - lossAt(a)).slice(0, many));
  return turns.filter((node) => chosen.has(node));
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

function attempt(candidate: Candidate, scene: Scene, judged: number): Proposal[] {
  const { job, solution: before } = scene;
  const changed = scene.after(candidate.recipe);
  const solution = solveScheme(changed, before.schemeId);
  const effects = effectsOf(job, before, changed, solution, judged);
  if (!effects || (!candidate.remedy && effects.gain < leastGain * scene.before.flow)) return [];
  const { reason, ...change } = candidate;
  const words = fullStop(reason(lossesWithTheAirOf(scene.before, changed, solution)));
  return [{ ...change, ...effects, reason: words, solution }];
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
