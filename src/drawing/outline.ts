import type { Hood, InlinePart, Job, Vec3 } from '../graph/document.ts';
import { widthAxis } from '../graph/inference/orientation.ts';
import type { Route, RouteNode, RouteSegment } from '../graph/route.ts';
import type { SheetId, SheetPoint } from '../graph/sheet.ts';
import { add, distance, dot, normalize, scale, subtract } from '../graph/vector.ts';
import { bendDrawables } from './outline-bend.ts';
import { createOutliner } from './outline-cache.ts';
import { capDrawable } from './outline-cap.ts';
import { hoodDrawable } from './outline-hood.ts';
import { inlineDrawables } from './outline-inline.ts';
import { capSolids, hoodSolids } from './outline-solid.ts';
import { circle, type Drawable, drawable, line, polygon, type Stroke } from './stroke.ts';
import { grazing, isEndOn, type Piece, reach, seam, seen, wallsOf } from './tube.ts';
import { type View, views } from './view.ts';

/** A leg as a sheet shows it: what labels, arrows and marks are placed by. */
export interface SheetLeg {
  readonly segment: RouteSegment;
  /** Node to node. */
  readonly from: SheetPoint;
  readonly to: SheetPoint;
  /** The straight duct between its bends, in space. */
  readonly start: Vec3;
  readonly end: Vec3;
  /** The same on the sheet. */
  readonly straightFrom: SheetPoint;
  readonly straightTo: SheetPoint;
  /** Seen along its length. */
  readonly endOn: boolean;
  /** For a leg seen end on: the air comes at the viewer. */
  readonly toward: boolean;
  /** Half of what the duct covers across its length on this sheet, m. */
  readonly half: number;
  /** The leg lies in the plane of the sheet, so its length shows true. */
  readonly inPlane: boolean;
  /** Unit vector along the section's width. */
  readonly width: Vec3;
}

export interface Outline {
  readonly legs: readonly SheetLeg[];
  readonly byId: ReadonlyMap<string, SheetLeg>;
  /** From the farthest to the nearest. */
  readonly drawables: readonly Drawable[];
}

/**
 * The drawable shapes of a route on one sheet, in sheet metres: legs between their tangents, bends,
 * transitions, risers, parts in line, caps and hoods, sorted so that what is nearer comes later.
 */
export function outlineOf(route: Route, job: Job, sheet: SheetId): Outline {
  return outlineIn(route, job, views[sheet]);
}

/** The same in any view, made as a whole. */
export function outlineIn(route: Route, job: Job, view: View): Outline {
  return createOutliner(view)(route, job);
}

/** The duct of a leg, and its parts in line. */
export function legPieces(leg: SheetLeg, parts: readonly InlinePart[], route: Route, view: View): Drawable[] {
  return [...legDrawables(leg, route, view), ...inlineDrawables(parts, leg, view)];
}

/** What stands at a node: bend, change of size, cap, hood. */
export function nodePieces(
  node: RouteNode,
  cap: string | undefined,
  hood: Hood | undefined,
  mountingHeight: number | undefined,
  legs: ReadonlyMap<string, SheetLeg>,
  view: View,
): Drawable[] {
  const last = legs.get(node.segments[0] ?? '');
  return [
    ...(node.bend ? bendDrawables(node, legs, view) : []),
    ...(node.transition ? transitionDrawables(node, legs, view) : []),
    ...(node.kind === 'cap' && last ? capOf(node, cap ?? 'open', last, view) : []),
    ...(hood ? hoodOf(node, hood, mountingHeight, view) : []),
  ];
}

function capOf(node: RouteNode, cap: string, leg: SheetLeg, view: View): Drawable[] {
  return view.solid ? capSolids(node, cap, leg, view) : [capDrawable(node, cap, leg, view)];
}

