import { produce } from 'immer';
import type { BendChoice, Job, UnitSystem } from '../../graph/document.ts';
import { setBend } from '../../graph/edits/index.ts';
import { roomIn } from '../../graph/inference/turns.ts';
import type { Route, RouteBend } from '../../graph/route.ts';
import type { FittingResult, SchemeSolution, Solved } from '../../graph/solution.ts';
import { solveScheme } from '../../graph/solve.ts';
import { type BendRow, bends } from '../../hydraulics/catalogue.ts';
import type { Section } from '../../hydraulics/types.ts';
import { words } from '../../words/index.ts';
import { sharedTurn } from '../proposals/two-45s.ts';
import { type LabScene, runOfBends } from './bench.ts';

const says = words.lessons.trial;

/** What the air does with one way of making a turn, really solved. */
export interface Trial {
  readonly job: Job;
  readonly solution: SchemeSolution;
  /** At the speed asked for; null where it has no solution, and `reason` says why. */
  readonly outcome: Solved | null;
  readonly reason: string | null;
  /** The turn as it is made, and what it costs. */
  readonly bend: RouteBend | null;
  readonly fitting: FittingResult | null;
  /** Whether the legs beside the turn have room for its arc. */
  readonly fits: boolean;
}

/**
 * Solves the scene with the turn made as `choice`, or as it is drawn for `null`.
 *
 * @param speed index into the speeds of the scheme's solution
 */
export function tryBend(scene: LabScene, choice: BendChoice | null, speed: number): Trial {
  const job = choice
    ? produce(scene.job, (draft) => setBend(draft, scene.schemeId, scene.node, choice))
    : scene.job;
  return trialOf({ ...scene, job }, speed);
}

/** Solves the scene as it is drawn. */
export function trialOf({ job, schemeId, node }: LabScene, speed: number): Trial {
  const solution = solveScheme(job, schemeId);
  const result = solution.speeds[speed]?.outcome;
  const outcome = result?.solved ? result : null;
  const { route } = solution;
  const bend = route.nodes.get(node)?.bend ?? null;
  return {
    job,
    solution,
    outcome,
    reason: result ? (result.solved ? null : result.reason) : says.noFan,
    bend,
    fitting: outcome?.fittings.find(({ at, kind }) => at === node && kind === 'bend') ?? null,
    fits: bend === null || [bend.upstream, bend.downstream].every((id) => hasRoom(route, id)),
  };
}

function hasRoom(route: Route, id: string): boolean {
  const leg = route.segments.get(id);
  return leg !== undefined && roomIn(leg, route.nodes) > -1e-9;
}

/** Angles that a row's own table ends at, where the catalogue sells it for shallow turns alone, degrees. */
const shallow: Readonly<Record<string, number>> = { 'three-piece-shallow': 60 };

/** The bends of the catalogue that are made for a duct and a turn. */
export function kindsFor(section: Section, angle: number): BendRow[] {
  const shape = section.shape === 'round' ? 'round' : 'rectangular';
  return bends.filter(
    (row) => (row.section === 'any' || row.section === shape) && angle <= (shallow[row.id] ?? 180) + 1e-6,
  );
}

export interface KindTrial {
  readonly row: BendRow;
  readonly trial: Trial;
}

/** The turn made in every kind that suits it, each at its usual radius; the gentlest on the air first. */
export function tryEveryKind(scene: LabScene, speed: number): KindTrial[] {
  const { solution, bend } = trialOf(scene, speed);
  const section = bend && solution.route.segments.get(bend.upstream)?.section;
  if (!bend || !section) return [];
  return kindsFor(section, bend.angle)
    .map((row) => ({
      row,
      trial: tryBend(scene, { kind: row.id, radiusRatio: row.defaultRadiusRatio }, speed),
    }))
    .sort((a, b) => (a.trial.fitting?.c ?? 0) - (b.trial.fitting?.c ?? 0));
}

export interface SharedTrial {
  readonly one: Trial;
  readonly two: Trial;
  /** The leg across the corner, m. */
  readonly diagonal: number;
  /** C and equivalent length of both bends together, without the leg between them. */
  readonly both: { readonly c: number; readonly equivalentLength: number; readonly loss: number };
}

/** One bend against two of half its angle across the same corner; null where there is no turn to share. */
export function tryTwoBends(scene: LabScene, choice: BendChoice, speed: number): SharedTrial | null {
  const one = tryBend(scene, choice, speed);
  const { route } = one.solution;
  const node = route.nodes.get(scene.node);
  const up = node?.bend && route.segments.get(node.bend.upstream);
  const down = node?.bend && route.segments.get(node.bend.downstream);
  if (!node || !up || !down) return null;
  const { diagonal, recipe } = sharedTurn(scene.schemeId, node, up, down);
  const two = trialOf({ ...scene, job: produce(one.job, recipe) }, speed);
  const known = new Set(route.nodes.keys());
  const halves =
    two.outcome?.fittings.filter(
      ({ at, kind }) => kind === 'bend' && (at === scene.node || !known.has(at)),
    ) ?? [];
  const total = (of: (fitting: FittingResult) => number) => halves.reduce((sum, each) => sum + of(each), 0);
  return {
    one,
    two,
    diagonal,
    both: {
      c: total(({ c }) => c),
      equivalentLength: total(({ equivalentLength }) => equivalentLength),
      loss: total(({ loss }) => loss),
    },
  };
}

export interface RunTrial {
  readonly count: number;
  readonly trial: Trial;
}

/** Most bends on the run of the bench. */
export const MOST_BENDS = 6;

/** The invented run with 0 to six square bends on it, its length the same each time. */
export function tryRuns(units: UnitSystem, bend: BendChoice, speed: number): RunTrial[] {
  return Array.from({ length: MOST_BENDS + 1 }, (_, count) => {
    const job = runOfBends(units, count, bend);
    const schemeId = job.schemes[0]?.id ?? '';
    return { count, trial: trialOf({ job, schemeId, node: 'turn-1' }, speed) };
  });
}
