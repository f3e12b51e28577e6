import { words } from '../words/index.ts';
import type { Node, Vec3 } from './document.ts';
import { depthOf, project, type SheetPoint, unproject } from './sheet.ts';
import type { SnapRequest } from './snap.ts';
import { nearestOnSheet, type SpatialIndex } from './spatial.ts';
import { angleBetween, norm, subtract } from './vector.ts';

const says = words.route.snapLines;

/** A line on the sheet that attracts the pointer. */
export interface SnapLine {
  readonly kind: 'centre line' | 'direction' | 'face' | 'alignment';
  readonly reason: string;
  readonly origin: SheetPoint;
  /** Unit vector. */
  readonly along: SheetPoint;
  /** How far the line goes from its origin, m. */
  readonly reach: readonly [number, number];
  /** What is drawn to show the line, for a line that is there. */
  readonly drawn?: readonly [SheetPoint, SheetPoint];
  readonly segment?: string;
}

/** Directions are offered every 15°. */
const STEP = 15;
/** A corner is square to the other legs that end in it, degrees. */
const SQUARE = 90;
/** An angle within this of a direction is said to be that direction, degrees. */
const SAME_ANGLE = 0.01;
/** Of the nodes that a pointer is in line with, this many nearest ones count. */
const ALIGNED = 3;

/** Every line within the request's tolerance of its point. */
export function linesNear(request: SnapRequest): SnapLine[] {
  return [...centreLines(request), ...directions(request), ...faces(request), ...alignments(request)];
}

function centreLines({ index, point, tolerance, exclude }: SnapRequest): SnapLine[] {
  const lines: SnapLine[] = [];
  for (const entry of around(index, point, tolerance)) {
    if (entry.kind !== 'segment') continue;
    const { segment, from, to } = entry;
    const out = [segment.id, segment.from, segment.to].some((id) => exclude?.has(id));
    if (out || nearestOnSheet(point, from.point, to.point).distance > tolerance) continue;
    const length = Math.hypot(to.point.u - from.point.u, to.point.v - from.point.v);
    if (length === 0) continue;
    lines.push({
      kind: 'centre line',
      reason: says.onCentreLine,
      origin: from.point,
      along: { u: (to.point.u - from.point.u) / length, v: (to.point.v - from.point.v) / length },
      reach: [0, length],
      drawn: [from.point, to.point],
      segment: segment.id,
    });
  }
  return lines;
}

export function around(index: SpatialIndex, point: SheetPoint, tolerance: number) {
  return index.search(
    { u: point.u - tolerance, v: point.v - tolerance },
    { u: point.u + tolerance, v: point.v + tolerance },
  );
}

/** Rays from where the leg in hand starts, and from where others end at what is moved. */
function directions(request: SnapRequest): SnapLine[] {
  const { from, previous, anchors = [] } = request;
  return [
    ...(from ? raysFrom(request, from, previous, STEP) : []),
    ...anchors.flatMap((anchor) => raysFrom(request, anchor, undefined, SQUARE)),
  ];
}

/** By `step` degrees of the sheet and from the leg before; never back along that leg. */
function raysFrom(request: SnapRequest, from: Vec3, previous: Vec3 | undefined, step: number): SnapLine[] {
  const { index, point, tolerance } = request;
  const origin = project(from, index.sheet);
  const reach = Math.hypot(point.u - origin.u, point.v - origin.v);
  if (reach <= tolerance) return [];
  const pointer = degreesOf(origin, point);
  const flat = staysInPlane(request, from);
  const before = previous && flat ? subtract(from, previous) : null;
  const angles = [Math.round(pointer / step) * step];
  if (before && inPlane(before, index)) {
    const straight = degreesOf({ u: 0, v: 0 }, project(before, index.sheet));
    const turned = straight + Math.round((pointer - straight) / step) * step;
    if (Math.abs(turned - (angles[0] ?? 0)) > SAME_ANGLE) angles.unshift(turned);
  }
  return angles.flatMap((degrees): SnapLine[] => {
    const along = unit(degrees);
    const turn = before && norm(before) > 0 ? angleBetween(before, unproject(along, index.sheet, 0)) : null;
    if (turn !== null && turn > 180 - SAME_ANGLE) return [];
    const reason = (turn !== null && turnReason(turn)) || sheetReason(degrees, index, flat);
    const line: SnapLine = { kind: 'direction', reason, origin, along, reach: [0, Number.POSITIVE_INFINITY] };
    return distanceTo(line, point) <= tolerance ? [line] : [];
  });
}

/** True where a leg from a place keeps its depth, so that the sheet shows its true angle and length. */
export function staysInPlane({ index, workingDepth }: SnapRequest, from: Vec3): boolean {
  return Math.abs(depthOf(from, index.sheet) - workingDepth) < 1e-6;
}

/** The turn from the leg before, where it is one of the steps. */
function turnReason(angle: number): string | null {
  const whole = Math.round(angle / STEP) * STEP;
  if (Math.abs(angle - whole) > SAME_ANGLE) return null;
  return whole === 0 ? says.straightOn : says.fromLastTurn(whole);
}

const compass = [says.east, says.north, says.west, says.south] as const;

function sheetReason(degrees: number, { sheet }: SpatialIndex, flat: boolean): string {
  const turned = ((degrees % 360) + 360) % 360;
  if (turned % 90 !== 0 || !flat) return says.onSheet(turned);
  if (sheet !== 'floor') return turned % 180 === 0 ? says.level : says.plumb;
  return compass[(turned / 90) as 0 | 1 | 2 | 3];
}

