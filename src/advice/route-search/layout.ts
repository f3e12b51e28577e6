import type { Block, Job, Node, Vec3 } from '../../graph/document.ts';
import { outsideHalf } from '../../graph/fit/tube.ts';
import { schemeOf } from '../../graph/infer.ts';
import { solidBlocks } from '../../graph/surroundings.ts';
import { formatLarge } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import {
  type Axis,
  across,
  axisOf,
  cellOf,
  type Direction,
  directions,
  type GridExit,
  placeOf,
  type RouteGrid,
  type Seed,
  senseOf,
  type Triple,
} from './grid.ts';
import { type RouteLosses, routeLosses } from './losses.ts';
import {
  type BendShape,
  bendFits,
  bendShape,
  besideOf,
  blockedSpans,
  type Obstacles,
  passedAt,
  passedBy,
} from './obstacles.ts';
import { type Facing, facing, type RouteQuestion } from './question.ts';

const says = words.search.layout;

/** Cells beyond this take more memory than a browser should be asked for. */
const mostCells = 2_000_000;

/** How far beyond the outside of an exit face a run ends, m (common practice: the cap stands on the face). */
const beyondFace = 0.05;

/** Losses become whole numbers of a millionth of a pascal, so that sums of them are exact. */
export const unitsPerPascal = 1e6;

/** A room ready to be searched, and what leads from its cells back to places. */
export interface Layout {
  readonly grid: RouteGrid;
  readonly losses: RouteLosses;
  readonly collar: Vec3;
  /** Exit ids, and the end of the duct along each exit's axis, in the order of the grid's exits. */
  readonly exits: readonly { readonly id: string; readonly end: number }[];
  at(cell: number): Vec3;
}

/** Why there is nothing to search. */
export interface Unsearchable {
  readonly reason: string;
}

/**
 * Sets out the grid of a question over a job's room: through the collar, from the collar's height up, and
 * no farther than what is drawn of the room, less what the duct needs at its sides.
 */
export function layOut(job: Job, question: RouteQuestion): Layout | Unsearchable {
  const scheme = schemeOf(job, question.schemeId);
  const hood: Node | undefined = scheme.nodes.find(({ id }) => id === question.hood);
  const data = job.hoods.find(({ id }) => id === hood?.hood);
  if (!hood || !data) return { reason: says.noHood };
  const faces = job.exits.filter(({ id }) => question.exits.includes(id));
  if (faces.length === 0) return { reason: says.noExit };

  const collar = hood.at;
  const { duct, material, clearance, step } = question;
  const losses = routeLosses(job, question, data.collar);
  const obstacles: Obstacles = {
    blocks: solidBlocks(job.blocks),
    around: outsideHalf({ section: duct, material, insulation: 0 }),
    clearance,
  };
  const extent = extentOf(job, question, collar, obstacles.around + clearance);
  const low = [0, 1, 2].map(
    (i) => -Math.floor(((collar[i] as number) - (extent.min[i] as number)) / step + 1e-9),
  );
  const size = [0, 1, 2].map(
    (i) =>
      Math.floor(((extent.max[i] as number) - (collar[i] as number)) / step + 1e-9) - (low[i] as number) + 1,
  ) as unknown as Triple;
  const level = extent.min[2] === extent.max[2] ? extent.min[2] : null;
  const flat = level === null ? size : ([size[0], size[1], 1] as const);
  const cells = flat[0] * flat[1] * flat[2];
  if (cells > mostCells) return { reason: says.tooFine(formatLarge(cells)) };

  const coordinate = (axis: Axis, index: number): number =>
    axis === 2 && level !== null ? level : collar[axis] + ((low[axis] as number) + index) * step;
  const room: Room = { obstacles, losses, collar, step, size: flat, coordinate };
  const seeds = seedsOf(room, question, data.collar.shape === 'round' ? data.collar.diameter / 2 : 0);
  if (seeds.length === 0)
    return {
      reason: says.noRoom,
    };
  const ways = faces.flatMap((face) => {
    const way = exitOf(room, facing(face, collar), passedBy(face), losses.exit[face.kind]);
    return way ? [{ ...way, face }] : [];
  });
  if (ways.length === 0) return { reason: says.noReach };

  const at = (cell: number): Vec3 => {
    const place = placeOf(flat, cell);
    return [coordinate(0, place[0]), coordinate(1, place[1]), coordinate(2, place[2])];
  };
  const first = new Set(seeds.map(({ cell }) => cell));
  const passedHood = passedAt(collar);
  const passes = ways.map(({ face }) => passedBy(face));
  const turns = turnRoom(room, cells, at);
  const grid: RouteGrid = {
    size: flat,
    steps: stepsOf(room),
    stepCost: whole(losses.metre * step),
    turnCost: whole(losses.turn),
    run: Math.max(1, Math.ceil((2 * losses.tangent) / step - 1e-9)),
    seeds,
    exits: ways.map(({ exit }) => exit),
    turnFree(cell, from, to, exit) {
      const leaves = exit === undefined ? undefined : passes[exit];
      const begins = from === question.outlet && first.has(cell);
      if (!leaves && !begins) return turns.known(cell, from, to);
      return turns.tried(
        cell,
        from,
        to,
        (block) => (begins && passedHood(block)) || (leaves?.(block) ?? false),
      );
    },
  };
  return { grid, losses, collar, at, exits: ways.map(({ face, end }) => ({ id: face.id, end })) };
}

