import { formatLength, type System } from '../units/index.ts';
import { words } from '../words/index.ts';
import type { Block, Job, Vec3 } from './document.ts';
import { depthOf, project, type SheetPoint, unproject } from './sheet.ts';
import {
  around,
  crossing,
  linesNear,
  nearestOn,
  nodeWord,
  placeOn,
  type SnapLine,
  staysInPlane,
} from './snap-lines.ts';
import { nearestOnSheet, type SegmentEntry, type SpatialIndex } from './spatial.ts';
import { distance, lerp } from './vector.ts';

const says = words.route.snap;

export interface SnapRequest {
  /** The sheet, and the scheme as it was when the gesture began. */
  readonly index: SpatialIndex;
  readonly point: SheetPoint;
  /** How far anything attracts, m: the caller makes it from screen pixels. */
  readonly tolerance: number;
  /** The coordinate that the sheet does not show, for a place that nothing else gives one, m. */
  readonly workingDepth: number;
  /** Where the leg in hand starts. */
  readonly from?: Vec3 | undefined;
  /** Where other legs of the node in hand come from, so that it can be square to several at once. */
  readonly anchors?: readonly Vec3[] | undefined;
  /** Where the leg before it started: angles and equal lengths count from that leg. */
  readonly previous?: Vec3 | undefined;
  /** m; 0 or absent for no grid. */
  readonly gridStep?: number | undefined;
  /** Nodes and segments that must not attract: those being moved. A leg of such a node is one of them. */
  readonly exclude?: ReadonlySet<string> | undefined;
  readonly blocks?: readonly Block[] | undefined;
  readonly exits?: Job['exits'] | undefined;
  /** For the words that name the grid. */
  readonly units: System;
}

export interface Snap {
  readonly at: Vec3;
  /** `at` as the sheet shows it. */
  readonly point: SheetPoint;
  /** Shown to the user: "on centre line, 90° from last turn"; empty where nothing attracted. */
  readonly reason: string;
  /** Lines on the sheet that show why. */
  readonly guides: readonly (readonly [SheetPoint, SheetPoint])[];
  readonly node?: string;
  /** Fraction along the segment from its `from` node, 0-1. */
  readonly segment?: { readonly id: string; readonly t: number };
}

/** Earlier wins, whatever the distance; among equals the nearer wins. */
const order = [
  'riser',
  'node',
  'centre line × direction',
  'centre line × face',
  'centre line × alignment',
  'centre line',
  'direction × direction',
  'direction × face',
  'direction × length',
  'direction × alignment',
  'face × face',
  'face × alignment',
  'alignment × alignment',
  'direction',
  'face',
  'length',
  'alignment',
  'grid',
] as const;

interface Candidate extends Omit<Snap, 'at'> {
  readonly kind: (typeof order)[number];
  readonly at?: Vec3;
}

/**
 * Where a pointer is held to, and why. Everything within the tolerance is a candidate: nodes, centre
 * lines, faces of blocks and exits, 15° directions, the length of the leg before, lines through other
 * nodes, the grid, and the places where two of these meet. The bare point where nothing attracts.
 */
export function snap(request: SnapRequest): Snap {
  const { index, point, tolerance, workingDepth } = request;
  const lines = linesNear(request);
  const candidates = [
    ...risers(request),
    ...nodes(request),
    ...crossings(request, lines),
    ...lines.map((line) => alone(request, line)),
    ...equalLength(request, lines),
    ...grid(request),
  ];
  const away = (c: Candidate) => Math.hypot(c.point.u - point.u, c.point.v - point.v);
  const best = candidates
    .filter((candidate) => away(candidate) <= tolerance)
    .sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind) || away(a) - away(b))[0];
  if (!best) return { at: unproject(point, index.sheet, workingDepth), point, reason: '', guides: [] };
  const { kind: _kind, ...found } = best;
  const at = best.at ?? unproject(best.point, index.sheet, workingDepth);
  return { ...found, at, point: project(at, index.sheet) };
}

/** A riser seen end on is met at the working depth, where it reaches that far. */
function risers({ index, point, tolerance, workingDepth, exclude }: SnapRequest): Candidate[] {
  return around(index, point, tolerance).flatMap((entry): Candidate[] => {
    if (entry.kind !== 'segment') return [];
    const { segment, from, to } = entry;
    if ([segment.id, segment.from, segment.to].some((id) => exclude?.has(id))) return [];
    if (Math.hypot(from.point.u - to.point.u, from.point.v - to.point.v) > 1e-6) return [];
    const [start, end] = [depthOf(from.node.at, index.sheet), depthOf(to.node.at, index.sheet)];
    const t = (workingDepth - start) / (end - start);
    if (!(t > 1e-6 && t < 1 - 1e-6)) return [];
    const at = lerp(from.node.at, to.node.at, t);
    const place = { id: segment.id, t };
    return [{ kind: 'riser', at, point: from.point, reason: says.onRiser, guides: [], segment: place }];
  });
}

