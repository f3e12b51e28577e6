import type { Vec3 } from '../document.ts';
import type { RouteJunction, RouteSegment } from '../route.ts';
import { deflection } from './orientation.ts';

/** A leg goes straight through a junction when it deflects by no more than this, degrees. */
const straightWithin = 30;

type Leg = Pick<RouteSegment, 'id' | 'from' | 'to' | 'direction'>;

/**
 * Which leg of a junction carries the whole flow, which goes straight through and which branch off.
 * It converges where more legs arrive than leave.
 */
export function junctionAt(node: string, legs: readonly Leg[]): RouteJunction {
  const arriving = legs.filter((leg) => leg.to === node);
  const leaving = legs.filter((leg) => leg.from === node);
  const converging = arriving.length >= leaving.length;
  const [common] = (converging ? leaving : arriving).concat(legs) as [Leg, ...Leg[]];
  const others = legs
    .filter((leg) => leg !== common)
    .map((leg) => ({ id: leg.id, angle: 180 - deflection(outward(common, node), outward(leg, node)) }))
    .sort((a, b) => a.angle - b.angle);
  const [first] = others;
  const straight = first && first.angle <= straightWithin ? first.id : null;
  return {
    straight,
    branches: others.filter((leg) => leg.id !== straight).map((leg) => leg.id),
    common: common.id,
    converging,
  };
}

/** Direction of a leg seen from the node outwards. */
function outward(leg: Leg, node: string): Vec3 {
  const [x, y, z] = leg.direction;
  return leg.from === node ? [x, y, z] : [-x, -y, -z];
}
