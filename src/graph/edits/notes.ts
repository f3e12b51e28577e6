import type { Dimension, DimensionEnd, SheetNote } from '../document.ts';
import { type DraftJob, type DraftScheme, findNode, findScheme, freshId, plainCopy, read } from './find.ts';

const LONGEST = 10_000;

/** Pins words to a place of a sheet and gives the note's id; `null` for words that are empty or over 10,000 characters. */
export function addNote(job: DraftJob, note: Omit<SheetNote, 'id'>): string | null {
  if (!readable(note)) return null;
  job.sheetNotes ??= [];
  const id = freshId('note', read(job.sheetNotes));
  job.sheetNotes.push({ id, sheet: note.sheet, at: [...note.at], text: note.text });
  return id;
}

/** Changes the words or the place of a note; `false`, and no change, as in `addNote`. */
export function changeNote(job: DraftJob, id: string, change: Partial<Omit<SheetNote, 'id'>>): boolean {
  const note = job.sheetNotes?.find((each) => each.id === id);
  if (!note) throw new Error(`no note "${id}"`);
  const made = { ...plainCopy(note), ...change };
  if (!readable(made)) return false;
  Object.assign(note, made, { at: [...made.at] });
  return true;
}

/** Takes a note away; the last one takes the list with it. */
export function removeNote(job: DraftJob, id: string): void {
  if (!job.sheetNotes?.some((note) => note.id === id)) throw new Error(`no note "${id}"`);
  job.sheetNotes = job.sheetNotes.filter((note) => note.id !== id);
  if (job.sheetNotes.length === 0) delete job.sheetNotes;
}

function readable({ text, at }: Omit<SheetNote, 'id'>): boolean {
  return text.trim() !== '' && text.length <= LONGEST && at.every(Number.isFinite);
}

/** Puts a dimension on a sheet of a scheme and gives its id; `null` where both its ends are one node. */
export function addDimension(
  job: DraftJob,
  schemeId: string,
  dimension: Omit<Dimension, 'id'>,
): string | null {
  const scheme = findScheme(job, schemeId);
  const { from, to } = dimension;
  for (const end of [from, to]) if ('node' in end) findNode(scheme, end.node);
  if (sameNode(from, to)) return null;
  scheme.dimensions ??= [];
  const id = freshId('dim', read(scheme.dimensions));
  scheme.dimensions.push({ ...plainCopy(dimension), id });
  return id;
}

/** Moves a dimension's line to `offset` metres from its ends. */
export function moveDimension(job: DraftJob, schemeId: string, id: string, offset: number): boolean {
  const dimension = findScheme(job, schemeId).dimensions?.find((each) => each.id === id);
  if (!dimension) throw new Error(`no dimension "${id}"`);
  if (!Number.isFinite(offset)) return false;
  dimension.offset = offset;
  return true;
}

/** Takes a dimension away; the last one takes the list with it. */
export function removeDimension(job: DraftJob, schemeId: string, id: string): void {
  const scheme = findScheme(job, schemeId);
  if (!scheme.dimensions?.some((each) => each.id === id)) throw new Error(`no dimension "${id}"`);
  keepDimensions(scheme, (dimension) => dimension.id !== id);
}

/** Drops the dimensions whose nodes are gone. */
export function dropLostDimensions(scheme: DraftScheme): void {
  if (!scheme.dimensions) return;
  const nodes = new Set(read(scheme.nodes).map((node) => node.id));
  const stands = (end: DimensionEnd) => !('node' in end) || nodes.has(end.node);
  keepDimensions(scheme, ({ from, to }) => stands(from) && stands(to));
}

/** Lets dimensions follow one node in the place of another; those that then measure nothing go. */
export function passDimensionsOn(scheme: DraftScheme, goneId: string, keptId: string): void {
  for (const dimension of scheme.dimensions ?? [])
    for (const end of [dimension.from, dimension.to])
      if ('node' in end && end.node === goneId) end.node = keptId;
  keepDimensions(scheme, ({ from, to }) => !sameNode(from, to));
}

function sameNode(one: DimensionEnd, other: DimensionEnd): boolean {
  return 'node' in one && 'node' in other && one.node === other.node;
}

function keepDimensions(scheme: DraftScheme, keeps: (dimension: Dimension) => boolean): void {
  const all = scheme.dimensions;
  if (!all || read(all).every(keeps)) return;
  const kept = all.filter(keeps);
  if (kept.length > 0) scheme.dimensions = kept;
  else delete scheme.dimensions;
}
