import type { Segment, Vec3 } from '../document.ts';
import { add, distance, scale, subtract } from '../vector.ts';
import {
  chosenFrom,
  copyOf,
  type DraftJob,
  type DraftScheme,
  findNode,
  findScheme,
  findSegment,
  keepFittingsOn,
  otherEnd,
  read,
  SAME_PLACE,
} from './find.ts';

/** Moves nodes by `delta`, m. Fittings stay at their distance from where their leg starts. */
export function moveNodes(job: DraftJob, schemeId: string, ids: readonly string[], delta: Vec3): void {
  const scheme = findScheme(job, schemeId);
  shift(scheme, new Set(ids), delta);
}

/** Puts each of some nodes where `map` says, m. Fittings of legs between them stay at their distance from where the leg starts. */
export function moveEach(
  job: DraftJob,
  schemeId: string,
  ids: readonly string[],
  map: (at: Vec3) => Vec3,
): void {
  place(findScheme(job, schemeId), new Set(ids), map);
}

/** Puts a node at a place. */
export function setNodePosition(job: DraftJob, schemeId: string, id: string, at: Vec3): void {
  place(findScheme(job, schemeId), new Set([id]), () => copyOf(at));
}

/**
 * Makes a leg `length` m long. The end that is farther from the hoods moves along the leg, and all
 * that hangs on it moves with it; in a loop that end moves alone. Gives the ids that moved: none
 * where the leg has no direction yet, or `length` is not more than 0.
 */
export function setLength(job: DraftJob, schemeId: string, segmentId: string, length: number): string[] {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const downstream = downstreamEnd(scheme, segmentId);
  const near = findNode(scheme, otherEnd(segment, downstream)).at;
  const far = findNode(scheme, downstream).at;
  const now = distance(near, far);
  if (!(length > SAME_PLACE) || !Number.isFinite(length) || now < SAME_PLACE) return [];
  const beyond = reach(scheme, downstream, segmentId);
  const moved = beyond.has(otherEnd(segment, downstream)) ? new Set([downstream]) : beyond;
  shift(scheme, moved, scale(subtract(far, near), length / now - 1));
  return [...moved];
}

/** The end of a segment that the hoods' air comes to last; `to` where the drawing does not say. */
function downstreamEnd(scheme: DraftScheme, segmentId: string): string {
  const segment = findSegment(scheme, segmentId);
  const legs = legsByNode(scheme);
  const seen = new Set(
    read(scheme.nodes)
      .filter((node) => node.role === 'hood')
      .map((node) => node.id),
  );
  for (const id of seen)
    for (const leg of legs.get(id) ?? []) {
      const next = otherEnd(leg, id);
      if (leg.id === segmentId) return next;
      seen.add(next);
    }
  return segment.to;
}

/** Every node that can be reached from one without going along a segment. */
export function reach(scheme: DraftScheme, start: string, without: string): Set<string> {
  const legs = legsByNode(scheme);
  const seen = new Set([start]);
  for (const id of seen)
    for (const leg of legs.get(id) ?? []) if (leg.id !== without) seen.add(otherEnd(leg, id));
  return seen;
}

function legsByNode(scheme: DraftScheme): Map<string, Segment[]> {
  const legs = new Map<string, Segment[]>();
  for (const segment of read(scheme.segments))
    for (const end of [segment.from, segment.to]) {
      const met = legs.get(end);
      if (met) met.push(segment);
      else legs.set(end, [segment]);
    }
  return legs;
}

function shift(scheme: DraftScheme, ids: ReadonlySet<string>, delta: Vec3): void {
  place(
    scheme,
    ids,
    (at) => add(at, delta),
    ({ from, to }) => ids.has(from) !== ids.has(to),
  );
}

/** Puts nodes elsewhere, and brings fittings back onto those of their legs that may have become shorter. */
function place(
  scheme: DraftScheme,
  ids: ReadonlySet<string>,
  map: (at: Vec3) => Vec3,
  mayShrink: (leg: Segment) => boolean = ({ from, to }) => ids.has(from) || ids.has(to),
): void {
  const nodes = chosenFrom(scheme.nodes, (node) => ids.has(node.id));
  if (nodes.length < ids.size) for (const id of ids) findNode(scheme, id);
  for (const node of nodes) node.at = copyOf(map(node.at));
  const legs = chosenFrom(scheme.segments, (leg) => leg.fittings !== undefined && mayShrink(leg));
  for (const leg of legs) keepFittingsOn(scheme, leg);
}
