import type { Route } from '../graph/route.ts';
import { project, type SheetId, type SheetPoint } from '../graph/sheet.ts';
import { normalize, subtract } from '../graph/vector.ts';
import type { Selection } from './board.ts';
import { single } from './selection.ts';

/** Where a bend is taken hold of to change its radius. */
export interface BendGrip {
  readonly node: string;
  readonly at: SheetPoint;
  /** From the corner to the centre of the arc, as a unit vector of the sheet. */
  readonly inward: SheetPoint;
  /** Metres that the middle of the arc goes inward on the sheet for each metre of radius. */
  readonly pace: number;
  readonly radius: number;
  /** m of radius for a ratio of 1: the diameter, or the side in the plane of the turn. */
  readonly side: number;
}

/** Pixels between a node's own handle and the grip of a tight bend. */
const CLEAR = 15;
/** A slow arc would make the radius jump under the hand: it follows at no less than this. */
const SLOWEST = 0.1;
/** A turn seen from its side, as the part of its plane that the sheet shows, has no grip. */
const FLATTEST = 0.25;

/** The grip of the one bend that is selected, on the middle of its arc; `null` for a mitre or a turn seen from its side. */
export function bendGrip(route: Route, selection: Selection, sheet: SheetId, scale: number): BendGrip | null {
  const item = single(selection);
  const node = item?.kind === 'node' ? route.nodes.get(item.id) : undefined;
  const bend = node?.bend;
  const [up, down] = [bend?.upstream, bend?.downstream].map((id) => id && route.segments.get(id));
  if (!node || !bend || !up || !down || bend.radius <= 0 || bend.radiusRatio <= 0) return null;
  const flat = project(normalize(subtract(down.direction, up.direction)), sheet);
  const shown = Math.hypot(flat.u, flat.v);
  if (shown < FLATTEST) return null;
  const inward = { u: flat.u / shown, v: flat.v / shown };
  const half = (Math.min(bend.angle, 170) * Math.PI) / 360;
  const reach = shown * (1 / Math.cos(half) - 1);
  const off = Math.max(bend.radius * reach, CLEAR / scale);
  const corner = project(node.at, sheet);
  return {
    node: node.id,
    at: { u: corner.u + inward.u * off, v: corner.v + inward.v * off },
    inward,
    pace: Math.max(reach, SLOWEST),
    radius: bend.radius,
    side: bend.radius / bend.radiusRatio,
  };
}
