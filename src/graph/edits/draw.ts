import type { Draft } from 'immer';
import type { Hood, Node, Segment, Vec3 } from '../document.ts';
import { distance, nearestOnSegment } from '../vector.ts';
import {
  copyOf,
  type DraftJob,
  type DraftScheme,
  ductFields,
  findNode,
  findScheme,
  findSegment,
  freshId,
  joined,
  keepFittingsOn,
  otherEnd,
  plainCopy,
  read,
  SAME_PLACE,
  segmentsAt,
  setFittings,
} from './find.ts';
import { passDimensionsOn } from './notes.ts';

/**
 * Puts a hood in the scheme, its collar at `at`, and gives its node's id. It is `hood` (added to the
 * job where the job does not have it), else the job's first hood that the scheme does not show yet,
 * else the job's first. `null` where the job has no hood and none is given.
 */
export function addHood(job: DraftJob, schemeId: string, at: Vec3, hood?: Hood): string | null {
  const scheme = findScheme(job, schemeId);
  if (hood && !job.hoods.some((each) => each.id === hood.id)) job.hoods.push(plainCopy(hood));
  const shown = new Set(scheme.nodes.map((node) => node.hood));
  const chosen = hood ?? job.hoods.find((each) => !shown.has(each.id)) ?? job.hoods[0];
  if (!chosen) return null;
  const id = freshId('n', read(scheme.nodes));
  scheme.nodes.push({ id, at: copyOf(at), role: 'hood', hood: chosen.id });
  return id;
}

/** Puts a loose node at `at`, where a run may start, and gives its id. */
export function addNode(job: DraftJob, schemeId: string, at: Vec3): string {
  return pushNode(findScheme(job, schemeId), at);
}

/**
 * Draws a leg from a node to a new node at `to`. It is made of what the run that ends there is made
 * of, and a cap that ended the run moves on to the new end. `null` where `to` is the node's own place.
 */
export function extendRun(
  job: DraftJob,
  schemeId: string,
  fromId: string,
  to: Vec3,
): { node: string; segment: string } | null {
  const scheme = findScheme(job, schemeId);
  const from = findNode(scheme, fromId);
  if (distance(from.at, to) < SAME_PLACE) return null;
  const node = pushNode(scheme, to);
  const segment = pushSegment(scheme, fromId, node);
  passCapOn(from, findNode(scheme, node));
  return { node, segment };
}

/**
 * Draws a leg from a node to a node that is there already, and gives its segment's id. `null` where
 * the two are joined already, or are one node. A cap at either end comes off: the run goes on there.
 */
export function closeToNode(job: DraftJob, schemeId: string, fromId: string, toId: string): string | null {
  const scheme = findScheme(job, schemeId);
  const ends = [findNode(scheme, fromId), findNode(scheme, toId)];
  if (fromId === toId || joined(scheme, fromId, toId)) return null;
  for (const end of ends) if (segmentsAt(scheme, end.id).length > 0) takeCapOff(end);
  return pushSegment(scheme, fromId, toId);
}

/**
 * Puts a node into a segment, at `at`, and gives its id and those of the halves. Every fitting stays
 * where it is, on the half that it is on. At an end of the segment the node that is there is given.
 */
export function insertNode(
  job: DraftJob,
  schemeId: string,
  segmentId: string,
  at: Vec3,
): { node: string; before: string; after: string } {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const from = findNode(scheme, segment.from);
  const to = findNode(scheme, segment.to);
  for (const end of [from, to])
    if (distance(end.at, at) < SAME_PLACE) return { node: end.id, before: segmentId, after: segmentId };

  const cut = nearestOnSegment(at, from.at, to.at).t * distance(from.at, to.at);
  const fittings = plainCopy(segment).fittings ?? [];
  const node = freshId('n', read(scheme.nodes));
  scheme.nodes.push({ id: node, at: copyOf(at), role: 'turn' });
  const after = freshId('d', read(scheme.segments));
  const half: Draft<Segment> = { ...ductFields(segment), id: after, from: node, to: segment.to };
  setFittings(
    half,
    fittings.filter((f) => f.at > cut).map((f) => ({ ...f, at: f.at - cut })),
  );
  segment.to = node;
  setFittings(
    segment,
    fittings.filter((f) => f.at <= cut),
  );
  scheme.segments.splice(scheme.segments.indexOf(segment) + 1, 0, half);
  return { node, before: segmentId, after };
}

/**
 * Makes one node of two: what met `goneId` meets `keptId`. A leg between the two disappears, and a
 * leg that would lie beside another one does too; a cap stays where the run still ends. `false` where both are the same node or both hoods.
 */
export function mergeNodes(job: DraftJob, schemeId: string, goneId: string, keptId: string): boolean {
  const scheme = findScheme(job, schemeId);
  const gone = findNode(scheme, goneId);
  const kept = findNode(scheme, keptId);
  if (goneId === keptId || (gone.role === 'hood' && kept.role === 'hood')) return false;
  const legs = segmentsAt(scheme, goneId);
  for (const leg of legs) {
    const end = otherEnd(leg, goneId);
    if (end === keptId || joined(scheme, end, keptId)) {
      remove(scheme.segments, leg.id);
      continue;
    }
    if (leg.from === goneId) leg.from = keptId;
    else leg.to = keptId;
    keepFittingsOn(scheme, leg);
  }
  if (gone.role === 'hood') {
    kept.role = 'hood';
    if (gone.hood !== undefined) kept.hood = gone.hood;
    delete kept.cap;
    delete kept.capOpening;
  } else if (segmentsAt(scheme, keptId).length > 1) takeCapOff(kept);
  else if (kept.role === 'turn') passCapOn(gone, kept);
  remove(scheme.nodes, goneId);
  passDimensionsOn(scheme, goneId, keptId);
  return true;
}

/** Turns a segment round; its fittings stay where they are. */
export function reverseSegment(job: DraftJob, schemeId: string, segmentId: string): void {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const { from, to, fittings } = plainCopy(segment);
  const length = distance(findNode(scheme, from).at, findNode(scheme, to).at);
  segment.from = to;
  segment.to = from;
  if (fittings)
    setFittings(
      segment,
      fittings.map((f) => ({ ...f, at: Math.max(0, length - f.at) })),
    );
}

function pushNode(scheme: DraftScheme, at: Vec3): string {
  const id = freshId('n', read(scheme.nodes));
  scheme.nodes.push({ id, at: copyOf(at), role: 'turn' });
  return id;
}

function pushSegment(scheme: DraftScheme, from: string, to: string): string {
  const before = segmentsAt(scheme, from);
  const like = before.length === 1 ? before[0] : undefined;
  const id = freshId('d', read(scheme.segments));
  scheme.segments.push({ ...(like ? ductFields(like) : {}), id, from, to });
  return id;
}

function passCapOn(from: Draft<Node>, to: Draft<Node>): void {
  if (from.role !== 'cap') return;
  to.role = 'cap';
  if (from.cap !== undefined) to.cap = from.cap;
  if (from.capOpening !== undefined) to.capOpening = from.capOpening;
  takeCapOff(from);
}

function takeCapOff(node: Draft<Node>): void {
  if (node.role !== 'cap') return;
  node.role = 'turn';
  delete node.cap;
  delete node.capOpening;
}

function remove(rows: { id: string }[], id: string): void {
  rows.splice(
    rows.findIndex((row) => row.id === id),
    1,
  );
}