function inPlane(direction: Vec3, { sheet }: SpatialIndex): boolean {
  const seen = project(direction, sheet);
  const length = Math.hypot(seen.u, seen.v);
  return length > 0 && Math.abs(depthOf(direction, sheet)) < 1e-6 * length;
}

function degreesOf(from: SheetPoint, to: SheetPoint): number {
  return (Math.atan2(to.v - from.v, to.u - from.u) * 180) / Math.PI;
}

/** Exact at the quarter turns, where a cosine of π would not be. */
function unit(degrees: number): SheetPoint {
  const turned = ((degrees % 360) + 360) % 360;
  if (turned % 90 === 0) {
    const quarters = [
      { u: 1, v: 0 },
      { u: 0, v: 1 },
      { u: -1, v: 0 },
      { u: 0, v: -1 },
    ] as const;
    return quarters[(turned / 90) as 0 | 1 | 2 | 3];
  }
  const radians = (turned * Math.PI) / 180;
  return { u: Math.cos(radians), v: Math.sin(radians) };
}

/** The sides of blocks and exits as the sheet shows them. */
function faces({ index, point, tolerance, blocks = [], exits = [] }: SnapRequest): SnapLine[] {
  const lines: SnapLine[] = [];
  for (const box of [...blocks, ...exits]) {
    const a = project(box.min, index.sheet);
    const b = project(box.max, index.sheet);
    const reason = says.face(box.name);
    for (const u of a.u === b.u ? [a.u] : [a.u, b.u]) lines.push(side(reason, { u, v: a.v }, { u, v: b.v }));
    for (const v of a.v === b.v ? [a.v] : [a.v, b.v]) lines.push(side(reason, { u: a.u, v }, { u: b.u, v }));
  }
  return lines.filter((line) => line.reach[1] > 0 && distanceTo(line, point) <= tolerance);
}

function side(reason: string, a: SheetPoint, b: SheetPoint): SnapLine {
  const along = a.u === b.u ? { u: 0, v: 1 } : { u: 1, v: 0 };
  const length = Math.abs(b.u - a.u + (b.v - a.v));
  return { kind: 'face', reason, origin: a, along, reach: [0, length], drawn: [a, b] };
}

/** Lines through other nodes, level and upright on the sheet. */
function alignments({ index, point, tolerance, exclude, from, anchors = [] }: SnapRequest): SnapLine[] {
  const starts = (from ? [from, ...anchors] : anchors).map((start) => project(start, index.sheet));
  return (['u', 'v'] as const).flatMap((axis) => {
    const across = axis === 'u' ? 'v' : 'u';
    const along = axis === 'u' ? { u: 0, v: 1 } : { u: 1, v: 0 };
    return inBand(index, axis, point[axis] - tolerance, point[axis] + tolerance)
      .filter(({ node, point: at }) => !exclude?.has(node.id) && starts.every((s) => s[axis] !== at[axis]))
      .sort((a, b) => Math.abs(a.point[across] - point[across]) - Math.abs(b.point[across] - point[across]))
      .slice(0, ALIGNED)
      .map(
        ({ node, point: origin }): SnapLine => ({
          kind: 'alignment',
          reason: says.inLine(nodeWord(node)),
          origin,
          along,
          reach: [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
        }),
      );
  });
}

function inBand(index: SpatialIndex, axis: 'u' | 'v', low: number, high: number) {
  const nodes = index.inOrderOf(axis);
  const first = firstNotBelow(nodes, axis, low);
  let last = first;
  while ((nodes[last]?.point[axis] ?? Number.POSITIVE_INFINITY) <= high) last += 1;
  return nodes.slice(first, last);
}

function firstNotBelow(nodes: ReturnType<SpatialIndex['inOrderOf']>, axis: 'u' | 'v', value: number): number {
  let low = 0;
  let high = nodes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((nodes[middle]?.point[axis] ?? Number.POSITIVE_INFINITY) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

export function nodeWord(node: Node): string {
  return says.nodes[node.role];
}

/** Where a line is nearest to a point, within the line's reach. */
export function nearestOn(line: SnapLine, point: SheetPoint): SheetPoint {
  const t = (point.u - line.origin.u) * line.along.u + (point.v - line.origin.v) * line.along.v;
  return placeOn(line, Math.min(line.reach[1], Math.max(line.reach[0], t)));
}

export function placeOn(line: SnapLine, t: number): SheetPoint {
  return { u: line.origin.u + t * line.along.u, v: line.origin.v + t * line.along.v };
}

function distanceTo(line: SnapLine, point: SheetPoint): number {
  const nearest = nearestOn(line, point);
  return Math.hypot(nearest.u - point.u, nearest.v - point.v);
}

/** Where two lines cross within the reach of both; `null` for lines that run the same way. */
export function crossing(a: SnapLine, b: SnapLine): SheetPoint | null {
  const turn = a.along.u * b.along.v - a.along.v * b.along.u;
  if (Math.abs(turn) < 1e-6) return null;
  const u = b.origin.u - a.origin.u;
  const v = b.origin.v - a.origin.v;
  const s = (u * b.along.v - v * b.along.u) / turn;
  const t = (u * a.along.v - v * a.along.u) / turn;
  const reached = s >= a.reach[0] && s <= a.reach[1] && t >= b.reach[0] && t <= b.reach[1];
  return reached ? placeOn(a, s) : null;
}
