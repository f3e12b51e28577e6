export type Axis = 0 | 1 | 2;
export type Triple = readonly [number, number, number];

/** One of the six directions along the axes: `2·axis`, plus 1 where it goes down the axis. */
export type Direction = 0 | 1 | 2 | 3 | 4 | 5;

export const directions: readonly Direction[] = [0, 1, 2, 3, 4, 5];

export function axisOf(direction: Direction): Axis {
  return (direction >> 1) as Axis;
}

export function senseOf(direction: Direction): 1 | -1 {
  return (direction & 1) === 0 ? 1 : -1;
}

export function directionOf(axis: Axis, sense: 1 | -1): Direction {
  return (2 * axis + (sense > 0 ? 0 : 1)) as Direction;
}

/** The four directions that a square turn leads to. */
export const turnsFrom: readonly (readonly Direction[])[] = directions.map((from) =>
  directions.filter((to) => axisOf(to) !== axisOf(from)),
);

/** A way out: a straight tail from a cell of the grid through an exit face. Costs are whole numbers. */
export interface GridExit {
  readonly direction: Direction;
  /** Cells of the other two axes from which a tail meets the face with room around it, in order of axis. */
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  /** Coordinate along the exit's axis of the last layer of cells before the face. */
  readonly layer: number;
  /** Layers before that, from which a turn into the tail leaves room for the turn's tangent. */
  readonly turnLayers: number;
  /** By cell of the face, first axis first: how many layers before the last one a tail may start at most; -1 for none. */
  readonly reach: Int32Array;
  /** Of the stretch from the last layer to the end of the duct, and of the end. */
  readonly cost: number;
}

/** A place from which the search may go on, with what it costs to get there. */
export interface Seed {
  readonly cell: number;
  readonly direction: Direction;
  readonly cost: number;
}

/**
 * What the search goes over. A state is a cell and the direction in which it was come to, with room
 * behind it for a turn: a turn leads on over `run` steps in the new direction at once, because that
 * much straight must lie between two turns. Costs are whole numbers, so that sums are exact.
 */
export interface RouteGrid {
  readonly size: Triple;
  /** Bit `axis` of a cell is set where the step from it up that axis is free. */
  readonly steps: Uint8Array;
  readonly stepCost: number;
  readonly turnCost: number;
  /** Steps that must lie between two turns, at least 1. */
  readonly run: number;
  readonly seeds: readonly Seed[];
  readonly exits: readonly GridExit[];
  /** Whether a turn at a cell has room; `exit` is the index of the exit whose tail starts there. */
  turnFree(cell: number, from: Direction, to: Direction, exit?: number): boolean;
}

/** What a step in each direction adds to a cell's number. */
export function strides({ size: [nx, ny] }: RouteGrid): readonly number[] {
  return [1, -1, nx, -nx, nx * ny, -nx * ny];
}

export function cellOf([nx, ny]: Triple, [x, y, z]: Triple): number {
  return x + nx * (y + ny * z);
}

export function placeOf([nx, ny]: Triple, cell: number): Triple {
  return [cell % nx, Math.floor(cell / nx) % ny, Math.floor(cell / (nx * ny))];
}

/** Layers from a place to an exit's last layer along the exit's direction; negative beyond it. */
export function layersTo(exit: GridExit, place: Triple): number {
  return senseOf(exit.direction) * (exit.layer - place[axisOf(exit.direction)]);
}

/** The two axes across an exit's direction, in order. */
export const across: readonly (readonly [Axis, Axis])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

/** Whether a straight tail leads from a place to the exit, and how many layers it passes; -1 where not. */
export function tailFrom(exit: GridExit, place: Triple): number {
  const [u, v] = across[axisOf(exit.direction)] as readonly [Axis, Axis];
  const [a, b] = [place[u], place[v]];
  if (a < exit.low[0] || a > exit.high[0] || b < exit.low[1] || b > exit.high[1]) return -1;
  const layers = layersTo(exit, place);
  const width = exit.high[0] - exit.low[0] + 1;
  const reach = exit.reach[a - exit.low[0] + width * (b - exit.low[1])] as number;
  return layers <= reach ? layers : -1;
}
