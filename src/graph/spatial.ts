import RBush from 'rbush';
import type { Section } from '../hydraulics/types.ts';
import type { Node, Scheme, Segment, Vec3 } from './document.ts';
import { isVertical } from './inference/orientation.ts';
import { memoise } from './memo.ts';
import { depthOf, project, type SheetId, type SheetPoint } from './sheet.ts';
import { lerp, normalize, subtract } from './vector.ts';

export interface NodeEntry {
  readonly kind: 'node';
  readonly node: Node;
  readonly point: SheetPoint;
}

export interface SegmentEntry {
  readonly kind: 'segment';
  readonly segment: Segment;
  readonly from: NodeEntry;
  readonly to: NodeEntry;
  /** Half of what the duct covers across its length on the sheet, m. */
  readonly halfWidth: number;
}

type Entry = NodeEntry | SegmentEntry;

/** One scheme as one sheet shows it, ready to be asked what is where. */
export interface SpatialIndex {
  readonly sheet: SheetId;
  readonly nodes: ReadonlyMap<string, NodeEntry>;
  readonly segments: ReadonlyMap<string, SegmentEntry>;
  /** Everything whose box meets the box between two corners, in no order. */
  search(min: SheetPoint, max: SheetPoint): readonly Entry[];
  /** Nodes in the order of one coordinate of the sheet. */
  inOrderOf(axis: 'u' | 'v'): readonly NodeEntry[];
}

/** What the tree holds: an entry with its box, worked out once. */
interface Boxed {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly entry: Entry;
}

function boxed(entry: Entry): Boxed {
  const [a, b, margin] =
    entry.kind === 'node'
      ? [entry.point, entry.point, 0]
      : [entry.from.point, entry.to.point, entry.halfWidth];
  return {
    minX: Math.min(a.u, b.u) - margin,
    minY: Math.min(a.v, b.v) - margin,
    maxX: Math.max(a.u, b.u) + margin,
    maxY: Math.max(a.v, b.v) + margin,
    entry,
  };
}

/** Builds the index of a scheme on a sheet as a whole. A segment whose end is missing is left out. */
export function buildSpatialIndex(scheme: Scheme, sheet: SheetId): SpatialIndex {
  const nodes = new Map<string, NodeEntry>();
  for (const node of scheme.nodes) nodes.set(node.id, { kind: 'node', node, point: project(node.at, sheet) });
  const segments = new Map<string, SegmentEntry>();
  for (const segment of scheme.segments) {
    const from = nodes.get(segment.from);
    const to = nodes.get(segment.to);
    if (!from || !to) continue;
    const halfWidth = across(segment.duct ?? scheme.defaults.duct, from.node.at, to.node.at, sheet) / 2;
    segments.set(segment.id, { kind: 'segment', segment, from, to, halfWidth });
  }
  const tree = new RBush<Boxed>().load([...nodes.values(), ...segments.values()].map(boxed));
  const ordered: { u?: NodeEntry[]; v?: NodeEntry[] } = {};
  return {
    sheet,
    nodes,
    segments,
    search: (min, max) =>
      tree.search({ minX: min.u, minY: min.v, maxX: max.u, maxY: max.v }).map(({ entry }) => entry),
    inOrderOf: (axis) => {
      ordered[axis] ??= [...nodes.values()].sort((a, b) => a.point[axis] - b.point[axis]);
      return ordered[axis];
    },
  };
}

/**
 * The index of a scheme on a sheet, built once for each scheme that an edit makes. A whole build is
 * some tens of milliseconds for 20,000 segments (`tests/bench/spatial.bench.ts`), and a gesture asks
 * the index of the scheme that it started from, so nothing is gained by patching one.
 */
export const spatialIndex: (scheme: Scheme, sheet: SheetId) => SpatialIndex = memoise(buildSpatialIndex);

/**
 * What a duct covers across its length on a sheet, m. The width of a section lies level, so the floor
 * shows it and the sections show the height; of a vertical leg the greater counts.
 */
function across(section: Section, from: Vec3, to: Vec3, sheet: SheetId): number {
  if (section.shape === 'round') return section.diameter;
  if (isVertical(normalize(subtract(to, from)))) return Math.max(section.width, section.height);
  return sheet === 'floor' ? section.width : section.height;
}

/** Something under the pointer. */
export interface Hit {
  readonly kind: 'node' | 'segment';
  readonly id: string;
  /** From the pointer to the node, or to the segment's centre line, m on the sheet. */
  readonly distance: number;
  /** The coordinate that the sheet does not show, m. */
  readonly depth: number;
  /** Fraction along the segment from its `from` node, 0-1; 0 for a node. */
  readonly t: number;
}

