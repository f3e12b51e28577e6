import type { Vec3 } from '../document.ts';
import { add, distance, lerp } from '../vector.ts';
import { closeToNode, extendRun, insertNode, mergeNodes } from './draw.ts';
import {
  copyOf,
  type DraftJob,
  ductFields,
  findNode,
  findScheme,
  findSegment,
  freshId,
  otherEnd,
  read,
  SAME_PLACE,
  segmentsAt,
} from './find.ts';
import { moveEach, reach } from './move.ts';

/**
 * Parts the legs that meet at a node: the first keeps the node, every other gets an end of its own at
 * the same place. Gives the new ends; none where one leg or none is there.
 */
export function splitRun(job: DraftJob, schemeId: string, nodeId: string): string[] {
  const scheme = findScheme(job, schemeId);
  const node = findNode(scheme, nodeId);
  return segmentsAt(scheme, nodeId)
    .slice(1)
    .map((leg) => {
      const id = freshId('n', read(scheme.nodes));
      scheme.nodes.push({ id, at: copyOf(node.at), role: 'turn' });
      if (leg.from === nodeId) leg.from = id;
      else leg.to = id;
      return id;
    });
}

/**
 * Joins two ends: at one place they become one node, apart they get a leg between them. Gives the node
 * or the segment; `null` where they are joined already, or are one node or both hoods at one place.
 */
export function joinNodes(
  job: DraftJob,
  schemeId: string,
  goneId: string,
  keptId: string,
): { readonly node: string } | { readonly segment: string } | null {
  const scheme = findScheme(job, schemeId);
  if (distance(findNode(scheme, goneId).at, findNode(scheme, keptId).at) < SAME_PLACE)
    return mergeNodes(job, schemeId, goneId, keptId) ? { node: keptId } : null;
  const segment = closeToNode(job, schemeId, goneId, keptId);
  return segment === null ? null : { segment };
}

/**
 * Puts a junction into a segment, a fraction `t` along it from its `from` node, and with `to` draws a
 * branch from there, made of what the segment is made of. Gives the junction and the branch.
 */
export function branchFrom(
  job: DraftJob,
  schemeId: string,
  segmentId: string,
  t: number,
  to?: Vec3,
): { readonly node: string; readonly segment: string | null; readonly end: string | null } {
  const scheme = findScheme(job, schemeId);
  const segment = findSegment(scheme, segmentId);
  const made = ductFields(segment);
  const place = lerp(
    findNode(scheme, segment.from).at,
    findNode(scheme, segment.to).at,
    Math.min(1, Math.max(0, t)),
  );
  const { node } = insertNode(job, schemeId, segmentId, place);
  const branch = to && extendRun(job, schemeId, node, to);
  if (!branch) return { node, segment: null, end: null };
  Object.assign(findSegment(scheme, branch.segment), made);
  return { node, segment: branch.segment, end: branch.node };
}

/**
 * Draws a riser of `height` metres at a node, a drop where it is below 0. At the end of a run the run
 * goes on up; inside a run all that lies beyond, away from the hoods, is lifted with it. `null`, and no
 * change, where the height is 0, several legs meet, or what lies beyond comes back round to the node.
 */
export function setRiser(
  job: DraftJob,
  schemeId: string,
  nodeId: string,
  height: number,
): { readonly node: string; readonly segment: string } | null {
  const scheme = findScheme(job, schemeId);
  const node = findNode(scheme, nodeId);
  const legs = segmentsAt(scheme, nodeId);
  if (!Number.isFinite(height) || Math.abs(height) < SAME_PLACE || legs.length > 2) return null;
  const top = add(node.at, [0, 0, height]);
  if (legs.length < 2 && !(node.role === 'hood' && legs.length === 1))
    return extendRun(job, schemeId, nodeId, top);
  const hoods = new Set(read(scheme.nodes).flatMap(({ id, role }) => (role === 'hood' ? id : [])));
  const sides = legs.map((leg) => ({ leg, seen: reach(scheme, otherEnd(leg, nodeId), leg.id) }));
  const side = sides.find(({ seen }) => ![...seen].some((id) => hoods.has(id))) ?? sides.at(-1);
  if (!side || side.seen.has(nodeId)) return null;
  const { leg: beyond, seen } = side;
  const id = freshId('n', read(scheme.nodes));
  scheme.nodes.push({ id, at: copyOf(node.at), role: 'turn' });
  const segment = freshId('d', read(scheme.segments));
  scheme.segments.push({ ...ductFields(beyond), id: segment, from: nodeId, to: id });
  if (beyond.from === nodeId) beyond.from = id;
  else beyond.to = id;
  moveEach(job, schemeId, [...seen, id], (at) => add(at, [0, 0, height]));
  return { node: id, segment };
}
