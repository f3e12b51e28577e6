import {
  type Axis,
  across,
  axisOf,
  type Direction,
  type GridExit,
  layersTo,
  senseOf,
  type Triple,
} from './grid.ts';

/** What the estimate needs of a grid. */
interface Costs {
  readonly stepCost: number;
  readonly turnCost: number;
  readonly exits: readonly GridExit[];
}

/** How far a value lies below or above a range, with its sign; 0 within. */
function beside(value: number, low: number, high: number): number {
  return value < low ? low - value : value > high ? high - value : 0;
}

/**
 * The fewest square turns from a direction to a tail, when `du` and `dv` steps across it are still to be
 * gone and nothing is in the way.
 */
export function fewestTurns(from: Direction, exit: Direction, du: number, dv: number): number {
  const [u] = across[axisOf(exit)] as readonly [Axis, Axis];
  if (axisOf(from) === axisOf(exit)) {
    if (du !== 0 && dv !== 0) return 3;
    return from === exit && du === 0 && dv === 0 ? 0 : 2;
  }
  const [along, other] = axisOf(from) === u ? [du, dv] : [dv, du];
  if (along * senseOf(from) < 0) return 3;
  return other === 0 ? 1 : 2;
}

/**
 * The least that a route can still cost from a state: its steps as if nothing were in the way, the fewest
 * turns, and the exit; the least over all exits. It never overrates, and falls by no more than a move costs
 * (it is consistent), so a state is final once it is examined.
 */
export function estimate({ stepCost, turnCost, exits }: Costs, place: Triple, direction: Direction): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < exits.length; i += 1) {
    const exit = exits[i] as GridExit;
    const layers = Math.abs(layersTo(exit, place));
    const [u, v] = across[axisOf(exit.direction)] as readonly [Axis, Axis];
    const du = beside(place[u], exit.low[0], exit.high[0]);
    const dv = beside(place[v], exit.low[1], exit.high[1]);
    const cost =
      exit.cost +
      stepCost * (layers + Math.abs(du) + Math.abs(dv)) +
      turnCost * fewestTurns(direction, exit.direction, du, dv);
    if (cost < least) least = cost;
  }
  return least;
}
