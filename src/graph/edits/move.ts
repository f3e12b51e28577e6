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

/** Puts a node at a place. */
export function setNodePosition(job: DraftJob, schemeId: string, id: string, at: Vec3): void {
  const scheme = findScheme(job, schemeId);
  findNode(scheme, id).at = copyOf(at);
  keepFittings(scheme, new Set([id]));
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
function reach(scheme: DraftScheme, start: string, without: string): Set<string> {
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
  const nodes = chosenFrom(scheme.nodes, (node) => ids.has(node.id));
  if (nodes.length < ids.size) for (const id of ids) findNode(scheme, id);
  for (const node of nodes) node.at = add(node.at, delta);
  keepFittings(scheme, ids);
}

function keepFittings(scheme: DraftScheme, moved: ReadonlySet<string>): void {
  const stretched = chosenFrom(
    scheme.segments,
    ({ from, to, fittings }) => fittings !== undefined && moved.has(from) !== moved.has(to),
  );
  for (const segment of stretched) keepFittingsOn(scheme, segment);
}
