import { estimate } from './estimate.ts';
import {
  axisOf,
  type Direction,
  directions,
  type GridExit,
  placeOf,
  type RouteGrid,
  senseOf,
  strides,
  type Triple,
  tailFrom,
  turnsFrom,
} from './grid.ts';
import { Heap } from './heap.ts';

/** A route over the grid: the cells where it turns, the first one of its first leg before them. */
export interface GridRoute {
  readonly cost: number;
  readonly seed: number;
  readonly turns: readonly { readonly cell: number; readonly direction: Direction }[];
  /** Index of the exit that it leaves by. */
  readonly exit: number;
}

export interface SearchOptions {
  /** Added to the cost of a step into each cell, whole numbers from 0 up. */
  readonly penalty?: Uint32Array | undefined;
}

/** A state from which the route leaves, by which exit, and whether it turns into the tail there. */
interface Ending {
  readonly cost: number;
  readonly state: number;
  readonly exit: number;
  readonly turn: boolean;
}

/** States taken up between two words to whoever runs the search. */
const chunk = 4096;

/**
 * The route of least cost over a grid, by A*; `null` where there is none. It yields the number of states
 * examined now and then, so that the caller can show it, or stop.
 */
export function* searchGrid(
  grid: RouteGrid,
  { penalty }: SearchOptions = {},
): Generator<number, { readonly route: GridRoute | null; readonly examined: number }> {
  const { size, steps, stepCost, turnCost, run, seeds, exits } = grid;
  const cells = size[0] * size[1] * size[2];
  const known = new Float64Array(6 * cells).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(6 * cells).fill(-1);
  const done = new Uint8Array(6 * cells);
  const stride = strides(grid);
  const open = new Heap();
  let best: Ending | null = null;
  let examined = 0;

  const offer = (cell: number, direction: Direction, cost: number, from: number) => {
    const state = 6 * cell + direction;
    if (cost >= (known[state] as number)) return;
    const whole = cost + estimate(grid, placeOf(size, cell), direction);
    if (whole === Number.POSITIVE_INFINITY || (best && whole >= best.cost)) return;
    known[state] = cost;
    before[state] = from;
    open.push(whole, cost, state);
  };

  seeds.forEach(({ cell, direction, cost }, i) => {
    offer(cell, direction, cost, -2 - i);
  });
  while (open.size > 0 && (!best || open.least < best.cost)) {
    const state = open.pop();
    if (done[state]) continue;
    done[state] = 1;
    examined += 1;
    if (examined % chunk === 0) yield examined;
    const direction = (state % 6) as Direction;
    const cell = (state - direction) / 6;
    const place = placeOf(size, cell);
    const cost = known[state] as number;

    for (let i = 0; i < exits.length; i += 1) {
      const exit = exits[i] as GridExit;
      const turn = exit.direction !== direction;
      if (turn && axisOf(exit.direction) === axisOf(direction)) continue;
      const tail = tailCost(exit, cell, place, turn);
      if (tail < 0) continue;
      const whole = cost + tail + (turn ? turnCost : 0);
      if (best && whole >= best.cost) continue;
      if (turn && !grid.turnFree(cell, direction, exit.direction, i)) continue;
      best = { cost: whole, state, exit: i, turn };
    }

    const on = walk(cell, place, direction, 1);
    if (on >= 0) offer(cell + (stride[direction] as number), direction, cost + on, state);
    for (const to of turnsFrom[direction] as readonly Direction[]) {
      const way = walk(cell, place, to, run);
      if (way < 0) continue;
      const landing = cell + run * (stride[to] as number);
      if (cost + turnCost + way >= (known[6 * landing + to] as number)) continue;
      if (!grid.turnFree(cell, direction, to)) continue;
      offer(landing, to, cost + turnCost + way, state);
    }
  }
  return { route: best ? traced(best) : null, examined };

  /** What `count` steps from a cell cost; -1 where they are not free. */
  function walk(from: number, place: Triple, direction: Direction, count: number): number {
    const axis = axisOf(direction);
    const sense = senseOf(direction);
    const end = place[axis] + sense * count;
    if (end < 0 || end >= size[axis]) return -1;
    const by = stride[direction] as number;
    let cell = from;
    let cost = 0;
    for (let i = 0; i < count; i += 1) {
      const lower = sense > 0 ? cell : cell + by;
      if ((((steps[lower] as number) >> axis) & 1) === 0) return -1;
      cell += by;
      cost += stepCost + (penalty ? (penalty[cell] as number) : 0);
    }
    return cost;
  }

  /** The straight from a cell out by an exit; -1 where it does not lead there. */
  function tailCost(exit: GridExit, cell: number, place: Triple, turn: boolean): number {
    const layers = tailFrom(exit, place);
    if (layers < 0 || (turn && layers < exit.turnLayers)) return -1;
    let cost = exit.cost + layers * stepCost;
    if (penalty)
      for (let i = 1; i <= layers; i += 1)
        cost += penalty[cell + i * (stride[exit.direction] as number)] as number;
    return cost;
  }

  function traced(end: Ending): GridRoute {
    const turns: { cell: number; direction: Direction }[] = [];
    const exitDirection = (exits[end.exit] as GridExit).direction;
    if (end.turn) turns.unshift({ cell: Math.floor(end.state / 6), direction: exitDirection });
    let state = end.state;
    for (;;) {
      const from = before[state] as number;
      if (from < 0) return { cost: end.cost, seed: -2 - from, turns, exit: end.exit };
      const direction = directions[state % 6] as Direction;
      if (from % 6 !== direction) turns.unshift({ cell: Math.floor(from / 6), direction });
      state = from;
    }
  }
}
