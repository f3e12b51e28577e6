import { produce } from 'immer';
import type { Job, Vec3 } from '../../graph/document.ts';
import { fitFindings } from '../../graph/fit.ts';
import type { Finding } from '../../graph/route.ts';
import { solveScheme } from '../../graph/solve.ts';
import { words } from '../../words/index.ts';
import { axisOf, type GridExit } from './grid.ts';
import { type Layout, layOut, unitsPerPascal } from './layout.ts';
import type { RouteQuestion } from './question.ts';
import { drawRoute, type RouteLine } from './scheme.ts';
import type { GridRoute } from './search.ts';
import { searchSeveral } from './several.ts';

const says = words.search.find;

/** A route that was found, drawn, solved and measured against the room. */
export interface FoundRoute extends RouteLine {
  /** Centre line, m. */
  readonly length: number;
  readonly turns: number;
  /** Air delivered at each speed of the hood, m3/s; 0 where it cannot be computed. */
  readonly air: readonly { readonly speed: string; readonly flow: number }[];
  /** Pa on the grid, at the flow that the search weighed losses with. */
  readonly loss: number;
}

export interface RouteSearch {
  /** The one that delivers most at the last speed first. */
  readonly routes: readonly FoundRoute[];
  /** States examined, and places in the grid. */
  readonly examined: number;
  readonly cells: number;
  /** Found on the grid, but not fit for the room once drawn. */
  readonly unfit: number;
  /** Why there is no route, where there is none. */
  readonly reason: string | null;
}

export interface SearchWatch {
  /** Checked between pieces of work; the search ends with the signal's reason. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (examined: number) => void;
}

/** Ways that keep within this of each other are one way with a shift, m. */
const sideBySide = 0.6;

/** Milliseconds of work before others get their turn. */
const slice = 30;

/**
 * Looks for the routes of least loss that fit: searches the grid in small pieces, then draws each route
 * as a scheme of its own, solves it, and measures it against the blocks. What does not fit is left out.
 * The job is not changed.
 */
export async function findRoutes(
  job: Job,
  question: RouteQuestion,
  { signal, onProgress }: SearchWatch = {},
): Promise<RouteSearch> {
  const layout = layOut(job, question);
  if ('reason' in layout) return { routes: [], examined: 0, cells: 0, unfit: 0, reason: layout.reason };
  const { size } = layout.grid;
  const near = Math.max(1, Math.ceil(Math.max(sideBySide, question.duct.diameter) / question.step));
  const search = searchSeveral(layout.grid, question.routes, near);
  let step = search.next();
  for (let begun = performance.now(); !step.done; step = search.next()) {
    if (performance.now() - begun < slice) continue;
    onProgress?.(step.value);
    await pause();
    signal?.throwIfAborted();
    begun = performance.now();
  }
  const { routes: ways, examined } = step.value;
  onProgress?.(examined);
  const routes: FoundRoute[] = [];
  for (const way of ways) {
    signal?.throwIfAborted();
    const route = measured(job, question, layout, way);
    if (route) routes.push(route);
    await pause();
  }
  return {
    routes: routes.sort((a, b) => (b.air.at(-1)?.flow ?? 0) - (a.air.at(-1)?.flow ?? 0) || a.loss - b.loss),
    examined,
    cells: size[0] * size[1] * size[2],
    unfit: ways.length - routes.length,
    reason: routes.length > 0 ? null : noRoute(ways.length),
  };
}

function noRoute(unfit: number): string {
  return unfit > 0 ? says.noFit : says.nothingFits;
}

/** Lets the page, or the worker's messages, have their turn. */
function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** The route over the grid in space. */
function lineOf(layout: Layout, way: GridRoute): RouteLine {
  const exit = layout.exits[way.exit] as Layout['exits'][number];
  const { direction } = layout.grid.exits[way.exit] as GridExit;
  const turns = way.turns.map(({ cell }) => layout.at(cell));
  const end: Vec3 = [...(turns.at(-1) ?? layout.collar)];
  end[axisOf(direction)] = exit.end;
  return { exit: exit.id, points: [layout.collar, ...turns, end] };
}

function measured(job: Job, question: RouteQuestion, layout: Layout, way: GridRoute): FoundRoute | null {
  const line = lineOf(layout, way);
  let id = '';
  const drawn = produce({ ...job, clearance: question.clearance }, (draft) => {
    id = drawRoute(draft, question, line);
  });
  const solution = solveScheme(drawn, id);
  const { route } = solution;
  if ([...route.findings, ...fitFindings(drawn, route)].some((one) => unfit(one, question.hood))) return null;
  const legs = [...route.segments.values()];
  const hood = drawn.schemes
    .find((scheme) => scheme.id === id)
    ?.nodes.find((node) => node.id === question.hood)?.hood;
  return {
    ...line,
    length: legs.reduce((sum, leg) => sum + leg.length, 0),
    turns: way.turns.length,
    air: solution.speeds
      .filter((speed) => speed.hood === hood)
      .map(({ name, outcome }) => ({ speed: name, flow: outcome.solved ? outcome.flow : 0 })),
    loss: way.cost / unitsPerPascal,
  };
}

/** Findings that a route must not have to count as one that fits; where the hood itself stands is not its doing. */
function unfit({ rule, nodes }: Finding, hood: string): boolean {
  if (rule === 'fit-body' && nodes.includes(hood)) return false;
  return rule.startsWith('fit-') || rule === 'does-not-fit' || rule === 'crossing';
}
