import type { Section } from '../../hydraulics/types.ts';
import type { Job, Node } from '../document.ts';
import { inferRoute } from '../infer.ts';
import { ratioForRadius } from '../reshape.ts';
import { type Reach, stretchFrom } from '../stretch.ts';
import { reverseSegment } from './draw.ts';
import { type DraftJob, findNode, findScheme, findSegment, plainCopy, read } from './find.ts';
import { setDuct, setInsulation, setMaterial, setStretch } from './parts.ts';

/** What duct can be made of, all at once. */
export interface DuctChange {
  readonly duct?: Section;
  readonly material?: string;
  readonly insulation?: number;
  readonly stretch?: number | null;
}

/** Changes duct from a segment on, both ways, as far as `reach` says; gives the segments that it changed. */
export function setWholeRun(
  job: DraftJob,
  schemeId: string,
  segmentId: string,
  reach: Reach,
  change: DuctChange,
): readonly string[] {
  findSegment(findScheme(job, schemeId), segmentId);
  const ids = stretchFrom(inferRoute(read(job) as Job, schemeId), segmentId, reach);
  if (change.duct) setDuct(job, schemeId, ids, change.duct);
  if (change.material !== undefined) setMaterial(job, schemeId, ids, change.material);
  if (change.insulation !== undefined) setInsulation(job, schemeId, ids, change.insulation);
  if (change.stretch !== undefined) setStretch(job, schemeId, ids, change.stretch);
  return ids;
}

/**
 * Gives the bend at a node a centre-line radius, m, held to what its legs have room for. Gives the ratio
 * that it then has and whether it was held; `null`, and no change, where there is no bend with a radius.
 */
export function setRadius(
  job: DraftJob,
  schemeId: string,
  nodeId: string,
  radius: number,
): { readonly radiusRatio: number; readonly limited: boolean } | null {
  const node = findNode(findScheme(job, schemeId), nodeId);
  const route = inferRoute(read(job) as Job, schemeId);
  const made = ratioForRadius(route, nodeId, radius);
  const kind = node.bend?.kind ?? route.nodes.get(nodeId)?.bend?.kind;
  if (!made || kind === undefined) return null;
  node.bend = { kind, radiusRatio: made.radiusRatio };
  return made;
}

/**
 * Turns a run round, from where it joins or ends to where it joins or ends: what stands at its two ends
 * (the hood, the cap) changes places, so that the air goes the other way, and every segment is stored
 * the other way round. `false`, and no change, where an end of the run is a junction or the run is a ring.
 */
export function reverseRun(job: DraftJob, schemeId: string, segmentId: string): boolean {
  const scheme = findScheme(job, schemeId);
  findSegment(scheme, segmentId);
  const route = inferRoute(read(job) as Job, schemeId);
  const ids = stretchFrom(route, segmentId, 'junction');
  const met = new Map<string, number>();
  for (const id of ids) {
    const leg = route.segments.get(id);
    for (const end of leg ? [leg.from, leg.to] : []) met.set(end, (met.get(end) ?? 0) + 1);
  }
  const ends = [...met].flatMap(([id, count]) =>
    count === 1 && route.nodes.get(id)?.segments.length === 1 ? id : [],
  );
  const [one, other] = ends;
  if (one === undefined || other === undefined) return false;
  for (const id of ids) reverseSegment(job, schemeId, id);
  exchange(findNode(scheme, one), findNode(scheme, other));
  return true;
}

const standing = ['role', 'hood', 'fan', 'cap', 'capOpening', 'transition'] as const;

function exchange(one: Node, other: Node): void {
  const [first, second] = [plainCopy(one), plainCopy(other)];
  for (const [node, taken] of [
    [one, second],
    [other, first],
  ] as const)
    for (const key of standing) {
      if (taken[key] === undefined) delete (node as Partial<Node>)[key];
      else Object.assign(node, { [key]: taken[key] });
    }
}