/** Of nodes at one place, the one at the working depth, or nearest to it, comes first. */
function nodes({ index, point, tolerance, workingDepth, exclude }: SnapRequest): Candidate[] {
  const off = (at: Vec3) => Math.abs(depthOf(at, index.sheet) - workingDepth);
  return around(index, point, tolerance)
    .flatMap((entry) => (entry.kind === 'node' && !exclude?.has(entry.node.id) ? [entry] : []))
    .sort((a, b) => off(a.node.at) - off(b.node.at))
    .map(({ node, point: at }) => ({
      kind: 'node',
      at: node.at,
      point: at,
      reason: says.onNode(nodeWord(node)),
      guides: [],
      node: node.id,
    }));
}

function crossings(request: SnapRequest, lines: readonly SnapLine[]): Candidate[] {
  return lines.flatMap((a, i) =>
    lines.slice(i + 1).flatMap((b): Candidate[] => {
      const point = crossing(a, b);
      const kind = order.find((each) => each === `${a.kind} × ${b.kind}` || each === `${b.kind} × ${a.kind}`);
      if (!point || !kind) return [];
      const place = onSegment(request, a.segment ? a : b, point);
      const reason = tilts(request, place.at)
        ? says.onCentreLine
        : a.reason === b.reason
          ? a.reason
          : says.both(a.reason, b.reason);
      return [{ kind, point, reason, guides: [guide(a, point), guide(b, point)], ...place }];
    }),
  );
}

/** True where a leg to a duct goes up or down to it, so that its angle is not the one on the sheet. */
function tilts({ index, from }: SnapRequest, at: Vec3 | undefined): boolean {
  return (
    from !== undefined &&
    at !== undefined &&
    Math.abs(depthOf(at, index.sheet) - depthOf(from, index.sheet)) > 1e-6
  );
}

/** A line by itself; where the line leaves a choice, the grid makes it. */
function alone(request: SnapRequest, line: SnapLine): Candidate {
  const nearest = nearestOn(line, request.point);
  const stepped = line.kind === 'centre line' ? null : onGrid(request, line, nearest);
  const point = stepped ?? nearest;
  const reason = stepped ? says.both(line.reason, gridWord(request)) : line.reason;
  return { kind: line.kind, point, reason, guides: [guide(line, point)], ...onSegment(request, line, point) };
}

/** The grid's step along a line: lengths from a leg's start, or the grid's own lines across it. */
function onGrid(request: SnapRequest, line: SnapLine, nearest: SheetPoint): SheetPoint | null {
  const { gridStep = 0, point, tolerance } = request;
  if (!(gridStep > 0)) return null;
  const { origin, along, reach } = line;
  const base = line.kind === 'direction' ? 0 : origin.u * along.u + origin.v * along.v;
  const t = (nearest.u - origin.u) * along.u + (nearest.v - origin.v) * along.v;
  const stepped = Math.round((base + t) / gridStep) * gridStep - base;
  if (stepped < reach[0] || stepped > reach[1] || (line.kind === 'direction' && stepped <= 0)) return null;
  const place = placeOn(line, stepped);
  return Math.hypot(place.u - point.u, place.v - point.v) <= tolerance ? place : null;
}

function equalLength(request: SnapRequest, lines: readonly SnapLine[]): Candidate[] {
  const { index, point, from, previous } = request;
  if (!from || !previous || !staysInPlane(request, from)) return [];
  const length = distance(from, previous);
  const origin = project(from, index.sheet);
  const reach = Math.hypot(point.u - origin.u, point.v - origin.v);
  if (length === 0 || reach === 0) return [];
  const reason = says.sameLength;
  const guides = (to: SheetPoint) => [
    [origin, to] as const,
    [project(previous, index.sheet), origin] as const,
  ];
  const along = { u: (point.u - origin.u) / reach, v: (point.v - origin.v) / reach };
  const free = { u: origin.u + length * along.u, v: origin.v + length * along.v };
  const directed = lines
    .filter((line) => line.kind === 'direction')
    .map((line): Candidate => {
      const place = placeOn(line, length);
      return {
        kind: 'direction × length',
        point: place,
        reason: says.both(line.reason, reason),
        guides: guides(place),
      };
    });
  return [...directed, { kind: 'length', point: free, reason, guides: guides(free) }];
}

function grid(request: SnapRequest): Candidate[] {
  const { gridStep = 0, point } = request;
  if (!(gridStep > 0)) return [];
  const round = (x: number) => Math.round(x / gridStep) * gridStep;
  return [
    { kind: 'grid', point: { u: round(point.u), v: round(point.v) }, reason: gridWord(request), guides: [] },
  ];
}

function gridWord({ gridStep = 0, units }: SnapRequest): string {
  return says.grid(formatLength(gridStep, units, { atLeast: 16 }));
}

function guide(line: SnapLine, point: SheetPoint): readonly [SheetPoint, SheetPoint] {
  return line.drawn ?? [line.origin, point];
}

/** A place on a centre line is on the duct itself: its depth is the duct's. */
function onSegment(
  { index }: SnapRequest,
  line: SnapLine,
  point: SheetPoint,
): Pick<Candidate, 'at' | 'segment'> {
  const entry: SegmentEntry | undefined = line.segment ? index.segments.get(line.segment) : undefined;
  if (!entry) return {};
  const { t } = nearestOnSheet(point, entry.from.point, entry.to.point);
  return { at: lerp(entry.from.node.at, entry.to.node.at, t), segment: { id: entry.segment.id, t } };
}
