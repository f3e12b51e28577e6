import {
  across,
  axisOf,
  cellOf,
  type Direction,
  directions,
  type GridExit,
  placeOf,
  type RouteGrid,
  senseOf,
  type Triple,
  turnsFrom,
} from '../../src/advice/route-search/grid.ts';
import { type Random, whole } from './random.ts';

/** A small grid with steps, turns and tails closed at random; flat grids have one layer. */
export function randomGrid(random: Random, flat: boolean, free = 0.82): RouteGrid {
  const size: Triple = [whole(random, 3, 7), whole(random, 3, 7), flat ? 1 : whole(random, 2, 4)];
  const cells = size[0] * size[1] * size[2];
  const bitsOf = (cell: number) => {
    const place = placeOf(size, cell);
    return ([0, 1, 2] as const).reduce<number>(
      (bits, axis) => bits | (place[axis] < size[axis] - 1 && random() < free ? 1 << axis : 0),
      0,
    );
  };
  const steps = Uint8Array.from(Array.from({ length: cells }, (_, cell) => bitsOf(cell)));
  const closed = new Set<string>();
  for (let cell = 0; cell < cells; cell += 1)
    for (const from of directions)
      for (const to of turnsFrom[from] as readonly Direction[])
        for (const exit of ['', 0, 1]) if (random() > 0.9) closed.add(`${cell} ${from} ${to} ${exit}`);
  const sides = flat ? 4 : 6;
  const exits = Array.from({ length: whole(random, 1, 2) }, () =>
    randomExit(random, size, steps, whole(random, 0, sides - 1) as Direction),
  );
  return {
    size,
    steps,
    stepCost: whole(random, 1, 9),
    turnCost: whole(random, 0, 40),
    run: whole(random, 1, 3),
    seeds: Array.from({ length: whole(random, 1, 2) }, () => ({
      cell: whole(random, 0, cells - 1),
      direction: whole(random, 0, 5) as Direction,
      cost: whole(random, 0, 20),
    })),
    exits,
    turnFree: (cell, from, to, exit) => !closed.has(`${cell} ${from} ${to} ${exit ?? ''}`),
  };
}

function randomExit(random: Random, size: Triple, steps: Uint8Array, direction: Direction): GridExit {
  const axis = axisOf(direction);
  const [u, v] = across[axis] as readonly [0 | 1 | 2, 0 | 1 | 2];
  const range = (side: 0 | 1 | 2) =>
    [whole(random, 0, size[side] - 1), whole(random, 0, size[side] - 1)].sort((a, b) => a - b);
  const [[uLow = 0, uHigh = 0], [vLow = 0, vHigh = 0]] = [range(u), range(v)];
  const layer = senseOf(direction) > 0 ? size[axis] - 1 : 0;
  const width = uHigh - uLow + 1;
  const reach = new Int32Array(width * (vHigh - vLow + 1));
  for (let a = uLow; a <= uHigh; a += 1)
    for (let b = vLow; b <= vHigh; b += 1) {
      const place = [0, 0, 0];
      place[u] = a;
      place[v] = b;
      let layers = 0;
      for (let at = layer; ; layers += 1) {
        place[axis] = at - senseOf(direction);
        if (place[axis] < 0 || place[axis] >= size[axis]) break;
        const from = cellOf(size, place as unknown as Triple);
        if (!stepFree(size, steps, from, direction)) break;
        at = place[axis];
      }
      reach[a - uLow + width * (b - vLow)] = random() < 0.1 ? -1 : layers;
    }
  return {
    direction,
    low: [uLow, vLow],
    high: [uHigh, vHigh],
    layer,
    turnLayers: whole(random, 0, 2),
    reach,
    cost: whole(random, 0, 60),
  };
}

/** Whether one step from a cell stays in the grid and is free. */
function stepFree(size: Triple, steps: Uint8Array, cell: number, direction: Direction): boolean {
  const next = neighbour(size, cell, direction);
  if (next === null) return false;
  const lower = senseOf(direction) > 0 ? cell : next;
  return (((steps[lower] as number) >> axisOf(direction)) & 1) === 1;
}

