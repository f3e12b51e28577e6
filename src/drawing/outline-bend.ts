import type { Vec3 } from '../graph/document.ts';
import type { RouteNode } from '../graph/route.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { add, cross, dot, normalize, scale } from '../graph/vector.ts';
import { type SheetLeg, stub } from './outline.ts';
import { type Drawable, drawable, line, onCircle, polygon, reversed, type Stroke } from './stroke.ts';
import {
  type Arc,
  arcOf,
  arcPoint,
  carried,
  grazing,
  piecesThrough,
  reach,
  seam,
  seen,
  wallsOf,
} from './tube.ts';
import type { View } from './view.ts';

/** Pieces of a gored bend, its two ends counted. Adjustable elbows have four: common practice. */
const pieces: Readonly<Record<string, number>> = {
  'three-piece': 3,
  'three-piece-shallow': 3,
  'four-piece': 4,
  adjustable: 4,
  'five-piece': 5,
  'five-piece-sized': 5,
  'seven-piece': 7,
};

/** Lines across a bend that is creased or corrugated, radians apart. */
const creases: Readonly<Record<string, number>> = { pleated: Math.PI / 20, flexible: Math.PI / 28 };

/** What a bend shows on a sheet: its body, or the joint line of a mitre. */
export function bendDrawables(node: RouteNode, legs: ReadonlyMap<string, SheetLeg>, view: View): Drawable[] {
  const bend = node.bend;
  const up = bend && legs.get(bend.upstream);
  const down = bend && legs.get(bend.downstream);
  if (!bend || !up || !down) return [];
  const [incoming, outgoing] = [up.segment.direction, down.segment.direction];
  const arc = arcOf(node.at, incoming, outgoing, bend.radius, bend.tangent);
  const base = {
    id: node.id,
    of: 'node',
    colourOf: bend.upstream,
    near: dot(node.at, view.toward),
  } as const;
  if (!arc) return [drawable({ ...base, kind: 'joint', ...mitre(node, up, down, view) })];
  const count = pieces[bend.kind];
  const inPlane = Math.abs(dot(incoming, view.toward)) < 1e-6 && Math.abs(dot(outgoing, view.toward)) < 1e-6;
  const body =
    inPlane && !count
      ? trueArcs(arc, up, view)
      : chain(arc, up, count ? gorePoints(arc, count) : samples(arc), view);
  if (!body) return [];
  const every = creases[bend.kind];
  const seams = count ? goreSeams(arc, up, count, view) : every ? creaseLines(arc, up, every, view) : [];
  const ends = [0, arc.angle].map((turn) => {
    const along = carried(arc.along, arc, turn);
    return seam(arcPoint(arc, turn), null, along, up.segment.section, carried(up.width, arc, turn), view);
  });
  return [
    drawable({
      ...base,
      kind: 'bend',
      ...body,
      fine: [...seams, ...ends].filter((stroke) => stroke !== null),
    }),
  ];
}

interface Body {
  readonly fill: readonly (readonly Stroke[])[];
  readonly walls: readonly Stroke[];
  readonly centre: readonly Stroke[];
}

/** A turn in the plane of the sheet: inner and outer wall as arcs of their true radius. */
function trueArcs(arc: Arc, up: SheetLeg, view: View): Body {
  const centre = seen(arc.centre, view);
  const start = seen(arc.start, view);
  const left = dot(cross(arc.along, arc.inward), view.toward) > 0;
  const from = Math.atan2(start.v - centre.v, start.u - centre.u);
  const to = from + (left ? arc.angle : -arc.angle);
  const half = reach(up.segment.section, up.width, arc.inward);
  const at = (radius: number): Stroke => ({ kind: 'arc', centre, radius, start: from, end: to });
  const outer = at(arc.radius + half);
  const inner = at(Math.max(0, arc.radius - half));
  return {
    fill: [[outer, reversed(inner)]],
    walls: arc.radius - half > 1e-4 ? [outer, inner] : [outer],
    centre: [at(arc.radius)],
  };
}

function samples(arc: Arc): Vec3[] {
  const steps = Math.max(6, Math.ceil(arc.angle / 0.065));
  return Array.from({ length: steps + 1 }, (_, i) => arcPoint(arc, (arc.angle * i) / steps));
}

/** Corners of the centre line of a gored bend: every gore is straight and touches the arc at its middle. */
function gorePoints(arc: Arc, count: number): Vec3[] {
  const gore = arc.angle / (count - 1);
  const corners = Array.from({ length: count - 1 }, (_, i) =>
    arcPoint(arc, gore * (i + 0.5), 1 / Math.cos(gore / 2)),
  );
  return [arc.start, ...corners, arc.end];
}