interface Room {
  readonly obstacles: Obstacles;
  readonly losses: RouteLosses;
  readonly collar: Vec3;
  readonly step: number;
  readonly size: Triple;
  coordinate(axis: Axis, index: number): number;
}

function whole(pascal: number): number {
  return Math.round(pascal * unitsPerPascal);
}

/**
 * The room that is known of: around the blocks, the exits' inner sides and the collar, `margin` in from its
 * sides. It begins at the collar's height: duct that dips collects grease and water (common practice).
 */
function extentOf(job: Job, { space, outlet }: RouteQuestion, collar: Vec3, margin: number) {
  const min: Vec3 = [...collar];
  const max: Vec3 = [...collar];
  const take = (corner: readonly number[]) => {
    for (const i of [0, 1, 2] as const) {
      min[i] = Math.min(min[i], corner[i] as number);
      max[i] = Math.max(max[i], corner[i] as number);
    }
  };
  for (const block of solidBlocks(job.blocks)) {
    take(block.min);
    take(block.max);
  }
  for (const face of job.exits) {
    const { direction, inside, min: low, max: high } = facing(face, collar);
    const inner = (corner: Vec3) => corner.map((value, i) => (i === axisOf(direction) ? inside : value));
    take(inner(low));
    take(inner(high));
  }
  for (const i of [0, 1, 2] as const) {
    min[i] = Math.min(min[i] + margin, collar[i]);
    max[i] = Math.max(max[i] - margin, collar[i]);
  }
  min[2] = collar[2];
  if (space.kind === 'level') {
    min[2] = axisOf(outlet) === 2 ? space.height : collar[2];
    max[2] = min[2];
  }
  return { min, max };
}

/** Every step between neighbouring cells, free unless duct along it would be too near to something. */
function stepsOf({ obstacles, step, size, coordinate }: Room): Uint8Array {
  const steps = new Uint8Array(size[0] * size[1] * size[2]);
  for (const axis of [0, 1, 2] as const) {
    const [u, v] = across[axis] as readonly [Axis, Axis];
    const last = size[axis] - 1;
    const by = cellOf(size, [0, 1, 2].map((i) => (i === axis ? 1 : 0)) as unknown as Triple);
    for (let a = 0; a < size[u]; a += 1) {
      const near = besideOf(obstacles, u, coordinate(u, a));
      for (let b = 0; b < size[v]; b += 1) {
        const line = lineAt(axis, a, b, 0, last, coordinate);
        const spans = blockedSpans(line, near);
        const place = [0, 0, 0];
        place[u] = a;
        place[v] = b;
        let cell = cellOf(size, place as unknown as Triple);
        for (let i = 0; i < last; i += 1, cell += by) {
          const from = coordinate(axis, i);
          if (spans.some(({ low, high }) => from < high && from + step > low)) continue;
          steps[cell] = (steps[cell] as number) | (1 << axis);
        }
      }
    }
  }
  return steps;
}

function lineAt(axis: Axis, a: number, b: number, from: number, to: number, coordinate: Room['coordinate']) {
  const [u, v] = across[axis] as readonly [Axis, Axis];
  const end = (index: number): Vec3 => {
    const at: Vec3 = [0, 0, 0];
    at[axis] = coordinate(axis, index);
    at[u] = coordinate(u, a);
    at[v] = coordinate(v, b);
    return at;
  };
  return { axis, from: end(from), to: end(to) };
}

/** Cells straight ahead of the collar from which a first turn may be made. */
function seedsOf(room: Room, question: RouteQuestion, collarHalf: number): Seed[] {
  const { obstacles, losses, collar } = room;
  const axis = axisOf(question.outlet);
  const sense = senseOf(question.outlet);
  const ahead = placesAhead(room, question);
  const far: Vec3 = [...collar];
  far[axis] += sense * Math.max(0, ...ahead.map(({ distance }) => distance));
  const spans = blockedSpans(
    { axis, from: collar, to: far },
    { ...obstacles, around: Math.max(obstacles.around, collarHalf) },
    passedAt(collar),
  );
  const clear = Math.min(
    ...spans.flatMap(({ low, high }) => {
      const [near, end] = sense > 0 ? [low, high] : [high, low];
      return sense * (end - collar[axis]) > 0 ? [Math.max(0, sense * (near - collar[axis]))] : [];
    }),
  );
  const least = losses.tangent + losses.cone;
  return ahead
    .filter(({ distance }) => distance >= least - 1e-9 && distance <= clear + 1e-9)
    .map(({ place, cost }) => ({ cell: cellOf(room.size, place), direction: question.outlet, cost }));
}

