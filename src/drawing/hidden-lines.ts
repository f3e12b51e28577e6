import RBush from 'rbush';
import type { SheetPoint } from '../graph/sheet.ts';
import { type Drawable, onCircle, pointsOf, type Stroke } from './stroke.ts';
import { type Bounds, boundsOf } from './viewport.ts';

/** A filled outline that hides what lies behind it, as a polygon, m. */
interface Cover {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  /** What is drawn before this place is hidden. */
  readonly order: number;
  readonly corners: readonly SheetPoint[];
}

/** How deep inside a cover a line must lie to be hidden, m: lines along its rim stay. */
const rim = 1e-4;
/** Pieces shorter than this are left out, m. */
const shortest = 1e-6;

/** Cuts away what nearer drawables hide; lines and arcs stay lines and arcs. */
export interface HiddenLines {
  /** What is left to see of strokes that are drawn at a place of the order. */
  visible(strokes: readonly Stroke[], order: number): readonly Stroke[];
}

/**
 * Hidden-line removal among drawables that come from the farthest to the nearest: the fill of each hides the
 * strokes of those before it. So lines can be sorted by what they mean and still look as if painted in order.
 */
export function hiddenLines(drawables: readonly Drawable[]): HiddenLines {
  const covers = drawables.flatMap((item, order) => item.fill.flatMap((outline) => coverOf(outline, order)));
  const tree = new RBush<Cover>().load(covers);
  return {
    visible: (strokes, order) =>
      strokes.flatMap((stroke) => {
        const bounds = boundsOf(pointsOf(stroke), rim);
        if (!bounds) return [];
        const over = tree.search(boxOf(bounds)).filter((cover) => cover.order > order);
        return over.length === 0 ? [stroke] : singles(stroke).flatMap((one) => seenOf(one, over));
      }),
  };
}

function coverOf(outline: readonly Stroke[], order: number): Cover[] {
  const corners = outline.flatMap(finePoints);
  const bounds = boundsOf(corners);
  return bounds && corners.length > 2 ? [{ ...boxOf(bounds), order, corners }] : [];
}

function boxOf({ minU, minV, maxU, maxV }: Bounds) {
  return { minX: minU, minY: minV, maxX: maxU, maxY: maxV };
}

/** Points so near together that an arc between them leaves its chord by less than a tenth of the rim. */
function finePoints(stroke: Stroke): readonly SheetPoint[] {
  if (stroke.kind === 'line') return stroke.points;
  const { centre, radius, start, end } = stroke;
  const step = Math.max(0.01, 2 * Math.acos(Math.max(0, 1 - rim / 10 / Math.max(radius, rim))));
  const count = Math.max(2, Math.ceil(Math.abs(end - start) / step));
  return Array.from({ length: count + 1 }, (_, i) =>
    onCircle(centre, radius, start + ((end - start) * i) / count),
  );
}

type Single = { readonly from: SheetPoint; readonly to: SheetPoint } | Extract<Stroke, { kind: 'arc' }>;

function singles(stroke: Stroke): readonly Single[] {
  if (stroke.kind === 'arc') return [stroke];
  const points = stroke.closed ? [...stroke.points, ...stroke.points.slice(0, 1)] : stroke.points;
  return points.slice(1).flatMap((to, i) => {
    const from = points[i];
    return from ? [{ from, to }] : [];
  });
}

function isArc(single: Single): single is Extract<Stroke, { kind: 'arc' }> {
  return 'kind' in single;
}

/** The pieces of one line or arc that no cover hides, neighbours joined. */
function seenOf(single: Single, covers: readonly Cover[]): Stroke[] {
  const cuts = [0, 1];
  for (const { corners } of covers)
    for (const [i, a] of corners.entries()) {
      const b = corners[(i + 1) % corners.length];
      if (b) cuts.push(...(isArc(single) ? cutsOfArc(single, a, b) : cutsOfLine(single, a, b)));
    }
  cuts.sort((a, b) => a - b);
  const kept: [number, number][] = [];
  for (const [i, to] of cuts.entries()) {
    const from = cuts[i - 1];
    if (from === undefined || to - from < 1e-9) continue;
    const middle = placeOn(single, (from + to) / 2);
    if (covers.some((cover) => hides(cover, middle))) continue;
    const last = kept[kept.length - 1];
    if (last && from - last[1] < 1e-9) last[1] = to;
    else kept.push([from, to]);
  }
  return kept.flatMap(([from, to]) => piece(single, from, to));
}