function goreSeams(arc: Arc, up: SheetLeg, count: number, view: View): (Stroke | null)[] {
  const gore = arc.angle / (count - 1);
  return Array.from({ length: count - 1 }, (_, i) => {
    const at = arcPoint(arc, gore * (i + 0.5), 1 / Math.cos(gore / 2));
    const [before, after] = [carried(arc.along, arc, gore * i), carried(arc.along, arc, gore * (i + 1))];
    return seam(at, before, after, up.segment.section, carried(up.width, arc, gore * i), view);
  });
}

function creaseLines(arc: Arc, up: SheetLeg, every: number, view: View): (Stroke | null)[] {
  const count = Math.max(1, Math.round(arc.angle / every));
  return Array.from({ length: count - 1 }, (_, i) => {
    const turn = (arc.angle * (i + 1)) / count;
    const along = carried(arc.along, arc, turn);
    return seam(arcPoint(arc, turn), null, along, up.segment.section, carried(up.width, arc, turn), view);
  });
}

/** A bend as a chain of straight pieces, projected; null where all of it is seen end on. */
function chain(arc: Arc, up: SheetLeg, points: readonly Vec3[], view: View): Body | null {
  const last = points.length - 1;
  const widths = points.map((_, i) => carried(up.width, arc, (arc.angle * i) / last));
  const along = piecesThrough(points, up.segment.section, widths);
  const walls = along.map((piece) => wallsOf(piece, view)).filter((w) => w !== null);
  if (walls.length === 0) return null;
  const middle = points.map((p) => seen(p, view));
  const side = (which: 'left' | 'right') =>
    outside(
      walls.flatMap((w, i) => (i === 0 ? [...w[which]] : [w[which][1]])),
      middle,
      up.half,
    );
  const [left, right] = [side('left'), side('right')];
  return {
    fill: [[polygon([...left, ...[...right].reverse()])]],
    walls: [line(...left), line(...right)],
    centre: [line(...middle)],
  };
}

/** Drops the points of a wall that fall inside the duct, where a tight projected turn folds the wall over. */
function outside(wall: readonly SheetPoint[], middle: readonly SheetPoint[], half: number): SheetPoint[] {
  return wall.filter(
    (p, i) =>
      i === 0 || i === wall.length - 1 || middle.every((m) => Math.hypot(p.u - m.u, p.v - m.v) > half * 0.97),
  );
}

/** The joint of a mitred turn, its stub where the size changes there too, and its vanes as seen in the plane of the sheet. */
function mitre(
  node: RouteNode,
  up: SheetLeg,
  down: SheetLeg,
  view: View,
): Partial<Body> & { readonly fine: Stroke[] } {
  const [incoming, outgoing] = [up.segment.direction, down.segment.direction];
  const { section } = up.segment;
  const joint =
    seam(node.at, incoming, outgoing, section, down.width, view) ??
    seam(node.at, outgoing, incoming, section, up.width, view);
  const length = stub(node, down.segment.id);
  const end = add(node.at, scale(outgoing, length));
  const width = down.width;
  const walls =
    length > 0
      ? wallsOf({ from: node.at, to: end, before: incoming, after: null, section, width }, view)
      : null;
  const turned = node.bend ? Math.sin((node.bend.angle * Math.PI) / 180) : 0;
  const level = Math.abs(dot(cross(incoming, outgoing), view.toward)) > 0.99 * turned;
  const inside = node.bend?.kind.includes('vanes') && level ? vanes(node, up, incoming, outgoing, view) : [];
  if (!walls) return { walls: joint ? [joint] : [], fine: inside };
  const { left, right } = walls;
  return {
    fill: [[polygon([left[0], left[1], right[1], right[0]])]],
    walls: [line(...left), line(...right), ...(joint ? [joint] : [])],
    fine: inside,
  };
}

function vanes(node: RouteNode, up: SheetLeg, incoming: Vec3, outgoing: Vec3, view: View): Stroke[] {
  const normal = grazing(incoming, view);
  if (!normal) return [];
  const inward = normalize(add(outgoing, [-incoming[0], -incoming[1], -incoming[2]]));
  const tilt = Math.max(0.2, Math.abs(dot(inward, normal)));
  const radius = up.half * 0.55;
  const half = ((node.bend?.angle ?? 0) * Math.PI) / 360;
  return [-0.5, 0, 0.5].flatMap((share) => {
    const spot: Vec3 = [0, 1, 2].map(
      (k) => (node.at[k] ?? 0) + ((inward[k] ?? 0) * share * up.half) / tilt,
    ) as Vec3;
    const arc = arcOf(spot, incoming, outgoing, radius, radius * Math.tan(half));
    if (!arc) return [];
    const c = seen(arc.centre, view);
    const s = seen(arc.start, view);
    const from = Math.atan2(s.v - c.v, s.u - c.u);
    const turn = dot(cross(incoming, outgoing), view.toward) > 0 ? arc.angle : -arc.angle;
    return [line(...[0, 0.25, 0.5, 0.75, 1].map((k) => onCircle(c, radius, from + turn * k)))];
  });
}
