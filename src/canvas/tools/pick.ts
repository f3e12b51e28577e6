import type { Scheme, Vec3 } from '../../graph/document.ts';
import { type SheetPoint, unproject } from '../../graph/sheet.ts';
import { type Hit, hitTest, type SpatialIndex } from '../../graph/spatial.ts';
import { lerp } from '../../graph/vector.ts';
import type { Item } from '../selection.ts';

/** What of the run a pointer is on. */
export interface Pick extends Under {
  readonly kind: 'node' | 'segment';
}

/** What a pointer is on. */
export interface Under extends Item {
  readonly id: string;
  /** The thing's own place: a node's, or that on a centre line or on a box under the pointer. */
  readonly at: Vec3;
}

export interface PickOptions {
  /** Of nodes that lie behind each other, the end of a run comes first. */
  readonly endsFirst?: boolean;
}

/** Nodes seen closer together than this are behind each other, m. */
const ONE_SPOT = 1e-6;

/** What lies within `tolerance` metres of a point on a sheet, the best of it. */
export function pick(
  scheme: Scheme,
  index: SpatialIndex,
  point: SheetPoint,
  tolerance: number,
  { endsFirst = false }: PickOptions = {},
): Pick | null {
  const hits = hitTest(index, point, tolerance);
  const [first] = hits;
  if (!first) return null;
  const best = endsFirst && first.kind === 'node' ? (endAmong(hits, first, scheme) ?? first) : first;
  return {
    kind: best.kind,
    id: best.id,
    at: placeOf(best, index) ?? unproject(point, index.sheet, best.depth),
  };
}

function endAmong(hits: readonly Hit[], first: Hit, scheme: Scheme): Hit | undefined {
  return hits.find((hit) => {
    if (hit.kind !== 'node' || hit.distance - first.distance > ONE_SPOT) return false;
    return scheme.segments.filter(({ from, to }) => from === hit.id || to === hit.id).length < 2;
  });
}

/** Where a hit is in space. */
export function placeOf(hit: Hit, index: SpatialIndex): Vec3 | undefined {
  if (hit.kind === 'node') return index.nodes.get(hit.id)?.node.at;
  const entry = index.segments.get(hit.id);
  return entry && lerp(entry.from.node.at, entry.to.node.at, hit.t);
}
