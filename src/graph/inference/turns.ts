import { defaultTransitionAngle, findBend } from '../../hydraulics/catalogue.ts';
import { hydraulicDiameter } from '../../hydraulics/section.ts';
import type { Section } from '../../hydraulics/types.ts';
import type { TransitionChoice } from '../document.ts';
import type { RouteBend, RouteNode, RouteSegment, RouteTransition } from '../route.ts';

/** Below this a turn is a crooked joint, not a bend, degrees. */
const leastBend = 2;
/** A duct that folds back on itself has no tangent length; its bend is drawn and counted as this, degrees. */
const sharpest = 175;

/** Centre-line radius and tangent length of a bend, m: `r·tan(θ/2)`, 0 for a mitre. */
function bendSize(
  across: number,
  radiusRatio: number,
  angle: number,
): { readonly radius: number; readonly tangent: number } {
  const radius = radiusRatio * across;
  const half = (Math.min(angle, sharpest) * Math.PI) / 360;
  return { radius, tangent: radius * Math.tan(half) };
}

/** The bend of a turn, made in the section of the leg upstream of it. A mitre has no radius whatever is asked. */
export function bendAt(
  angle: number,
  kind: string,
  radiusRatio: number | undefined,
  section: Section,
  sides: { readonly inPlane: number; readonly acrossPlane: number } | undefined,
  upstream: string,
  downstream: string,
): RouteBend {
  const usual = findBend(kind)?.defaultRadiusRatio ?? 1;
  const ratio = usual === 0 ? 0 : (radiusRatio ?? usual);
  const across = sides?.inPlane ?? hydraulicDiameter(section);
  const size = bendSize(across, ratio, angle);
  return { angle, kind, radiusRatio: ratio, ...size, upstream, downstream, ...sides };
}

/**
 * The change of size between two sections: what the node asks for, else a cone of the stock angle. The
 * cone lies at the start of the leg downstream. Its length is that of the widest change of side.
 */
export function transitionAt(
  choice: TransitionChoice | undefined,
  from: Section,
  to: Section,
  upstream: string,
  downstream: string,
): RouteTransition {
  const kind = choice?.kind ?? 'conical';
  const angle = kind === 'abrupt' ? 180 : (choice?.angle ?? defaultTransitionAngle);
  const change = Math.max(Math.abs(widthOf(from) - widthOf(to)), Math.abs(heightOf(from) - heightOf(to)));
  const length = angle >= 180 ? 0 : change / 2 / Math.tan((angle * Math.PI) / 360);
  return { kind, angle, length, from, to, upstream, downstream };
}

function widthOf(section: Section): number {
  return section.shape === 'round' ? section.diameter : section.width;
}

function heightOf(section: Section): number {
  return section.shape === 'round' ? section.diameter : section.height;
}

/** A turn takes a bend where it deflects by more than 2°. */
export function turns(angle: number): boolean {
  return angle > leastBend;
}

/** Straight duct left in a leg by the bends and the cone at its ends, m; negative where they do not fit. */
export function roomIn(
  leg: Pick<RouteSegment, 'id' | 'length' | 'from' | 'to'>,
  nodes: ReadonlyMap<string, RouteNode>,
): number {
  return roomBetween(leg, nodes.get(leg.from), nodes.get(leg.to));
}

/** {@link roomIn} between the nodes that a leg joins. */
export function roomBetween(
  leg: Pick<RouteSegment, 'id' | 'length'>,
  from: RouteNode | undefined,
  to: RouteNode | undefined,
): number {
  const cone = from?.transition?.downstream === leg.id ? from.transition.length : 0;
  return leg.length - (from?.bend?.tangent ?? 0) - (to?.bend?.tangent ?? 0) - cone;
}
