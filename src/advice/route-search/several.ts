import {
  axisOf,
  cellOf,
  type Direction,
  type GridExit,
  layersTo,
  placeOf,
  type RouteGrid,
  type Seed,
  strides,
  type Triple,
} from './grid.ts';
import { type GridRoute, searchGrid } from './search.ts';

/** Routes that share less than this part of their way are different routes. */
const mostShared = 0.6;
/** A route that costs more than this many times the best is not offered. */
const worstRatio = 2.5;
/** Searches for another way to one exit before it is given up. */
const attempts = 4;

export interface Several {
  /** In the order of their cost on the grid. */
  readonly routes: readonly GridRoute[];
  readonly examined: number;
}

interface Found {
  readonly route: GridRoute;
  readonly cells: readonly number[];
}

/**
 * The best route to each exit, and other ways to it that really are other ways: what lies within `near`
 * cells of a found route is made dearer and the search is done again; a route counts where less than 60 %
 * of its way lies that near to one found before, and where it is not that one moved a little or in free room. The first of
 * the result is the best of all.
 */
export function* searchSeveral(grid: RouteGrid, wanted: number, near: number): Generator<number, Several> {
  const found: Found[] = [];
  let examined = 0;
  for (let exit = 0; exit < grid.exits.length; exit += 1) {
    const only: RouteGrid = {
      ...grid,
      exits: [grid.exits[exit] as GridExit],
      turnFree: (cell, from, to, leaves) =>
        grid.turnFree(cell, from, to, leaves === undefined ? undefined : exit),
    };
    let penalty: Uint32Array | undefined;
    for (let attempt = 0; attempt < (wanted > 1 ? attempts : 1); attempt += 1) {
      const search = searchGrid(only, { penalty });
      let step = search.next();
      for (; !step.done; step = search.next()) yield examined + step.value;
      examined += step.value.examined;
      if (!step.value.route) break;
      const route = { ...step.value.route, exit };
      const cells = cellsOf(grid, route);
      const own = { ...route, cost: costOf(grid, route, cells.length - 1) };
      const another = (each: Found) =>
        each.route.exit !== exit ||
        (sharedPart(grid, cells, each.cells, near) < mostShared && !shifted(grid, route, each.route, near));
      if (found.every(another)) found.push({ route: own, cells });
      penalty = dearer(grid, penalty, cells, near, own.cost);
    }
  }
  const routes = found.map(({ route }) => route).sort((a, b) => a.cost - b.cost);
  const best = routes[0]?.cost ?? 0;
  return { routes: routes.filter(({ cost }) => cost <= worstRatio * best).slice(0, wanted), examined };
}

/** Every cell of a route in order, from its seed to the last layer before its exit. */
export function cellsOf(grid: RouteGrid, route: GridRoute): readonly number[] {
  const stride = strides(grid);
  const exit = grid.exits[route.exit] as GridExit;
  const seed = grid.seeds[route.seed] as Seed;
  const cells = [seed.cell];
  let at = seed.cell;
  let direction: Direction = seed.direction;
  const goTo = (end: number) => {
    while (at !== end) {
      at += stride[direction] as number;
      cells.push(at);
    }
  };
  for (const turn of route.turns) {
    goTo(turn.cell);
    direction = turn.direction;
  }
  goTo(at + layersTo(exit, placeOf(grid.size, at)) * (stride[exit.direction] as number));
  return cells;
}

/** What a route costs without anything made dearer. */
function costOf(grid: RouteGrid, route: GridRoute, steps: number): number {
  const seed = grid.seeds[route.seed] as Seed;
  const exit = grid.exits[route.exit] as GridExit;
  return seed.cost + steps * grid.stepCost + route.turns.length * grid.turnCost + exit.cost;
}

function sharedPart(
  grid: RouteGrid,
  cells: readonly number[],
  others: readonly number[],
  near: number,
): number {
  const marked = around(grid, others, near);
  return cells.filter((cell) => marked.has(cell)).length / cells.length;
}

/**
 * Whether one route is the other, moved: both turn the same ways one after another, and every turn either
 * lies within twice `near` cells of the other's, or nothing is in the way between the two.
 */
function shifted(grid: RouteGrid, one: GridRoute, other: GridRoute, near: number): boolean {
  const ways = (route: GridRoute) =>
    [grid.seeds[route.seed]?.direction, ...route.turns.map(({ direction }) => direction)].join();
  if (ways(one) !== ways(other)) return false;
  const [from, to] = [cornersOf(grid, one), cornersOf(grid, other)];
  const apart = Math.max(
    ...from.flatMap((at, i) => at.map((value, k) => Math.abs((to[i]?.[k] as number) - value))),
  );
  if (apart <= 2 * near) return true;
  for (let step = 1; step < apart; step += 1) {
    const between = from.map(
      (at, i) =>
        at.map((value, k) =>
          Math.round(value + (((to[i]?.[k] as number) - value) * step) / apart),
        ) as unknown as Triple,
    );
    if (!between.every((at, i) => i === 0 || legFree(grid, between[i - 1] as Triple, at))) return false;
  }
  return true;
}

/** Places of the seed, the turns, and the last layer before the exit. */
function cornersOf(grid: RouteGrid, route: GridRoute): readonly Triple[] {
  const corners = [(grid.seeds[route.seed] as Seed).cell, ...route.turns.map(({ cell }) => cell)];
  const end = [...placeOf(grid.size, corners.at(-1) as number)];
  const exit = grid.exits[route.exit] as GridExit;
  end[axisOf(exit.direction)] = exit.layer;
  return [...corners.map((cell) => placeOf(grid.size, cell)), end as unknown as Triple];
}

/** Whether every step between two places on one line is free. */
function legFree({ size, steps }: RouteGrid, a: Triple, b: Triple): boolean {
  const axis = ([0, 1, 2] as const).find((each) => a[each] !== b[each]);
  if (axis === undefined) return true;
  const place: [number, number, number] = [...a];
  for (let at = Math.min(a[axis], b[axis]); at < Math.max(a[axis], b[axis]); at += 1) {
    place[axis] = at;
    if ((((steps[cellOf(size, place)] as number) >> axis) & 1) === 0) return false;
  }
  return true;
}

/** Cells within a box of `near` cells around any of a route's. */
function around({ size }: RouteGrid, cells: readonly number[], near: number): ReadonlySet<number> {
  const marked = new Set<number>();
  const [nx, ny, nz] = size;
  for (const cell of cells) {
    const [x, y, z] = placeOf(size, cell);
    for (let k = Math.max(0, z - near); k <= Math.min(nz - 1, z + near); k += 1)
      for (let j = Math.max(0, y - near); j <= Math.min(ny - 1, y + near); j += 1)
        for (let i = Math.max(0, x - near); i <= Math.min(nx - 1, x + near); i += 1)
          marked.add(i + nx * (j + ny * k));
  }
  return marked;
}

/** Going the whole of a found route's way again costs half as much more, each time that it is found. */
function dearer(
  grid: RouteGrid,
  before: Uint32Array | undefined,
  cells: readonly number[],
  near: number,
  cost: number,
): Uint32Array {
  const penalty = before ?? new Uint32Array(grid.size[0] * grid.size[1] * grid.size[2]);
  const each = Math.round(cost / 2 / cells.length);
  for (const cell of around(grid, cells, near)) penalty[cell] = (penalty[cell] as number) + each;
  return penalty;
}
