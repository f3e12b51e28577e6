import RBush from 'rbush';
import { dot, lerp } from '../graph/vector.ts';
import type { SheetLeg } from './outline.ts';
import type { Drawable } from './stroke.ts';
import type { View } from './view.ts';

/** Drawings with more legs keep the order of their middles: at their zoom no crossing can be told. */
const mostLegs = 600;

interface Boxed {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly leg: SheetLeg;
}

/**
 * Puts drawables that come by the nearness of their middles into an order that also holds where legs
 * cross in the picture: of two that do, the one that passes nearer to the viewer there comes later.
 */
export function inCrossingOrder(
  drawables: readonly Drawable[],
  legs: readonly SheetLeg[],
  view: View,
): readonly Drawable[] {
  if (legs.length > mostLegs) return drawables;
  const before = crossings(legs, view);
  if (before.size === 0) return drawables;
  const shapes = new Map<string, Drawable>();
  for (const item of drawables) if (item.kind === 'leg') shapes.set(item.id, item);
  const ordered: Drawable[] = [];
  const seen = new Set<Drawable>();
  const draw = (item: Drawable) => {
    if (seen.has(item)) return;
    seen.add(item);
    for (const id of item.kind === 'leg' ? (before.get(item.id) ?? []) : []) {
      const other = shapes.get(id);
      if (other) draw(other);
    }
    ordered.push(item);
  };
  for (const item of drawables) draw(item);
  return ordered;
}

/** For each leg, those that it passes in front of. */
function crossings(legs: readonly SheetLeg[], view: View): Map<string, string[]> {
  const boxes = legs.map((leg): Boxed => {
    const { straightFrom: a, straightTo: b, half } = leg;
    return {
      minX: Math.min(a.u, b.u) - half,
      minY: Math.min(a.v, b.v) - half,
      maxX: Math.max(a.u, b.u) + half,
      maxY: Math.max(a.v, b.v) + half,
      leg,
    };
  });
  const tree = new RBush<Boxed>().load(boxes);
  const before = new Map<string, string[]>();
  for (const box of boxes)
    for (const { leg: other } of tree.search(box)) {
      const { leg } = box;
      if (leg.segment.id >= other.segment.id) continue;
      const at = crossing(leg, other);
      if (!at) continue;
      const depth = (one: SheetLeg, t: number) => dot(lerp(one.start, one.end, t), view.toward);
      const apart = depth(leg, at.t) - depth(other, at.s);
      if (Math.abs(apart) < 1e-6) continue;
      const [front, behind] = apart > 0 ? [leg, other] : [other, leg];
      before.set(front.segment.id, [...(before.get(front.segment.id) ?? []), behind.segment.id]);
    }
  return before;
}

/** Where the centre lines of two legs cross in the picture, as shares of their straight lengths; null where they do not. */
function crossing(a: SheetLeg, b: SheetLeg): { t: number; s: number } | null {
  const d = { u: a.straightTo.u - a.straightFrom.u, v: a.straightTo.v - a.straightFrom.v };
  const e = { u: b.straightTo.u - b.straightFrom.u, v: b.straightTo.v - b.straightFrom.v };
  const turn = d.u * e.v - d.v * e.u;
  if (Math.abs(turn) < 1e-9) return null;
  const w = { u: b.straightFrom.u - a.straightFrom.u, v: b.straightFrom.v - a.straightFrom.v };
  const t = (w.u * e.v - w.v * e.u) / turn;
  const s = (w.u * d.v - w.v * d.u) / turn;
  return t >= 0 && t <= 1 && s >= 0 && s <= 1 ? { t, s } : null;
}