function hoodOf(node: RouteNode, hood: Hood, height: number | undefined, view: View): Drawable[] {
  return view.solid ? hoodSolids(node, hood, height, view) : [hoodDrawable(node, hood, height, view)];
}

const order: Readonly<Record<Drawable['kind'], number>> = {
  hood: 0,
  leg: 1,
  transition: 2,
  bend: 3,
  joint: 4,
  'in-line': 5,
  cap: 6,
  riser: 7,
};

/** By whole millimetres of nearness; what lies in one of them is drawn in the order of its kinds. */
export function byNearness(a: Drawable, b: Drawable): number {
  return Math.round(a.near * 1000) - Math.round(b.near * 1000) || order[a.kind] - order[b.kind];
}

/** A leg as a view shows it. */
export function legOf(segment: RouteSegment, route: Route, view: View): SheetLeg {
  const fromNode = route.nodes.get(segment.from);
  const toNode = route.nodes.get(segment.to);
  const from: Vec3 = fromNode?.at ?? [0, 0, 0];
  const to: Vec3 = toNode?.at ?? add(from, scale(segment.direction, segment.length));
  const cutFrom = taken(fromNode, segment.id) + cone(fromNode, segment.id) + stub(fromNode, segment.id);
  const cutTo = taken(toNode, segment.id);
  const share = Math.min(1, segment.length / Math.max(cutFrom + cutTo, 1e-9));
  const start = add(from, scale(segment.direction, cutFrom * share));
  const end = subtract(to, scale(segment.direction, cutTo * share));
  const neighbours = [fromNode, toNode].flatMap((node) => neighbourDirections(node, segment.id, route));
  const width = widthAxis(segment.direction, neighbours);
  const normal = grazing(segment.direction, view);
  const endOn = isEndOn(segment.direction, view);
  return {
    segment,
    from: seen(from, view),
    to: seen(to, view),
    start,
    end,
    straightFrom: seen(start, view),
    straightTo: seen(end, view),
    endOn,
    toward: dot(segment.direction, view.toward) > 0,
    half: reach(segment.section, width, normal ?? view.right),
    inPlane: Math.abs(dot(segment.direction, view.toward)) < Math.sin((5 * Math.PI) / 180),
    width,
  };
}

function taken(node: RouteNode | undefined, segment: string): number {
  const bend = node?.bend;
  return bend && (bend.upstream === segment || bend.downstream === segment) ? bend.tangent : 0;
}

function cone(node: RouteNode | undefined, segment: string): number {
  return node?.transition?.downstream === segment ? node.transition.length : 0;
}

/**
 * How far the leg downstream of a mitre still has the size upstream, where the size also changes: past
 * the inner corner of the mitre, so that the cone begins on a square end, m.
 */
export function stub(node: RouteNode | undefined, segment: string): number {
  const { bend, transition: change } = node ?? {};
  if (!bend || bend.tangent > 0 || change?.downstream !== segment) return 0;
  const { from } = change;
  const across = bend.inPlane ?? (from.shape === 'round' ? from.diameter : Math.max(from.width, from.height));
  return (across / 2) * Math.tan((Math.min(bend.angle, 150) * Math.PI) / 360);
}

function neighbourDirections(node: RouteNode | undefined, segment: string, route: Route): Vec3[] {
  return (node?.segments ?? []).flatMap((id) => {
    const next = id === segment ? undefined : route.segments.get(id);
    return next ? [next.direction] : [];
  });
}

/** The direction of the one other leg at a node, for a mitre; null where legs do not meet in a point. */
function mitred(node: RouteNode | undefined, segment: string, route: Route): Vec3 | null {
  if (node?.segments.length !== 2 || (node.bend?.tangent ?? 0) > 0 || stub(node, segment) > 0) return null;
  return neighbourDirections(node, segment, route)[0] ?? null;
}

