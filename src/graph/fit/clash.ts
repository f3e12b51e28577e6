import { words } from '../../words/index.ts';
import type { Block, Vec3 } from '../document.ts';
import { sentence } from '../places.ts';
import type { Finding } from '../route.ts';
import { type Box, clipped, gapBetween, overlap, roughWayOut, type WayOut, wayOut } from './gap.ts';
import { blockWords, contact, fitFinding, type Part, type Room, wayWords } from './room.ts';
import { shrunk } from './tube.ts';

const says = words.route.fitClash;

/** Blocks that a part runs into, and the one that it is deepest in. */
interface Group {
  readonly blocks: Block[];
  worst: { readonly block: Block; readonly way: WayOut } | null;
}

/** Blocks that carry the house. */
const structure: ReadonlySet<Block['kind']> = new Set(['joist', 'beam', 'wall']);

/**
 * Where a part runs into blocks, and where it passes too near. What it may pass:
 * - the wall that an exit face lies in, for a leg that ends in a cap or open beyond that face;
 * - a block where a chase leads through it, for what of the duct is in that chase;
 * - the cabinet or the body that the hood's collar stands in, for the leg from that collar.
 * Chases themselves are looked at elsewhere, and blocks that are `told` of already not at all.
 */
export function clashes(part: Part, room: Room, told: (block: Block) => boolean = () => false): Finding[] {
  const house: Group = { blocks: [], worst: null };
  const cabinets: Group = { blocks: [], worst: null };
  const close: { block: Block; gap: number }[] = [];
  for (const block of room.near(part.hull, room.clearance)) {
    if (block.kind === 'chase' || told(block) || mayPass(part, block, room)) continue;
    const gap = Math.min(...part.tubes.map((tube) => gapBetween(tube, block)));
    if (gap === 0 && meet(part, block, block.kind === 'cabinet' ? cabinets : house)) continue;
    if (gap < room.clearance - contact) close.push({ block, gap });
  }
  return [
    ...clashFinding(part, room, house, 'error'),
    ...clashFinding(part, room, cabinets, 'warning'),
    ...closeFinding(
      part,
      room,
      close.sort((one, other) => one.gap - other.gap),
    ),
  ];
}

/**
 * Notes a block that a part runs into by more than contact; `false` where it does not. The way out of it
 * is only looked for where it may be longer than that of the worst so far.
 */
function meet(part: Part, block: Block, group: Group): boolean {
  const into = part.tubes.filter((tube) => gapBetween(shrunk(tube, contact), block) === 0);
  if (into.length === 0) return false;
  group.blocks.push(block);
  for (const tube of into) {
    const least = group.worst?.way.distance ?? 0;
    if (roughWayOut(tube, block) <= least) continue;
    const way = wayOut(tube, block);
    if (way.distance > least) group.worst = { block, way };
  }
  return true;
}

function clashFinding(
  part: Part,
  room: Room,
  { blocks, worst }: Group,
  severity: 'error' | 'warning',
): Finding[] {
  if (!worst) return [];
  const { block, way } = worst;
  const others = blocks.filter((each) => each !== block);
  const depth = room.length(way.distance);
  const careful = blocks.some(({ kind }) => structure.has(kind)) ? says.moveCarefully : says.move;
  return [
    fitFinding(
      'fit-clash',
      severity,
      part,
      [block, ...others],
      says.passes(sentence(part.words()), depth, withOthers(block, others, says.into)),
      {
        remedy: careful(depth, wayWords(way.axis, way.sense).move),
      },
    ),
  ];
}

function closeFinding(part: Part, room: Room, close: { block: Block; gap: number }[]): Finding[] {
  const [nearest] = close;
  if (!nearest) return [];
  const { gap, block } = nearest;
  const leaves = (part: string, blocks: string, wanted: string) =>
    gap < contact ? says.touches(part, blocks, wanted) : says.leaves(part, room.length(gap), blocks, wanted);
  return [
    fitFinding(
      'fit-clearance',
      'warning',
      part,
      close.map((one) => one.block),
      leaves(
        sentence(part.words()),
        withOthers(
          block,
          close.slice(1).map((each) => each.block),
          says.to,
        ),
        room.length(room.clearance),
      ),
      {
        remedy: says.moveAway,
        ...(room.wantedByJob ? {} : { source: says.practice }),
      },
    ),
  ];
}

/** A block, and how many more come after the preposition that the words are with. */
function withOthers(block: Block, others: readonly Block[], and: typeof says.into): string {
  const [one] = others;
  if (!one) return blockWords(block);
  return others.length > 1
    ? and.many(blockWords(block), others.length)
    : and.one(blockWords(block), blockWords(one));
}

function mayPass(part: Part, block: Block, room: Room): boolean {
  return (
    part.legs.some((leg) => atItsHood(leg, block, room)) ||
    part.legs.some((leg) => leavesThrough(leg, block, room)) ||
    inAChase(part.hull, block, room)
  );
}

/** True for what holds the collar that a leg starts from, unless the house stands on it. */
function atItsHood(leg: Part['legs'][number], block: Block, room: Room): boolean {
  return [leg.from, leg.to].some((id) => {
    const node = room.route.nodes.get(id);
    return node?.kind === 'hood' && holdsCollar(block, node.at);
  });
}

/** True for the cabinet or body that a collar stands in; never for what carries the house. */
export function holdsCollar(block: Block, collar: Vec3): boolean {
  return !structure.has(block.kind) && holds(block, collar, hoodReach);
}

/** A collar this near to a box is at it, m. */
const hoodReach = 0.03;

/** True where a box grown by `margin` metres holds a place. */
export function holds(box: Box, at: Vec3, margin: number): boolean {
  return ([0, 1, 2] as const).every(
    (axis) => at[axis] >= box.min[axis] - margin && at[axis] <= box.max[axis] + margin,
  );
}

/** True where a leg ends outside, its centre line goes through an exit face, and the wall is that face's. */
function leavesThrough(leg: Part['legs'][number], wall: Block, room: Room): boolean {
  const from = room.route.nodes.get(leg.from);
  const to = room.route.nodes.get(leg.to);
  if (!from || !to || (to.kind !== 'cap' && to.kind !== 'open end')) return false;
  return room.exits.some((face) => liesIn(face, wall) && clipped(from.at, to.at, face) !== null);
}

/** True where an exit face lies in a wall, which duct to that exit may then pass through. */
export function liesIn(face: Box, wall: Block): boolean {
  return wall.kind === 'wall' && overlap(face, wall, 0.05);
}

const axes = [0, 1, 2] as const;

/** True where a chase leads right through a block, and all that the duct could share with it lies in the chase. */
export function inAChase(hull: Box, block: Block, room: Pick<Room, 'chases' | 'clearance'>): boolean {
  return room.chases.some(
    (chase) =>
      leadsThrough(chase, block) &&
      axes.every((axis) => {
        const low = Math.max(hull.min[axis], block.min[axis] - room.clearance);
        const high = Math.min(hull.max[axis], block.max[axis] + room.clearance);
        return low >= chase.min[axis] - contact && high <= chase.max[axis] + contact;
      }),
  );
}

/** True where a chase comes out on both sides of a block that covers it in its other two directions. */
function leadsThrough(chase: Block, block: Block): boolean {
  const within = (one: Box, other: Box, axis: 0 | 1 | 2) =>
    one.min[axis] >= other.min[axis] - contact && one.max[axis] <= other.max[axis] + contact;
  return axes.some(
    (along) =>
      within(block, chase, along) && axes.every((axis) => axis === along || within(chase, block, axis)),
  );
}
