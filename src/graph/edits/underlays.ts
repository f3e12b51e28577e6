import type { Draft } from 'immer';
import type { Underlay } from '../document.ts';
import { type DraftJob, freshId, read } from './find.ts';

/** What of an underlay can be changed. */
export type UnderlayChange = Partial<Omit<Underlay, 'id'>>;

/**
 * Lays a picture (held in the job as `data:image/…`) under a sheet and gives its id. `null`, and no
 * change, for a picture that is kept elsewhere, and for numbers that make no underlay.
 */
export function addUnderlay(job: DraftJob, underlay: Omit<Underlay, 'id'>): string | null {
  if (!sound(underlay)) return null;
  const id = freshId('u', read(job.underlays));
  job.underlays.push({ ...underlay, at: [...underlay.at], id });
  return id;
}

/** Changes an underlay: its place, scale (m a pixel), opacity, lock, sheet or picture; `false`, and no change, as in `addUnderlay`. */
export function changeUnderlay(job: DraftJob, id: string, change: UnderlayChange): boolean {
  const underlay = foundUnderlay(job, id);
  if (!sound({ ...read(underlay), ...change })) return false;
  Object.assign(underlay, change, change.at && { at: [...change.at] });
  return true;
}

/** Takes an underlay away. */
export function removeUnderlay(job: DraftJob, id: string): void {
  job.underlays.splice(job.underlays.indexOf(foundUnderlay(job, id)), 1);
}

/**
 * Gives an underlay its scale from two places on it that are `length` metres apart in the house. The
 * first place stays where it is on the sheet. `false`, and no change, where the places are one.
 */
export function scaleUnderlay(
  job: DraftJob,
  id: string,
  first: readonly [number, number],
  second: readonly [number, number],
  length: number,
): boolean {
  const { at, scale } = read(foundUnderlay(job, id));
  const factor = length / Math.hypot(second[0] - first[0], second[1] - first[1]);
  if (!(factor > 0)) return false;
  return changeUnderlay(job, id, {
    scale: scale * factor,
    at: [first[0] + (at[0] - first[0]) * factor, first[1] + (at[1] - first[1]) * factor],
  });
}

function foundUnderlay(job: DraftJob, id: string): Draft<Underlay> {
  const underlay = job.underlays.find((each) => each.id === id);
  if (!underlay) throw new Error(`no underlay "${id}"`);
  return underlay;
}

function sound({ image, at, scale, opacity }: Omit<Underlay, 'id'>): boolean {
  return (
    image.startsWith('data:image/') &&
    at.every(Number.isFinite) &&
    scale > 0 &&
    Number.isFinite(scale) &&
    opacity >= 0 &&
    opacity <= 1
  );
}