/** Cells on the line that the collar points along; of a level, the one where the riser meets it. */
function placesAhead({ losses, collar, step, size, coordinate }: Room, { outlet, space }: RouteQuestion) {
  const axis = axisOf(outlet);
  const sense = senseOf(outlet);
  const start = ([0, 1, 2] as const).map((i) => Math.round((collar[i] - coordinate(i, 0)) / step));
  if (space.kind === 'level' && axis === 2) {
    const distance = sense * (coordinate(2, 0) - collar[2]);
    const place = [start[0], start[1], 0] as unknown as Triple;
    return [{ distance, place, cost: whole(losses.metre * distance) }];
  }
  const from = start[axis] as number;
  const count = sense > 0 ? size[axis] - from : from + 1;
  return Array.from({ length: count }, (_, i) => ({
    distance: i * step,
    place: start.map((at, k) => (k === axis ? at + sense * i : at)) as unknown as Triple,
    cost: i * whole(losses.metre * step),
  }));
}

function exitOf(
  { obstacles, losses, step, size, coordinate }: Room,
  { direction, inside, outside, min, max }: Facing,
  passed: (block: Block) => boolean,
  capCost: number,
): { readonly exit: GridExit; readonly end: number } | null {
  const axis = axisOf(direction);
  const sense = senseOf(direction);
  const first = sense > 0 ? 0 : size[axis] - 1;
  let layer = -1;
  for (let i = 0; i < size[axis]; i += 1) {
    const before = sense * (inside - coordinate(axis, i)) >= 0;
    if (before && (layer < 0 || sense > 0)) layer = i;
  }
  if (layer < 0) return null;
  const [u, v] = across[axis] as readonly [Axis, Axis];
  const range = (side: Axis): readonly [number, number] => {
    const cells = Array.from({ length: size[side] }, (_, i) => i).filter((i) => {
      const at = coordinate(side, i);
      return at - obstacles.around >= min[side] && at + obstacles.around <= max[side];
    });
    return [cells[0] ?? 0, cells.at(-1) ?? -1];
  };
  const [[uLow, uHigh], [vLow, vHigh]] = [range(u), range(v)];
  if (uHigh < uLow || vHigh < vLow) return null;

  const end = outside + sense * beyondFace;
  const here = coordinate(axis, layer);
  const width = uHigh - uLow + 1;
  const reach = new Int32Array(width * (vHigh - vLow + 1));
  for (let a = uLow; a <= uHigh; a += 1) {
    const around = besideOf(obstacles, u, coordinate(u, a));
    for (let b = vLow; b <= vHigh; b += 1) {
      const line = lineAt(axis, a, b, first, layer, coordinate);
      line.to[axis] = end;
      const last = Math.max(
        Number.NEGATIVE_INFINITY,
        ...blockedSpans(line, around, passed)
          .filter(({ low, high }) => sense * ((sense > 0 ? low : high) - end) < 0)
          .map(({ low, high }) => sense * (sense > 0 ? high : low)),
      );
      const free = Math.floor((sense * here - last) / step + 1e-9);
      reach[a - uLow + width * (b - vLow)] = Math.max(-1, Math.min(Math.abs(layer - first), free));
    }
  }
  if (reach.every((layers) => layers < 0)) return null;
  const room = Math.abs(inside - here);
  return {
    end,
    exit: {
      direction,
      low: [uLow, vLow],
      high: [uHigh, vHigh],
      layer,
      turnLayers: Math.max(0, Math.ceil((losses.tangent - room) / step - 1e-9)),
      reach,
      cost: whole(losses.metre * Math.abs(end - here)) + whole(capCost),
    },
  };
}

/** Which of the twelve ways a square bend can lie, by the two rays from its corner. */
const lies: readonly number[] = (() => {
  const numbers = new Array<number>(36).fill(-1);
  let count = 0;
  for (const one of directions)
    for (const other of directions)
      if (axisOf(one) < axisOf(other)) {
        numbers[6 * one + other] = count;
        numbers[6 * other + one] = count;
        count += 1;
      }
  return numbers;
})();

/** Room for bends, remembered for what any leg may pass. */
function turnRoom({ obstacles, losses }: Room, cells: number, at: (cell: number) => Vec3) {
  const remembered = new Uint8Array(12 * cells);
  const shapes = new Map<number, BendShape>();
  const opposite = (direction: Direction) => (direction ^ 1) as Direction;
  const lie = (from: Direction, to: Direction) => lies[6 * opposite(from) + to] as number;
  const tried = (cell: number, from: Direction, to: Direction, passed?: (block: Block) => boolean) => {
    let shape = shapes.get(lie(from, to));
    if (!shape) {
      shape = bendShape(from, to, losses.radius, obstacles.around);
      shapes.set(lie(from, to), shape);
    }
    return bendFits(shape, at(cell), obstacles, passed);
  };
  const known = (cell: number, from: Direction, to: Direction) => {
    const slot = 12 * cell + lie(from, to);
    if (remembered[slot] === 0) remembered[slot] = tried(cell, from, to) ? 1 : 2;
    return remembered[slot] === 1;
  };
  return { tried, known };
}
