import type { Section } from '../hydraulics/types.ts';
import type { Vec3 } from './document.ts';

/** What the drawing means: everything here is inferred from a scheme and never stored. */
export interface Route {
  readonly schemeId: string;
  readonly nodes: ReadonlyMap<string, RouteNode>;
  readonly segments: ReadonlyMap<string, RouteSegment>;
  /** Segment ids in flow order, from the hoods to the exits. */
  readonly order: readonly string[];
  readonly findings: readonly Finding[];
}

export type RouteNodeKind =
  | 'hood'
  | 'bend'
  | 'transition'
  | 'bend and transition'
  | 'joint'
  | 'junction'
  | 'cap'
  /** One segment and no cap: the duct ends open here. */
  | 'open end'
  /** No segment at all. */
  | 'loose';

export interface RouteNode {
  readonly id: string;
  readonly at: Vec3;
  readonly kind: RouteNodeKind;
  /** Segments that meet here. */
  readonly segments: readonly string[];
  readonly bend?: RouteBend;
  readonly transition?: RouteTransition;
  readonly junction?: RouteJunction;
}

export interface RouteBend {
  /** Deflection from straight on, degrees in space: 0 straight, 90 a square turn. */
  readonly angle: number;
  readonly kind: string;
  readonly radiusRatio: number;
  /** Centre-line radius, m; 0 for a mitre. */
  readonly radius: number;
  /** Length of each leg taken by the arc, `r·tan(θ/2)`, m. */
  readonly tangent: number;
  /** Segments in flow order. */
  readonly upstream: string;
  readonly downstream: string;
  /** For rectangular duct: the side in the plane of the turn and the side across it, m. */
  readonly inPlane?: number;
  readonly acrossPlane?: number;
}

export interface RouteTransition {
  readonly kind: 'abrupt' | 'conical';
  /** Full included angle, degrees; 180 for an abrupt change. */
  readonly angle: number;
  /** Length of the cone, m, at the start of the leg downstream; 0 for an abrupt change. */
  readonly length: number;
  readonly from: Section;
  readonly to: Section;
  /** Segment id; at a hood, where the change is from its collar, the hood's node id. */
  readonly upstream: string;
  readonly downstream: string;
}

export interface RouteJunction {
  readonly straight: string | null;
  readonly branches: readonly string[];
  /** Leg that carries the whole flow. */
  readonly common: string;
  readonly converging: boolean;
}

export interface RouteSegment {
  readonly id: string;
  /** Node ids in flow direction; `reversed` says that the document stores them the other way. */
  readonly from: string;
  readonly to: string;
  readonly reversed: boolean;
  /** Node to node, m. */
  readonly length: number;
  /** What is left of straight duct between the bends' tangents and the taper of a change of size, m. */
  readonly straight: number;
  /** Unit vector along the flow. */
  readonly direction: Vec3;
  readonly section: Section;
  readonly material: string;
  readonly stretch: number;
  readonly insulation: number;
  /** True for a leg within 5° of vertical. */
  readonly vertical: boolean;
}

export type Severity = 'danger' | 'error' | 'warning' | 'note';

/** Something that the user should know, tied to the place on the sheet that it concerns. */
export interface Finding {
  /** Stable for the same rule at the same place: `${rule}:${ids}`. */
  readonly id: string;
  readonly rule: string;
  readonly severity: Severity;
  /** One sentence: what is wrong and where. */
  readonly message: string;
  /** One sentence: what to do. */
  readonly remedy?: string;
  readonly source?: string;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  /** Blocks of the room that it concerns. */
  readonly blocks?: readonly string[];
}
