import type { Air, Provenance, Section, StallNote } from '../hydraulics/types.ts';
import type { Finding, Route } from './route.ts';

/** Everything the air does in one scheme, at every speed. */
export interface SchemeSolution {
  readonly schemeId: string;
  readonly route: Route;
  readonly air: Air;
  /** One entry a hood and speed, in the hoods' order, lowest speed first as the job lists them. */
  readonly speeds: readonly SpeedResult[];
  /** Route findings and those that only the solve can tell. */
  readonly findings: readonly Finding[];
}

export interface SpeedResult {
  readonly hood: string;
  readonly hoodName: string;
  /** Index into the hood's speeds. */
  readonly speed: number;
  readonly name: string;
  /** What the hood is rated to move at this speed, m3/s. */
  readonly ratedFlow: number;
  readonly outcome: Solved | Unsolved;
}

export interface Unsolved {
  readonly solved: false;
  /** A sentence: why there is no number. */
  readonly reason: string;
}

export interface Solved {
  readonly solved: true;
  /** Delivered by this hood, m3/s. */
  readonly flow: number;
  /** Produced by this hood's fan, Pa. */
  readonly totalPressure: number;
  readonly staticPressure: number;
  readonly fastest: { readonly segment: string; readonly velocity: number } | null;
  readonly segments: ReadonlyMap<string, SegmentResult>;
  readonly fittings: readonly FittingResult[];
  /** Along the hood's path to the exit: total and static pressure against distance. */
  readonly profile: readonly ProfilePoint[];
  readonly iterations: number;
  /** Pa */
  readonly residual: number;
  readonly stall: readonly StallNote[];
}

export interface SegmentResult {
  readonly id: string;
  readonly flow: number;
  readonly velocity: number;
  readonly velocityPressure: number;
  /** Length charged with friction: the straight plus its share of the bends' arcs, m. */
  readonly frictionLength: number;
  readonly frictionLoss: number;
  /** Pa/m */
  readonly lossPerMetre: number;
  readonly reynolds: number;
  readonly frictionFactor: number;
  /** Of the fan's total pressure, 0-1. */
  readonly share: number;
  readonly provenance: Provenance;
}

export type FittingKind =
  | 'bend'
  | 'transition'
  | 'junction'
  | 'cap'
  | 'exit'
  | 'backdraught-damper'
  | 'damper'
  | 'screen'
  | 'silencer'
  | 'filter'
  | 'user';

export interface FittingResult {
  /** `${at}/${kind}` and a number where several are alike. */
  readonly id: string;
  /** Node id, or the segment's id for a part in line. */
  readonly at: string;
  readonly kind: FittingKind;
  /** Trade words: "90° three-piece bend, r/D 1.5". */
  readonly label: string;
  /** Loss coefficient at the flow that is there, referred to `section`: a mitre's falls with Reynolds number, a flap's with flow. */
  readonly c: number;
  readonly section: Section;
  readonly velocity: number;
  readonly flow: number;
  /** Pa */
  readonly loss: number;
  /** `C D / f` of the adjoining duct at the flow that is there, m. */
  readonly equivalentLength: number;
  readonly share: number;
  readonly provenance: Provenance;
  /** A cap is built up: contraction, screen, flap, exit; each with its own loss in Pa. */
  readonly buildUp?: readonly { readonly label: string; readonly c: number; readonly loss: number }[];
}

export interface ProfilePoint {
  /** m along the centre line from the hood. */
  readonly distance: number;
  readonly total: number;
  readonly static: number;
  readonly at: string;
}
