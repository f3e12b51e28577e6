import type { Provenance, SourceKind } from '../../hydraulics/types.ts';
import type { QuantityKind } from '../../units/index.ts';

/** A figure that the program shows, and where: the speed's index and the node, segment or fitting. */
export interface FigureRef {
  readonly figure: Figure;
  /** Index into the solution's speeds. */
  readonly speed: number;
  /** Segment or fitting id; of a fan in the run its node, of a sound its cause. */
  readonly at?: string;
}

export type Figure =
  | 'density'
  | 'viscosity'
  | 'flow'
  | 'rated flow'
  | 'share of rated'
  | 'total pressure'
  | 'static pressure'
  | 'velocity'
  | 'velocity pressure'
  | 'Reynolds number'
  | 'friction factor'
  | 'friction length'
  | 'friction loss'
  | 'loss per metre'
  | 'fitting loss'
  | 'coefficient'
  | 'equivalent length'
  | 'share of pressure'
  | 'booster pressure'
  | 'house pressure'
  | 'house leakage'
  | 'make-up air'
  | 'sound at the cook'
  | 'sound outside'
  | 'source at the cook'
  | 'source outside'
  | 'heat transfer'
  | 'inlet temperature'
  | 'outlet temperature'
  | 'wall temperature'
  | 'dew point'
  | 'required airflow';

/** How a figure came about: the formula, what went into it, and the sources. SI throughout. */
export interface Derivation {
  readonly ref: FigureRef;
  /** "Friction loss, the leg from the hood to turn 1". */
  readonly title: string;
  readonly symbol: string;
  readonly value: number;
  /** SI unit as printed; empty for a ratio. */
  readonly unit: string;
  /** How to show the value in people's units. */
  readonly kind?: QuantityKind;
  /** In the symbols of `inputs`. */
  readonly formula: string;
  readonly inputs: readonly DerivationInput[];
  readonly sources: readonly Provenance[];
  readonly notes: readonly string[];
}

export interface DerivationInput {
  readonly symbol: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly kind?: QuantityKind;
  /** The figure that this input is, where it has a derivation of its own. */
  readonly ref?: FigureRef;
}

/** A formula that is the field's common property, with where it is printed. */
export function formulaSource(
  row: string,
  source: string,
  sourceKind: SourceKind = 'common practice',
): Provenance {
  return { row: `formulas/${row}`, source, sourceKind, notes: [] };
}
