import type { Vec3 } from '../document.ts';
import { add } from '../vector.ts';
import { moveBlock, resizeBlock } from './blocks.ts';
import { chosenFrom, type DraftJob, findNode, findScheme, findSegment, read } from './find.ts';
import { moveEach } from './move.ts';

/** What is picked: nodes, segments (which stand for their two ends) and blocks of the room. */
export interface Picked {
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  readonly blocks?: readonly string[];
}

type Axis = 0 | 1 | 2;

/** Nodes of a selection, those at the ends of its segments included. */
export function nodesOf(job: DraftJob, schemeId: string, picked: Picked): string[] {
  const scheme = findScheme(job, schemeId);
  for (const id of picked.nodes) findNode(scheme, id);
  const ends = picked.segments.flatMap((id) => {
    const { from, to } = read(findSegment(scheme, id));
    return [from, to];
  });
  return [...new Set([...picked.nodes, ...ends])];
}

/** Moves what is picked by amounts, m, each as typed. Legs to what is not picked stretch. */
export function moveSelectionBy(job: DraftJob, schemeId: string, picked: Picked, delta: Vec3): void {
  moveEach(job, schemeId, nodesOf(job, schemeId, picked), (at) => add(at, delta));
  for (const id of picked.blocks ?? []) moveBlock(job, id, delta);
}

/** Mirrors what is picked in the plane across an axis (0 east, 1 north, 2 up) at `about` metres. */
export function mirrorSelection(
  job: DraftJob,
  schemeId: string,
  picked: Picked,
  axis: Axis,
  about: number,
): void {
  transform(job, schemeId, picked, (at) => {
    const mirrored: Vec3 = [at[0], at[1], at[2]];
    mirrored[axis] = 2 * about - at[axis];
    return mirrored;
  });
}

/**
 * Turns what is picked about the vertical through `about`, degrees from east to north. Blocks lie along
 * the axes: by other than quarter turns only their middle goes round.
 */
export function rotateSelection(
  job: DraftJob,
  schemeId: string,
  picked: Picked,
  about: readonly [number, number],
  degrees: number,
): void {
  const [c, s] = cosineAndSine(degrees);
  const turn = (at: Vec3): Vec3 => {
    const [x, y] = [at[0] - about[0], at[1] - about[1]];
    return [about[0] + c * x - s * y, about[1] + s * x + c * y, at[2]];
  };
  if (degrees % 90 === 0) {
    transform(job, schemeId, picked, turn);
    return;
  }
  transform(job, schemeId, { ...picked, blocks: [] }, turn);
  for (const id of picked.blocks ?? []) {
    const { min, max } = boxOf(job, id);
    const middle: Vec3 = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
    const turned = turn(middle);
    moveBlock(job, id, [turned[0] - middle[0], turned[1] - middle[1], 0]);
  }
}

/** Cosine and sine of an angle in degrees; whole numbers for quarter turns. */
function cosineAndSine(degrees: number): readonly [number, number] {
  const quarters = ((((degrees / 90) % 4) + 4) % 4) as number;
  const exact = (
    [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const
  )[quarters];
  const radians = (degrees * Math.PI) / 180;
  return exact ?? [Math.cos(radians), Math.sin(radians)];
}

/** Puts picked nodes in one plane across an axis: at their lowest, their highest, or half-way between. Gives where, m. */
export function alignSelection(
  job: DraftJob,
  schemeId: string,
  picked: Picked,
  axis: Axis,
  mode: 'low' | 'middle' | 'high',
): number | null {
  const ids = nodesOf(job, schemeId, picked);
  const chosen = new Set(ids);
  const scheme = findScheme(job, schemeId);
  const places = read(scheme.nodes).flatMap((node) => (chosen.has(node.id) ? node.at[axis] : []));
  if (places.length === 0) return null;
  const low = Math.min(...places);
  const high = Math.max(...places);
  const where = mode === 'low' ? low : mode === 'high' ? high : low + (high - low) / 2;
  moveEach(job, schemeId, ids, (at) => {
    const aligned: Vec3 = [at[0], at[1], at[2]];
    aligned[axis] = where;
    return aligned;
  });
  return where;
}

function transform(job: DraftJob, schemeId: string, picked: Picked, map: (at: Vec3) => Vec3): void {
  moveEach(job, schemeId, nodesOf(job, schemeId, picked), map);
  for (const id of picked.blocks ?? []) {
    const { min, max } = boxOf(job, id);
    resizeBlock(job, id, map(min), map(max));
  }
}

function boxOf(job: DraftJob, id: string): { readonly min: Vec3; readonly max: Vec3 } {
  const [block] = chosenFrom(job.blocks, (each) => each.id === id);
  if (!block) throw new Error(`no block "${id}"`);
  return read(block);
}
