import { current, type Draft, isDraft } from 'immer';
import type { InlinePart, Job, Node, Scheme, Segment, Vec3 } from '../document.ts';
import { distance } from '../vector.ts';

export type DraftJob = Draft<Job>;
export type DraftScheme = Draft<Scheme>;

/** Places nearer to each other than this are one place, m. */
export const SAME_PLACE = 1e-6;

/** Throws for an id that the job does not have: an edit of it is a mistake in the program. */
export function findScheme(job: DraftJob, schemeId: string): DraftScheme {
  return found(job.schemes, schemeId, 'scheme');
}

export function findNode(scheme: DraftScheme, id: string): Draft<Node> {
  return found(scheme.nodes, id, 'node');
}

export function findSegment(scheme: DraftScheme, id: string): Draft<Segment> {
  return found(scheme.segments, id, 'segment');
}

/** Several segments at once, looked up in one pass. */
export function findSegments(scheme: DraftScheme, ids: readonly string[]): Draft<Segment>[] {
  const places = new Map(read(scheme.segments).map(({ id }, place) => [id, place]));
  return ids.map((id) => {
    const segment = scheme.segments[places.get(id) ?? -1];
    if (!segment) throw new Error(`no segment "${id}"`);
    return segment;
  });
}

function found<T extends { id: string }>(rows: T[], id: string, what: string): T {
  const row = rows[read(rows).findIndex((each) => each.id === id)];
  if (!row) throw new Error(`no ${what} "${id}"`);
  return row;
}

/**
 * What a draft holds now, as plain data to look through: reading a draft's rows one by one would make
 * a draft of each of them.
 */
export function read<T extends object>(value: T): T {
  return isDraft(value) ? (current(value as Draft<T>) as T) : value;
}

/** The first of `n1`, `n2`, … after every number that the prefix already carries in `taken`. */
export function freshId(prefix: string, taken: Iterable<{ readonly id: string }>): string {
  let highest = 0;
  for (const { id } of taken) {
    const number = id.startsWith(prefix) ? Number(id.slice(prefix.length)) : Number.NaN;
    if (Number.isSafeInteger(number) && number > highest) highest = number;
  }
  return `${prefix}${highest + 1}`;
}

/** `freshId` again and again, without looking through `taken` each time. */
export function freshIds(prefix: string, taken: Iterable<{ readonly id: string }>): () => string {
  let next = Number(freshId(prefix, taken).slice(prefix.length));
  return () => {
    const id = `${prefix}${next}`;
    next += 1;
    return id;
  };
}

/** Segments that meet at a node. */
export function segmentsAt(scheme: DraftScheme, nodeId: string): Draft<Segment>[] {
  return chosenFrom(scheme.segments, (segment) => segment.from === nodeId || segment.to === nodeId);
}

/** The rows that fit, for changing. */
export function chosenFrom<T extends object>(rows: T[], fits: (row: T) => boolean): T[] {
  return read(rows).flatMap((row, i) => (fits(row) ? (rows[i] ?? []) : []));
}

export function otherEnd(segment: Segment, nodeId: string): string {
  return segment.from === nodeId ? segment.to : segment.from;
}

/** True where a segment joins two nodes, either way round. */
export function joined(scheme: DraftScheme, a: string, b: string): boolean {
  return read(scheme.segments).some(({ from, to }) => (from === a && to === b) || (from === b && to === a));
}

/** Node to node, m. */
export function lengthOf(scheme: DraftScheme, segment: Segment): number {
  return distance(findNode(scheme, segment.from).at, findNode(scheme, segment.to).at);
}

/** What a stretch of duct is made of, without its place, ends and fittings. */
export function ductFields(segment: Draft<Segment>): Omit<Segment, 'id' | 'from' | 'to' | 'fittings'> {
  const { id: _id, from: _from, to: _to, fittings: _fittings, ...fields } = plainCopy(segment);
  return fields;
}

/** A copy that shares nothing that can change with what it was made from. */
export function plainCopy<T extends object>(value: T): T {
  return structuredClone(read(value));
}

/** Brings fittings back onto a segment that has become shorter. */
export function keepFittingsOn(scheme: DraftScheme, segment: Draft<Segment>): void {
  if (!segment.fittings) return;
  const length = lengthOf(scheme, segment);
  for (const fitting of segment.fittings) if (fitting.at > length) fitting.at = length;
}

/** Gives a segment these fittings in the order that they stand; no fittings is no field. */
export function setFittings(segment: Draft<Segment>, fittings: readonly InlinePart[]): void {
  if (fittings.length === 0) delete segment.fittings;
  else segment.fittings = [...fittings].sort((a, b) => a.at - b.at);
}

/** Removes nodes that no segment meets; a hood stays where it was put. */
export function dropLoose(scheme: DraftScheme): void {
  const met = new Set(read(scheme.segments).flatMap((segment) => [segment.from, segment.to]));
  if (read(scheme.nodes).every((node) => node.role === 'hood' || met.has(node.id))) return;
  scheme.nodes = scheme.nodes.filter((node) => node.role === 'hood' || met.has(node.id));
}

/**
 * A place as the document keeps it, without the noise of sums: 2 ft is 0.6096 m there and not the
 * 0.6095999999999999 that grid steps add up to. To 1e-12 m, so that slanted legs keep their lengths.
 */
export function copyOf(at: Vec3): Vec3 {
  return [kept(at[0]), kept(at[1]), kept(at[2])];
}

function kept(metres: number): number {
  return Math.round(metres * 1e12) / 1e12 + 0;
}