function legDrawables(leg: SheetLeg, route: Route, view: View): Drawable[] {
  const { segment, start, end } = leg;
  const base = { id: segment.id, of: 'segment', colourOf: segment.id } as const;
  if (leg.endOn)
    return [riser(leg, Math.max(...nodesOf(segment, route).map((at) => dot(at, view.toward))), view)];
  if (distance(start, end) < 1e-6) return [];
  const piece: Piece = {
    from: start,
    to: end,
    before: mitred(route.nodes.get(segment.from), segment.id, route),
    after: mitred(route.nodes.get(segment.to), segment.id, route),
    section: segment.section,
    width: leg.width,
  };
  const walls = wallsOf(piece, view);
  if (!walls) return [];
  const { left, right } = walls;
  const ribbed = segment.material === 'flexible' || segment.material === 'semi-rigid';
  const outlines = ribbed
    ? ribs(left, right, leg.half)
    : { walls: [line(...left), line(...right)], fine: [] };
  const joints = [
    piece.before ? null : seam(start, null, segment.direction, segment.section, leg.width, view),
    piece.after ? null : seam(end, segment.direction, null, segment.section, leg.width, view),
  ];
  return [
    drawable({
      ...base,
      kind: 'leg',
      near: (dot(start, view.toward) + dot(end, view.toward)) / 2 - (isBranch(segment, route) ? 0.002 : 0),
      fill: [
        [polygon([left[0], left[1], right[1], right[0]])],
        ...(view.solid ? joints.flatMap((joint) => (joint ? [[joint]] : [])) : []),
      ],
      walls: outlines.walls,
      centre: [line(seen(start, view), seen(end, view))],
      fine: [...outlines.fine, ...joints.filter((joint) => joint !== null)],
    }),
  ];
}

/** A branch is drawn just under the run that it joins, whose fill then covers its end. */
function isBranch(segment: RouteSegment, route: Route): boolean {
  return [segment.from, segment.to].some((id) =>
    route.nodes.get(id)?.junction?.branches.includes(segment.id),
  );
}

function nodesOf(segment: RouteSegment, route: Route): Vec3[] {
  return [segment.from, segment.to].flatMap((id) => {
    const node = route.nodes.get(id);
    return node ? [node.at] : [];
  });
}

/** Flexible duct: walls that wave by its corrugation, and a line across at every fourth of its diameter. */
function ribs(
  left: readonly [SheetPoint, SheetPoint],
  right: readonly [SheetPoint, SheetPoint],
  half: number,
) {
  const length = Math.max(dist(left), dist(right));
  const count = Math.max(2, 2 * Math.round(length / Math.max(half / 2, 0.01)));
  const axis = { u: left[0].u - right[0].u, v: left[0].v - right[0].v };
  const depth = 0.07;
  const wave = (ends: readonly [SheetPoint, SheetPoint], side: 1 | -1) =>
    Array.from({ length: count + 1 }, (_, i) => {
      const at = between(ends, i / count);
      const inward = i % 2 === 1 ? side * depth : 0;
      return { u: at.u - axis.u * inward, v: at.v - axis.v * inward };
    });
  const [l, r] = [wave(left, 1), wave(right, -1)];
  const fine = l.flatMap((at, i) => (i % 2 === 1 ? [line(at, r[i] as SheetPoint)] : []));
  return { walls: [line(...l), line(...r)], fine };
}

/**
 * A leg seen end on: its section, with half of it inked where the air comes at the viewer and a cross
 * where it goes away.
 */