function placeOn(single: Single, share: number): SheetPoint {
  if (isArc(single))
    return onCircle(single.centre, single.radius, single.start + (single.end - single.start) * share);
  const { from, to } = single;
  return { u: from.u + (to.u - from.u) * share, v: from.v + (to.v - from.v) * share };
}

function piece(single: Single, from: number, to: number): Stroke[] {
  if (isArc(single)) {
    const turn = single.end - single.start;
    if (Math.abs(turn) * single.radius * (to - from) < shortest) return [];
    return [{ ...single, start: single.start + turn * from, end: single.start + turn * to }];
  }
  const [a, b] = [placeOn(single, from), placeOn(single, to)];
  return Math.hypot(b.u - a.u, b.v - a.v) < shortest ? [] : [{ kind: 'line', points: [a, b] }];
}

/** Where a line crosses a side, as shares of the line. */
function cutsOfLine({ from, to }: Exclude<Single, { kind: 'arc' }>, a: SheetPoint, b: SheetPoint): number[] {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const [eu, ev] = [b.u - a.u, b.v - a.v];
  const turn = du * ev - dv * eu;
  if (Math.abs(turn) < 1e-15) return [];
  const t = ((a.u - from.u) * ev - (a.v - from.v) * eu) / turn;
  const s = ((a.u - from.u) * dv - (a.v - from.v) * du) / turn;
  return t > 0 && t < 1 && s >= 0 && s <= 1 ? [t] : [];
}

/** Where an arc crosses a side, as shares of its turn. */
function cutsOfArc(arc: Extract<Stroke, { kind: 'arc' }>, a: SheetPoint, b: SheetPoint): number[] {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const [fu, fv] = [a.u - arc.centre.u, a.v - arc.centre.v];
  const [qa, qb, qc] = [
    du * du + dv * dv,
    2 * (fu * du + fv * dv),
    fu * fu + fv * fv - arc.radius * arc.radius,
  ];
  const root = qb * qb - 4 * qa * qc;
  if (qa < 1e-18 || root < 0) return [];
  return [-1, 1].flatMap((sign) => {
    const s = (-qb + sign * Math.sqrt(root)) / (2 * qa);
    if (s < 0 || s > 1) return [];
    const angle = Math.atan2(fv + dv * s, fu + du * s);
    const turn = arc.end - arc.start;
    const whole = 2 * Math.PI;
    const past = turn > 0 ? angle - arc.start : arc.start - angle;
    const share = (((past % whole) + whole) % whole) / Math.abs(turn);
    return share > 0 && share < 1 ? [share] : [];
  });
}

/** True for a point inside a cover and off its rim. */
function hides({ minX, minY, maxX, maxY, corners }: Cover, { u, v }: SheetPoint): boolean {
  if (u < minX || u > maxX || v < minY || v > maxY) return false;
  let inside = false;
  for (const [i, a] of corners.entries()) {
    const b = corners[(i + 1) % corners.length];
    if (!b) continue;
    if (a.v > v !== b.v > v && u < a.u + ((v - a.v) / (b.v - a.v)) * (b.u - a.u)) inside = !inside;
    if (offSide(u, v, a, b) < rim) return false;
  }
  return inside;
}

function offSide(u: number, v: number, a: SheetPoint, b: SheetPoint): number {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const long = du * du + dv * dv;
  const t = long > 0 ? Math.min(1, Math.max(0, ((u - a.u) * du + (v - a.v) * dv) / long)) : 0;
  return Math.hypot(u - a.u - t * du, v - a.v - t * dv);
}