function neighbour(size: Triple, cell: number, direction: Direction): number | null {
  const place = [...placeOf(size, cell)];
  const axis = axisOf(direction);
  const at = (place[axis] as number) + senseOf(direction);
  if (at < 0 || at >= size[axis]) return null;
  place[axis] = at;
  return cellOf(size, place as unknown as Triple);
}

/**
 * The least cost of any route, by trying every move from every state again and again until nothing gets
 * cheaper. A state is a cell, a direction, and how many steps have been gone straight since the last turn:
 * one step at a time, with no estimate and no heap.
 */
export function leastByExhaustion(grid: RouteGrid): number {
  const { size, steps, run, stepCost, turnCost } = grid;
  const cells = size[0] * size[1] * size[2];
  const cost = new Map<string, number>();
  const key = (cell: number, direction: Direction, gone: number) => `${cell} ${direction} ${gone}`;
  let changed = true;
  const lower = (cell: number, direction: Direction, gone: number, value: number) => {
    const at = key(cell, direction, gone);
    if (value >= (cost.get(at) ?? Number.POSITIVE_INFINITY)) return;
    cost.set(at, value);
    changed = true;
  };
  for (const seed of grid.seeds) lower(seed.cell, seed.direction, run, seed.cost);
  let best = Number.POSITIVE_INFINITY;
  while (changed) {
    changed = false;
    for (let cell = 0; cell < cells; cell += 1)
      for (const direction of directions)
        for (let gone = 0; gone <= run; gone += 1) {
          const here = cost.get(key(cell, direction, gone));
          if (here === undefined) continue;
          const next = stepFree(size, steps, cell, direction) ? neighbour(size, cell, direction) : null;
          if (next !== null) lower(next, direction, Math.min(run, gone + 1), here + stepCost);
          if (gone < run) continue;
          for (const to of turnsFrom[direction] as readonly Direction[])
            if (grid.turnFree(cell, direction, to)) lower(cell, to, 0, here + turnCost);
          grid.exits.forEach((exit, i) => {
            const tail = tailCost(grid, exit, cell);
            if (tail === null) return;
            if (exit.direction === direction) best = Math.min(best, here + tail.cost);
            else if (
              axisOf(exit.direction) !== axisOf(direction) &&
              tail.layers >= exit.turnLayers &&
              grid.turnFree(cell, direction, exit.direction, i)
            )
              best = Math.min(best, here + turnCost + tail.cost);
          });
        }
  }
  return best;
}

function tailCost({ size, stepCost }: RouteGrid, exit: GridExit, cell: number) {
  const place = placeOf(size, cell);
  const [u, v] = across[axisOf(exit.direction)] as readonly [0 | 1 | 2, 0 | 1 | 2];
  const inRange =
    place[u] >= exit.low[0] &&
    place[u] <= exit.high[0] &&
    place[v] >= exit.low[1] &&
    place[v] <= exit.high[1];
  if (!inRange) return null;
  const layers = Math.abs(exit.layer - place[axisOf(exit.direction)]);
  const width = exit.high[0] - exit.low[0] + 1;
  const reach = exit.reach[place[u] - exit.low[0] + width * (place[v] - exit.low[1])] ?? -1;
  return layers <= reach ? { layers, cost: layers * stepCost + exit.cost } : null;
}

/** Every move and ending of a grid with nothing in the way, for what must hold of an estimate. */
export function* openMoves(grid: RouteGrid): Generator<{
  place: Triple;
  direction: Direction;
  cost: number;
  next: { place: Triple; direction: Direction };
}> {
  const { size, run, stepCost, turnCost } = grid;
  for (let cell = 0; cell < size[0] * size[1] * size[2]; cell += 1) {
    const place = placeOf(size, cell);
    for (const direction of directions) {
      const on = neighbour(size, cell, direction);
      if (on !== null)
        yield { place, direction, cost: stepCost, next: { place: placeOf(size, on), direction } };
      for (const to of turnsFrom[direction] as readonly Direction[]) {
        let at: number | null = cell;
        for (let i = 0; i < run && at !== null; i += 1) at = neighbour(size, at, to);
        if (at !== null)
          yield {
            place,
            direction,
            cost: turnCost + run * stepCost,
            next: { place: placeOf(size, at), direction: to },
          };
      }
    }
  }
}