function riser(leg: SheetLeg, near: number, view: View): Drawable {
  const { segment, width } = leg;
  const at = seen(add(scale(leg.start, 0.5), scale(leg.end, 0.5)), view);
  const rim = rimOf(leg, at, view);
  const corner = Math.SQRT1_2;
  const spot = (a: number, b: number): SheetPoint => {
    const across = normalize(subtract(width, scale(view.toward, dot(width, view.toward))));
    const w = seen(across, view);
    const { section } = segment;
    const [hw, hh] =
      section.shape === 'round'
        ? [section.diameter / 2, section.diameter / 2]
        : [section.width / 2, section.height / 2];
    return { u: at.u + a * hw * w.u - b * hh * w.v, v: at.v + a * hw * w.v + b * hh * w.u };
  };
  const k = segment.section.shape === 'round' ? corner : 1;
  const cross = [line(spot(-k, -k), spot(k, k)), line(spot(-k, k), spot(k, -k))];
  return drawable({
    kind: 'riser',
    id: segment.id,
    of: 'segment',
    colourOf: segment.id,
    near,
    fill: [[rim]],
    walls: [rim],
    fine: leg.toward ? cross.slice(0, 1) : cross,
    solid: leg.toward ? [halfOf(rim, at, spot, k)] : [],
  });
}

function rimOf(leg: SheetLeg, at: SheetPoint, view: View): Stroke {
  const { section } = leg.segment;
  if (section.shape === 'round') return circle(at, section.diameter / 2);
  const w = seen(leg.width, view);
  const local = (a: number, b: number): SheetPoint => ({
    u: at.u + a * w.u - b * w.v,
    v: at.v + a * w.v + b * w.u,
  });
  const [a, b] = [section.width / 2, section.height / 2];
  if (section.shape === 'rectangular')
    return polygon([local(-a, -b), local(a, -b), local(a, b), local(-a, b)]);
  const short = Math.min(a, b);
  const points = Array.from({ length: 49 }, (_, i) => {
    const angle = (i / 48) * 2 * Math.PI;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return local(short * c + Math.sign(c) * (a - short), short * s + Math.sign(s) * (b - short));
  });
  return polygon(points);
}

function halfOf(
  rim: Stroke,
  at: SheetPoint,
  spot: (a: number, b: number) => SheetPoint,
  k: number,
): Stroke[] {
  if (rim.kind === 'arc')
    return [{ kind: 'arc', centre: at, radius: rim.radius, start: Math.PI / 4, end: (5 * Math.PI) / 4 }];
  return [polygon([spot(-k, -k), spot(k, k), spot(-k, k)])];
}

function transitionDrawables(node: RouteNode, legs: ReadonlyMap<string, SheetLeg>, view: View): Drawable[] {
  const t = node.transition;
  const down = legs.get(t?.downstream ?? '');
  if (!t || !down) return [];
  const direction = down.segment.direction;
  const normal = grazing(direction, view);
  if (!normal) return [];
  const from = add(node.at, scale(direction, taken(node, t.downstream) + stub(node, t.downstream)));
  const to = add(from, scale(direction, t.length));
  const rim = (at: Vec3, half: number): [SheetPoint, SheetPoint] => [
    seen(add(at, scale(normal, half)), view),
    seen(subtract(at, scale(normal, half)), view),
  ];
  const wide = rim(from, reach(t.from, down.width, normal));
  const narrow = rim(to, reach(t.to, down.width, normal));
  return [
    drawable({
      kind: 'transition',
      id: node.id,
      of: 'node',
      colourOf: t.downstream,
      near: dot(from, view.toward),
      fill: [[polygon([wide[0], narrow[0], narrow[1], wide[1]])]],
      walls: [line(wide[0], narrow[0]), line(wide[1], narrow[1]), line(...wide)],
      centre: t.length > 0 ? [line(seen(from, view), seen(to, view))] : [],
      fine: t.length > 0 ? [line(...narrow)] : [],
    }),
  ];
}

function between(ends: readonly [SheetPoint, SheetPoint], share: number): SheetPoint {
  return {
    u: ends[0].u + (ends[1].u - ends[0].u) * share,
    v: ends[0].v + (ends[1].v - ends[0].v) * share,
  };
}

function dist(ends: readonly [SheetPoint, SheetPoint]): number {
  return Math.hypot(ends[1].u - ends[0].u, ends[1].v - ends[0].v);
}
