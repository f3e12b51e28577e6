import type { Draft } from 'immer';
import type { Job, Scheme, UnitSystem } from '../../graph/document.ts';
import type { Places } from '../../graph/places.ts';
import type { Route, RouteNode } from '../../graph/route.ts';
import type { FittingResult, SchemeSolution, Solved } from '../../graph/solution.ts';
import { formatPressure } from '../../units/index.ts';
import { words } from '../../words/index.ts';

export type ProposalKind =
  | 'gentler bend'
  | 'larger diameter'
  | 'better cap'
  | 'smooth duct'
  | 'stretched duct'
  | 'no reducer'
  | 'fewer turns'
  | 'two 45s'
  | 'moved turn'
  | 'other cap'
  | 'insulation'
  | 'make-up air';

export type Recipe = (job: Draft<Job>) => void;

/** A change worth trying. Whether it helps, and by how much, is for the solve to say. */
export interface Candidate {
  /** `${kind}:${places}`, the same for the same change at the same place. */
  readonly id: string;
  readonly kind: ProposalKind;
  readonly title: string;
  /** What the undo step is called. */
  readonly label: string;
  readonly recipe: Recipe;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  /** It is for something else than air, so it need not gain any. */
  readonly remedy?: true;
  /**
   * One sentence with numbers, without its full stop, from what the changed run costs with the air of
   * before still in it: like is compared with like, and more air is the gain.
   */
  readonly reason: (sameAir: Losses) => string;
}

/** What is lost where. */
export type Losses = Pick<Solved, 'segments' | 'fittings'>;

/** What the kinds of proposal look at. */
export interface Scene {
  readonly job: Job;
  readonly scheme: Scheme;
  readonly route: Route;
  /** The turns worth looking at, in flow order: all of a usual run, the costliest of a very long one. */
  readonly turns: readonly RouteNode[];
  /** The job after a recipe. */
  readonly after: (recipe: Recipe) => Job;
  readonly solution: SchemeSolution;
  /** The air at the judged speed as things are. */
  readonly before: Solved;
  readonly places: Places;
  readonly units: UnitSystem;
  /** True where a recipe leads to no error that is not there already. */
  readonly sound: (recipe: Recipe) => boolean;
  /** True where a recipe leads duct into no block, and out of no chase, that it keeps clear of now. */
  readonly fits: (recipe: Recipe) => boolean;
  /** Air delivered at the judged speed after a recipe, m3/s; 0 where it cannot be computed. */
  readonly flowAfter: (recipe: Recipe) => number;
}

/** Candidates of one kind; an `undefined` between them is a pause in long work. */
export type Kind = (scene: Scene) => Iterable<Candidate | undefined>;

/** The first of several fittings of a kind at a place. */
export function fittingAt(
  { fittings }: Pick<Losses, 'fittings'>,
  at: string,
  kinds: readonly FittingResult['kind'][],
): FittingResult | undefined {
  return fittings.find((fitting) => fitting.at === at && kinds.includes(fitting.kind));
}

/** Pa lost in legs and in the fittings that are charged to them or stand at the given nodes. */
export function lossOf(solved: Losses, segments: readonly string[], nodes: readonly string[]): number {
  const friction = segments.reduce((sum, id) => sum + (solved.segments.get(id)?.frictionLoss ?? 0), 0);
  const places = new Set([...segments, ...nodes]);
  return solved.fittings
    .filter((fitting) => places.has(fitting.at))
    .reduce((sum, fitting) => sum + fitting.loss, friction);
}

/** "42 Pa, 31 % of the pressure". */
export function lossWords(loss: number, solved: Solved, units: UnitSystem): string {
  const share = solved.totalPressure > 0 ? Math.round((100 * loss) / solved.totalPressure) : 0;
  return words.proposals.reasons.loss(formatPressure(loss, units), String(share));
}

/** A word with its article: "an adjustable bend", "a smooth bend". */
export function withArticle(what: string): string {
  return words.proposals.reasons.withArticle(what);
}

export function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** The judged speed of a solution: the one asked for, else the one that delivers most. */
export function judgedSpeed(solution: SchemeSolution, asked: number | undefined): number {
  if (asked !== undefined && solution.speeds[asked]) return asked;
  let best = -1;
  let most = -1;
  solution.speeds.forEach(({ outcome }, i) => {
    if (outcome.solved && outcome.flow > most) {
      most = outcome.flow;
      best = i;
    }
  });
  return best;
}
