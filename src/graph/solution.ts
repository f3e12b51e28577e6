import type { DuctPath, SoundCause } from '../hydraulics/sound.ts';
import type { Air, Provenance, Section, SourceKind, StallNote } from '../hydraulics/types.ts';
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
  /** Segment ids from the hood to the exit, by the larger flow wherever the run divides. */
  readonly path: readonly string[];
  /** Legs of that path that water condenses in, in the order of the air. */
  readonly condensing: readonly Condensing[];
  /** Fans in the run that the air passes on that path. */
  readonly boosters: readonly BoosterResult[];
  /** The house around the kitchen with every fan of this setting running; null where the job has no house. */
  readonly house: HouseResult | null;
  readonly sound: SoundResult;
  /** Solves until the losses where ducts join settled with the flows (1 without junctions), and their last change. */
  readonly rounds: { readonly count: number; readonly change: number };
}

export interface Condensing {
  readonly segment: string;
  /** The coldest of the duct's inside surface, °C. */
  readonly wallTemperature: number;
  /** The least insulation against it, m; null where none would do. */
  readonly insulation: number | null;
}

export interface BoosterResult {
  readonly node: string;
  readonly name: string;
  /** The fan's own name for the speed that it runs at. */
  readonly speed: string;
  readonly flow: number;
  /** Total pressure given to the air, Pa. */
  readonly pressure: number;
}

export interface HouseResult {
  /** Pa against outdoors; below zero where the house is drawn down. */
  readonly pressure: number;
  /** Into the house through its leaks, m3/s. */
  readonly leakage: number;
  /** Into the house through the make-up opening or by the make-up fan, m3/s. */
  readonly makeUp: number;
  /** Out of the house by the hoods, m3/s. */
  readonly hoods: number;
  /** Out of the house by other fans, m3/s. */
  readonly otherExhaust: number;
  readonly limit: HouseLimit | null;
  /** What brings the house back to its limit; null where it is within, or has none. */
  readonly makeUpNeeded: {
    /** Make-up air in all, m3/s. */
    readonly flow: number;
    /** Free area of a plain opening for that flow, m2. */
    readonly opening: number;
    /** What the hoods move with the house at its limit, m3/s. */
    readonly hoods: number;
  } | null;
}

/** How far a house may stand below outdoors, by the appliance in it that spills first. */
export interface HouseLimit {
  /** Pa, above zero. */
  readonly value: number;
  readonly appliance: string;
  /** False where the limit is that of a house without any appliance that can spill. */
  readonly canSpill: boolean;
  readonly row: string;
  readonly source: string;
  readonly sourceKind: SourceKind;
}

/** An estimate that ranks routes; `uncertainty` belongs to every level in it. */
export interface SoundResult {
  readonly cook: SoundAt;
  /** Beneath the cap. */
  readonly outside: SoundAt;
  /** dB either way. */
  readonly uncertainty: number;
  /** The hood's own fan: its rated level and point, null where none is rated, and the point that it is taken at. */
  readonly fan: {
    readonly rated: { readonly level: number; readonly flow: number; readonly pressure: number } | null;
    readonly flow: number;
    readonly pressure: number;
  };
  /** Everything that sounds, one by one, in the order of the air. */
  readonly sources: readonly SoundSourceResult[];
  readonly assumptions: readonly string[];
  readonly provenance: Provenance;
}

/** One source of sound with the ways that its sound takes and what arrives. */
export interface SoundSourceResult {
  readonly cause: SoundCause;
  /** The leg's or the fitting's id, of a fan in the run its node; `fan` for the hood's own. */
  readonly at: string;
  /** What makes the noise of the air: its velocity and section there, and C of a fitting; null for a fan. */
  readonly flow: { readonly velocity: number; readonly area: number; readonly c: number | null } | null;
  /** The duct between it and both ends; null where it sounds straight into the open there. */
  readonly toCook: DuctPath | null;
  readonly toOutside: DuctPath | null;
  /** dBA */
  readonly cook: number;
  readonly outside: number;
}

export interface SoundAt {
  /** dBA */
  readonly level: number;
  readonly sones: number;
  /** dBA of each cause by itself. */
  readonly byCause: ReadonlyMap<SoundCause, number>;
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
  /** Of the total pressure of the hood's fan and the fans in its run, 0-1; the house pressure takes the rest. */
  readonly share: number;
  /** Air where it enters and leaves the leg, and the coldest of the duct's inside surface, °C. */
  readonly inletTemperature: number;
  readonly outletTemperature: number;
  readonly wallTemperature: number;
  /** Whether that surface is below the dew point of the kitchen air, and the least insulation against it, m. */
  readonly condensation: { readonly risk: boolean; readonly insulation: number | null };
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
  /** The leg that is charged with it. */
  readonly segment: string;
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
  /** Of a junction: what its coefficient was looked up with, and the leg that its velocity is taken in. */
  readonly junction?: {
    readonly way: 'straight' | 'branch';
    readonly converging: boolean;
    readonly flowRatio: number;
    readonly areaRatio: number;
    readonly angle: number;
    readonly common: string;
  };
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
