import type { Draft } from 'immer';
import type { Segment } from '../document.ts';
import {
  type DraftJob,
  type DraftScheme,
  dropLoose,
  ductFields,
  findNode,
  findScheme,
  findSegment,
  joined,
  lengthOf,
  otherEnd,
  plainCopy,
  segmentsAt,
  setFittings,
} from './find.ts';
import { dropLostDimensions } from './notes.ts';

export interface Doomed {
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

/**
 * Deletes segments and nodes. A turn between two legs takes its corner with it: its neighbours are
 * joined by one leg, made like the leg before it and carrying the fittings of both. Any other node
 * takes its legs with it. Nodes that are left without a leg go too, hoods excepted.
 */
export function deleteSelection(job: DraftJob, schemeId: string, doomed: Doomed): void {
  const scheme = findScheme(job, schemeId);
  for (const id of doomed.segments) findSegment(scheme, id);
  for (const id of doomed.nodes) findNode(scheme, id);
  const segments = new Set(doomed.segments);
  if (segments.size > 0) scheme.segments = scheme.segments.filter((segment) => !segments.has(segment.id));
  for (const id of doomed.nodes) deleteNode(scheme, id);
  dropLoose(scheme);
  dropLostDimensions(scheme);
}

function deleteNode(scheme: DraftScheme, id: string): void {
  const legs = segmentsAt(scheme, id);
  const [a, b] = legs;
  const role = findNode(scheme, id).role;
  const heals = legs.length === 2 && a && b && (role === 'turn' || role === 'fan');
  const healed = heals ? join(scheme, id, a, b) : null;
  const place = a ? scheme.segments.indexOf(a) : 0;
  const before = scheme.segments.slice(0, place).filter((segment) => !legs.includes(segment));
  const after = scheme.segments.slice(place).filter((segment) => !legs.includes(segment));
  if (legs.length > 0) scheme.segments = [...before, ...(healed ? [healed] : []), ...after];
  scheme.nodes = scheme.nodes.filter((node) => node.id !== id);
}

/** One leg in the place of two that meet at a node; `null` where their far ends are joined already. */
function join(scheme: DraftScheme, id: string, a: Draft<Segment>, b: Draft<Segment>): Draft<Segment> | null {
  const [first, second] = b.to === id && a.to !== id ? [b, a] : [a, b];
  const from = otherEnd(first, id);
  const to = otherEnd(second, id);
  if (from === to || joined(scheme, from, to)) return null;
  const firstLength = lengthOf(scheme, first);
  const secondLength = lengthOf(scheme, second);
  const leg: Draft<Segment> = { ...ductFields(first), id: first.id, from, to };
  const drawn = firstLength + secondLength;
  const shrink = drawn > 0 ? lengthOf(scheme, leg) / drawn : 0;
  const onFirst = fittingsFrom(first, from, firstLength);
  const onSecond = fittingsFrom(second, id, secondLength);
  setFittings(leg, [
    ...onFirst.map((f) => ({ ...f, at: f.at * shrink })),
    ...onSecond.map((f) => ({ ...f, at: (firstLength + f.at) * shrink })),
  ]);
  return leg;
}

/** A segment's fittings with their distances counted from one of its ends. */
function fittingsFrom(segment: Draft<Segment>, nodeId: string, length: number) {
  const fittings = plainCopy(segment).fittings ?? [];
  return segment.from === nodeId ? fittings : fittings.map((f) => ({ ...f, at: Math.max(0, length - f.at) }));
}
