/** Moist air at one state. SI: °C, Pa, 0-1, kg/m3, Pa·s. */
export interface Air {
  readonly temperature: number;
  readonly pressure: number;
  readonly humidity: number;
  readonly density: number;
  readonly viscosity: number;
}

/** A duct's inside section, metres. An oval is a flat oval: two half circles joined by straights. */
export type Section =
  | { readonly shape: 'round'; readonly diameter: number }
  | { readonly shape: 'rectangular'; readonly width: number; readonly height: number }
  | { readonly shape: 'oval'; readonly width: number; readonly height: number };

/**
 * One loss in series along an edge, as plain data. Every kind gives a pressure drop that rises with
 * the flow and has the flow's sign, which is what makes the network's solve convex.
 */
export type LossPart =
  | {
      readonly kind: 'duct';
      /** Length charged with friction, m. */
      readonly length: number;
      readonly hydraulicDiameter: number;
      readonly area: number;
      /** Absolute roughness, m. */
      readonly roughness: number;
      /** Multiplies the friction: the slack of flexible duct; 1 otherwise. */
      readonly multiplier: number;
    }
  | { readonly kind: 'local'; readonly c: number; readonly area: number }
  | {
      /** A coefficient with a handbook's Reynolds correction, interpolated and clamped. */
      readonly kind: 'reynolds-local';
      readonly c: number;
      readonly area: number;
      readonly hydraulicDiameter: number;
      readonly reynolds: readonly number[];
      readonly factor: readonly number[];
    }
  | {
      /** A sprung or gravity flap: holds back `openingPressure`, and obstructs less as it opens. */
      readonly kind: 'flap';
      readonly openingPressure: number;
      readonly c: number;
      readonly area: number;
    }
  /** `Q = coefficient · dp^exponent`: the leakage of a house. */
  | { readonly kind: 'power'; readonly coefficient: number; readonly exponent: number }
  /** A part known by one measured loss at one flow, taken as quadratic. */
  | { readonly kind: 'measured'; readonly loss: number; readonly atFlow: number; readonly density: number };

/** Pressure against flow, as a standard airflow test or a maker's sheet gives it. */
export interface FanCurve {
  /** [m3/s, Pa], rising in flow, at least two. */
  readonly points: readonly (readonly [number, number])[];
  /** `static`: total pressure at the outlet minus the velocity pressure in the collar. */
  readonly basis: 'static' | 'total';
  /** Area that the velocity pressure of a static basis refers to, m2. */
  readonly collarArea: number;
  /** Air density that the curve was rated at, kg/m3. */
  readonly density: number;
  /** `power` is `P0 - b Q^c` exactly through three falling points, the first at zero flow. */
  readonly interpolation?: 'monotone-cubic' | 'linear' | 'power';
}

export interface NetworkNode {
  readonly id: string;
  /** A fixed total pressure, Pa above outdoors; absent where the solve finds it. */
  readonly pressure?: number;
  /** A flow forced into a node whose pressure is not given, m3/s; negative where it is drawn out. 0 where absent. */
  readonly inflow?: number;
}

export interface NetworkEdge {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly parts: readonly LossPart[];
  readonly fan?: FanCurve;
  /** A pressure given to the air along the edge whatever its flow, Pa; negative where it is taken. 0 where absent. */
  readonly gain?: number;
}

/** Edges join nodes; at least one node of every connected piece has a fixed pressure. */
export interface Network {
  readonly nodes: readonly NetworkNode[];
  readonly edges: readonly NetworkEdge[];
  readonly air: Air;
}

export interface StallNote {
  readonly edge: string;
  /** Flows at which the fan's curve also meets the system, m3/s. */
  readonly otherFlows: readonly number[];
  readonly message: string;
}

/** A solve is a result in both cases: numbers with their residual, or the reason there are none. */
export type NetworkSolution =
  | {
      readonly converged: true;
      /** m3/s by edge id, positive from `from` to `to`. */
      readonly flows: ReadonlyMap<string, number>;
      /** Total pressure in Pa by node id. */
      readonly pressures: ReadonlyMap<string, number>;
      readonly iterations: number;
      /** Largest unbalanced pressure over any edge, Pa. */
      readonly residual: number;
      readonly stall: readonly StallNote[];
    }
  | {
      readonly converged: false;
      readonly reason: string;
      readonly iterations: number;
      readonly residual: number;
    };

/** Where a number came from, carried beside it wherever it goes. */
export interface Provenance {
  /** Catalogue row id, e.g. `bends/smooth`. */
  readonly row: string;
  readonly source: string;
  readonly sourceKind: SourceKind;
  /** Sentences: "interpolated between r/D 1 and 1.5", "clamped to the table's end at r/D 2.5". */
  readonly notes: readonly string[];
}

export type SourceKind = 'found' | 'memory' | 'common practice' | 'assumption';

/** What a fitting costs: parts for the solve, and where they came from. */
export interface LocalLoss {
  readonly parts: readonly LossPart[];
  /** Loss coefficient at full turbulence, referred to `section`. */
  readonly c: number;
  readonly section: Section;
  /** True where the table's C already holds the friction of the bend's arc. */
  readonly includesArcFriction: boolean;
  readonly label: string;
  readonly provenance: Provenance;
  /** For a fitting built up from several, labels of `parts` in order. */
  readonly buildUp?: readonly string[];
}