/**
 * What lies within `tolerance` (m) of a point of the sheet, best first; a segment is also hit
 * anywhere in the width of its duct. Nodes come before segments, the nearer on the sheet before the
 * farther, and of those at one place the one nearest to the viewer: the others follow, for cycling.
 */
export function hitTest(index: SpatialIndex, point: SheetPoint, tolerance: number): readonly Hit[] {
  const min = { u: point.u - tolerance, v: point.v - tolerance };
  const max = { u: point.u + tolerance, v: point.v + tolerance };
  const hits: Hit[] = [];
  for (const entry of index.search(min, max)) {
    const hit = hitOf(entry, point, index.sheet);
    const reach = entry.kind === 'node' ? tolerance : Math.max(tolerance, entry.halfWidth);
    if (hit.distance <= reach) hits.push(hit);
  }
  return hits.sort(
    (a, b) => rank(a) - rank(b) || micrometres(a) - micrometres(b) || nearer(a, b, index.sheet),
  );
}

function hitOf(entry: Entry, point: SheetPoint, sheet: SheetId): Hit {
  if (entry.kind === 'node') {
    const { node } = entry;
    const distance = Math.hypot(entry.point.u - point.u, entry.point.v - point.v);
    return { kind: 'node', id: node.id, distance, depth: depthOf(node.at, sheet), t: 0 };
  }
  const { segment, from, to } = entry;
  const { t, distance } = nearestOnSheet(point, from.point, to.point);
  const depth = depthOf(lerp(from.node.at, to.node.at, t), sheet);
  return { kind: 'segment', id: segment.id, distance, depth, t };
}

function rank(hit: Hit): number {
  return hit.kind === 'node' ? 0 : 1;
}

/** Distances that no pointer can tell apart are alike. */
function micrometres(hit: Hit): number {
  return Math.round(hit.distance * 1e6);
}

/** Up, south and east are towards the viewer of the floor and of the two sections. */
const towardsViewer: Readonly<Record<SheetId, 1 | -1>> = { floor: 1, 'section-x': -1, 'section-y': 1 };

function nearer(a: Hit, b: Hit, sheet: SheetId): number {
  return (b.depth - a.depth) * towardsViewer[sheet] || (a.id < b.id ? -1 : 1);
}

/** Where a segment of the sheet is nearest to a point: fraction along, 0-1, and distance, m. */
export function nearestOnSheet(
  point: SheetPoint,
  a: SheetPoint,
  b: SheetPoint,
): { t: number; distance: number } {
  const u = b.u - a.u;
  const v = b.v - a.v;
  const square = u * u + v * v;
  const along = square > 0 ? ((point.u - a.u) * u + (point.v - a.v) * v) / square : 0;
  const t = Math.min(1, Math.max(0, along));
  return { t, distance: Math.hypot(a.u + t * u - point.u, a.v + t * v - point.v) };
}

/**
 * Ids of what a box of the sheet holds, its corners in any order: nodes in it, and segments whose
 * centre line lies wholly in it or, with `touching`, passes through it.
 */
export function boxSelect(
  index: SpatialIndex,
  corner: SheetPoint,
  opposite: SheetPoint,
  options: { readonly touching?: boolean } = {},
): { nodes: string[]; segments: string[] } {
  const min = { u: Math.min(corner.u, opposite.u), v: Math.min(corner.v, opposite.v) };
  const max = { u: Math.max(corner.u, opposite.u), v: Math.max(corner.v, opposite.v) };
  const inside = ({ u, v }: SheetPoint) => u >= min.u && u <= max.u && v >= min.v && v <= max.v;
  const nodes: string[] = [];
  const segments: string[] = [];
  for (const entry of index.search(min, max)) {
    if (entry.kind === 'node') {
      if (inside(entry.point)) nodes.push(entry.node.id);
    } else {
      const [a, b] = [entry.from.point, entry.to.point];
      const whole = inside(a) && inside(b);
      if (whole || (options.touching && passesThrough(a, b, min, max))) segments.push(entry.segment.id);
    }
  }
  return { nodes, segments };
}

/** Clips the line from `a` to `b` by the box's four sides; true where something is left of it. */
function passesThrough(a: SheetPoint, b: SheetPoint, min: SheetPoint, max: SheetPoint): boolean {
  let enters = 0;
  let leaves = 1;
  for (const axis of ['u', 'v'] as const) {
    const step = b[axis] - a[axis];
    if (step === 0) {
      if (a[axis] < min[axis] || a[axis] > max[axis]) return false;
      continue;
    }
    const t1 = (min[axis] - a[axis]) / step;
    const t2 = (max[axis] - a[axis]) / step;
    enters = Math.max(enters, Math.min(t1, t2));
    leaves = Math.min(leaves, Math.max(t1, t2));
  }
  return enters <= leaves;
}
