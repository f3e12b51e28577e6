import type { Block, ExitFace, Vec3 } from '../document.ts';
import { add, scale } from '../vector.ts';
import { copyOf, type DraftJob, freshId, read } from './find.ts';

type Box = Pick<Block, 'min' | 'max'>;

/** Boxes thinner than this in any direction are refused, m. */
const THINNEST = 0.001;

/** Puts a block in the room, its corners in any order, and gives its id; `null` for one with no room in it. */
export function addBlock(
  job: DraftJob,
  block: { readonly name: string; readonly kind: Block['kind']; readonly min: Vec3; readonly max: Vec3 },
): string | null {
  const box = upright(block.min, block.max);
  if (!box) return null;
  const id = freshId('b', read(job.blocks));
  job.blocks.push({ id, name: block.name.trim(), kind: block.kind, ...box });
  return id;
}

/** Moves a block by `delta`, m. */
export function moveBlock(job: DraftJob, id: string, delta: Vec3): boolean {
  return shift(found(job.blocks, id, 'block'), delta);
}

/** Gives a block other corners, in any order; `false`, and no change, where they leave no room between them. */
export function resizeBlock(job: DraftJob, id: string, min: Vec3, max: Vec3): boolean {
  return resize(found(job.blocks, id, 'block'), min, max);
}

/** Joists stand 16 in, or 400 mm, from centre to centre: common practice. */
export const usualSpacing = { imperial: 0.4064, metric: 0.4 } as const;
/** More copies of a block than this at once are a slip of the hand. */
export const mostRepeated = 200;

/** Adds copies of a block, each one step from the last, m, and gives their ids. */
export function repeatBlock(job: DraftJob, id: string, count: number, step: Vec3): readonly string[] {
  const { name, kind, min, max } = found(job.blocks, id, 'block');
  const corners = [copyOf(min), copyOf(max)] as const;
  return Array.from({ length: Math.min(count, mostRepeated) }, (_, i) => {
    const by = scale(step, i + 1);
    return addBlock(job, { name, kind, min: add(corners[0], by), max: add(corners[1], by) });
  }).filter((made) => made !== null);
}

/** Renames a block; a name may be empty, the block then goes by its kind. */
export function renameBlock(job: DraftJob, id: string, name: string): void {
  found(job.blocks, id, 'block').name = name.trim();
}

/** Says what a block is. */
export function setBlockKind(job: DraftJob, id: string, kind: Block['kind']): void {
  found(job.blocks, id, 'block').kind = kind;
}

/** Takes a block out of the room; dimensions on it keep to where it was. */
export function removeBlock(job: DraftJob, id: string): void {
  keepEnds(job, found(job.blocks, id, 'block'));
  remove(job.blocks, id, 'block');
}

/** Puts an outside wall or roof in the room, its corners in any order, and gives its id; `null` for one with no room in it. */
export function addExit(
  job: DraftJob,
  face: { readonly name: string; readonly kind: ExitFace['kind']; readonly min: Vec3; readonly max: Vec3 },
): string | null {
  const box = upright(face.min, face.max);
  if (!box) return null;
  const id = freshId('x', read(job.exits));
  job.exits.push({ id, name: face.name.trim(), kind: face.kind, ...box });
  return id;
}

/** Moves an exit face by `delta`, m. */
export function moveExit(job: DraftJob, id: string, delta: Vec3): boolean {
  return shift(found(job.exits, id, 'exit'), delta);
}

/** Gives an exit face other corners, in any order; `false`, and no change, where they leave no room between them. */
export function resizeExit(job: DraftJob, id: string, min: Vec3, max: Vec3): boolean {
  return resize(found(job.exits, id, 'exit'), min, max);
}

/** Renames an exit face. */
export function renameExit(job: DraftJob, id: string, name: string): void {
  found(job.exits, id, 'exit').name = name.trim();
}

/** Takes an exit face away; dimensions on it keep to where it was. */
export function removeExit(job: DraftJob, id: string): void {
  keepEnds(job, found(job.exits, id, 'exit'));
  remove(job.exits, id, 'exit');
}

/** Wanted between duct and blocks, m, 0 to 1; `null` for the usual one. */
export function setClearance(job: DraftJob, clearance: number | null): boolean {
  if (clearance === null) delete job.clearance;
  else if (clearance >= 0 && clearance <= 1) job.clearance = clearance;
  else return false;
  return true;
}

/** A place in a box, m, from parts of its size, 0-1 each, counted from its lowest corner. */
export function placeInBox({ min, max }: Box, part: Vec3): Vec3 {
  const along = (axis: 0 | 1 | 2) => min[axis] + part[axis] * (max[axis] - min[axis]);
  return [along(0), along(1), along(2)];
}

/** The parts of a box's size at which a place is, 0-1 each; a place outside counts as on the nearest face. */
export function partOfBox({ min, max }: Box, at: Vec3): Vec3 {
  const share = (axis: 0 | 1 | 2) =>
    Math.min(1, Math.max(0, (at[axis] - min[axis]) / (max[axis] - min[axis])));
  return [share(0), share(1), share(2)];
}

/** Dimensions that follow a box which goes away keep to where they are. */
function keepEnds(job: DraftJob, box: Box & { readonly id: string }): void {
  for (const scheme of job.schemes)
    for (const dimension of scheme.dimensions ?? [])
      for (const side of ['from', 'to'] as const) {
        const end = dimension[side];
        if ('box' in end && end.box === box.id) dimension[side] = { at: placeInBox(box, end.part) };
      }
}

function upright(one: Vec3, other: Vec3): Box | null {
  const pick = (choose: (a: number, b: number) => number): Vec3 => [
    choose(one[0], other[0]),
    choose(one[1], other[1]),
    choose(one[2], other[2]),
  ];
  const [min, max] = [pick(Math.min), pick(Math.max)];
  const sound = ([0, 1, 2] as const).every(
    (axis) => max[axis] - min[axis] >= THINNEST && Number.isFinite(max[axis] - min[axis]),
  );
  return sound ? { min, max } : null;
}

function resize(box: Box, min: Vec3, max: Vec3): boolean {
  const made = upright(min, max);
  if (made) Object.assign(box, made);
  return made !== null;
}

function shift(box: Box, delta: Vec3): boolean {
  return resize(box, add(copyOf(box.min), delta), add(copyOf(box.max), delta));
}

function found<T extends { id: string }>(rows: T[], id: string, what: string): T {
  const row = rows.find((each) => each.id === id);
  if (!row) throw new Error(`no ${what} "${id}"`);
  return row;
}

function remove(rows: { id: string }[], id: string, what: string): void {
  rows.splice(rows.indexOf(found(rows, id, what)), 1);
}
