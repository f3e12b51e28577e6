import { hydraulicDiameter } from '../hydraulics/section.ts';
import type { Route, RouteBend } from './route.ts';

/** Largest ratio of radius to diameter that a document holds. */
const largestRatio = 10;
/** Below this the inner side of a bend would fold over itself. */
const leastRatio = 0.5;

/** The side of a duct that a bend's ratio counts in, m: its diameter, or the side in the plane of the turn. */
function sideOf(route: Route, bend: RouteBend): number | null {
  const section = route.segments.get(bend.upstream)?.section;
  return bend.inPlane ?? (section ? hydraulicDiameter(section) : null);
}

/**
 * Largest centre-line radius, m, of the bend at a node for which both its legs are long enough, their
 * other bends and cones as they are; at most ten diameters. `null` where the node has no bend.
 */
export function largestRadius(route: Route, nodeId: string): number | null {
  const bend = route.nodes.get(nodeId)?.bend;
  const side = bend && sideOf(route, bend);
  if (!bend || !side) return null;
  const free = [bend.upstream, bend.downstream].map((id) => {
    const leg = route.segments.get(id);
    if (!leg) return 0;
    const start = route.nodes.get(leg.from);
    const cone = start?.transition?.downstream === id ? start.transition.length : 0;
    const far = leg.from === nodeId ? leg.to : leg.from;
    return Math.max(0, leg.length - cone - (route.nodes.get(far)?.bend?.tangent ?? 0));
  });
  const half = (Math.min(bend.angle, 175) * Math.PI) / 360;
  return Math.min(Math.min(...free) / Math.tan(half), largestRatio * side);
}

/**
 * The ratio of radius to diameter for a bend of `radius` metres at a node, held to what its legs have
 * room for and to no less than half a diameter, below which a bend's inner side folds over. `null`
 * where the node has no bend, or one without a radius (a mitre).
 */
export function ratioForRadius(
  route: Route,
  nodeId: string,
  radius: number,
): { readonly radiusRatio: number; readonly limited: boolean } | null {
  const bend = route.nodes.get(nodeId)?.bend;
  const side = bend && sideOf(route, bend);
  const largest = largestRadius(route, nodeId);
  if (!bend || !side || largest === null || bend.radius === 0 || !(radius > 0)) return null;
  const radiusRatio = Math.max(leastRatio, Math.min(radius, largest) / side);
  return { radiusRatio, limited: Math.abs(radiusRatio * side - radius) > 1e-9 };
}
