import bendFile from '#shared/bends.json' with { type: 'json' };
import capFile from '#shared/caps.json' with { type: 'json' };
import codeFile from '#shared/codes.json' with { type: 'json' };
import ductFile from '#shared/ducts.json' with { type: 'json' };
import entryFile from '#shared/entries.json' with { type: 'json' };
import inlineFile from '#shared/inline.json' with { type: 'json' };
import junctionFile from '#shared/junctions.json' with { type: 'json' };
import limitFile from '#shared/limits.json' with { type: 'json' };
import materialFile from '#shared/materials.json' with { type: 'json' };
import transitionFile from '#shared/transitions.json' with { type: 'json' };
import { inWords } from '../words/catalogue.ts';
import type { Table } from './losses/table.ts';
import type { Section, SourceKind } from './types.ts';

/**
 * The parts catalogue: the rows of `shared/*.json` with their types. Every row says where its numbers come
 * from; SI throughout (m, m2, Pa, degrees).
 */

export interface Sourced {
  /** Publication and table, or "from memory" or "common practice" in words. */
  readonly source: string;
  readonly sourceKind: SourceKind;
  readonly notes?: readonly string[];
}

export interface CatalogueRow extends Sourced {
  readonly id: string;
  /** In trade words. */
  readonly name: string;
  /** What it is, one plain sentence. */
  readonly what: string;
  /** Shown where the part is chosen. */
  readonly caution?: string;
}

interface LossRow extends CatalogueRow {
  /** The velocity pressure that C multiplies. */
  readonly reference: string;
  /** True where C already holds the friction of the part's own length. */
  readonly includesArcFriction: boolean;
  /** What the data covers, in words. */
  readonly range: string;
}

export interface MaterialRow extends CatalogueRow {
  /** Absolute roughness, m. */
  readonly roughness: number;
  /** As the source prints it. */
  readonly printed: string;
  readonly range: string;
  /** True where the model residential code names the metal for a range hood duct. */
  readonly kitchen: boolean;
  /** Friction multiplier of flexible duct left slack: `base + slope·r·exp(-decay·D)`, r in %, D in inches. */
  readonly compression?: Sourced & {
    readonly base: number;
    readonly slope: number;
    readonly decay: number;
    readonly formula: string;
    /** Largest compression behind the formula, as a fraction. */
    readonly testedTo: number;
  };
}

export interface DuctSizeRow extends CatalogueRow {
  readonly series: string;
  readonly system: 'imperial' | 'metric';
  readonly section: Section;
}

export type BendData =
  | {
      /** Tables at one or more angles; between and beyond them the handbook's angle factor. */
      readonly kind: 'angle factor';
      readonly tables: readonly { readonly angle: number; readonly table: Table }[];
      /** The r/D that the tables hold for, where they have no such axis. */
      readonly tableRadius?: number;
      /** Row whose curve over r/D carries the table beyond its own r/D. */
      readonly shapedBy?: string;
    }
  | { readonly kind: 'by angle'; readonly table: Table; readonly reynolds: 'reynolds' }
  | { readonly kind: 'same as'; readonly row: string };

export interface BendRow extends LossRow {
  /** The duct that the row is made for. */
  readonly section: 'round' | 'rectangular' | 'any';
  /** The row that stands in on duct of the other shape. */
  readonly counterpart?: string;
  /** Centre-line radius over diameter (over the side in the plane of the turn); 0 for a mitre. */
  readonly defaultRadiusRatio: number;
  readonly loss: BendData;
}

export interface TransitionRow extends LossRow {
  readonly table?: Table;
  readonly formula?: string;
  /** Least C, for a change of shape. */
  readonly least?: number;
}

export interface CapRow extends LossRow {
  readonly faces: 'wall' | 'roof' | 'any';
  /** Free opening over duct area. */
  readonly openingRatio: number;
  /** Turning in the hood: a C at the velocity in the opening, or a bend of the catalogue. */
  readonly turn?:
    | { readonly c: number }
    | { readonly bend: string; readonly angle: number; readonly radiusRatio: number };
  readonly flap?: { readonly openingPressure: number; readonly c: number };
  readonly screen?: { readonly freeArea: number };
  /** Height of the cover above the stack over the stack's diameter. */
  readonly weatherCap?: { readonly height: number };
}

export type InlineData =
  | { readonly kind: 'flap'; readonly openingPressure: number; readonly c: number }
  | { readonly kind: 'damper'; readonly table: Table; readonly default: number }
  | { readonly kind: 'free area'; readonly table: Table; readonly default: number }
  | { readonly kind: 'plate'; readonly default: number; readonly formula: string }
  | { readonly kind: 'constant'; readonly c: number };

export interface InlineRow extends LossRow {
  readonly loss: InlineData;
}

export interface EntryRow extends LossRow {
  readonly table: Table;
}

export interface JunctionRow extends LossRow {
  readonly formula?: { readonly branch: string; readonly straight: string };
  readonly table?: Table;
}

export interface LimitRow extends CatalogueRow {
  readonly topic: 'velocity' | 'run' | 'exit' | 'make-up air' | 'depressurization';
  /** One figure, or a band from least to most, in `unit`. */
  readonly value: number | readonly [number, number];
  readonly unit: 'm/s' | 'm' | 'm3/s' | 'Pa' | 'turns' | 'diameters';
  /** As the source prints it. */
  readonly printed: string;
}

/** The residential code's duct lengths by diameter and by the airflow a fan is rated for. */
export interface DuctLengthTable extends CatalogueRow {
  /** m3/s, at `ratedPressure` (Pa). */
  readonly airflows: readonly number[];
  readonly ratedPressure: number;
  /** m */
  readonly deductionPerElbow: number;
  readonly rows: readonly {
    /** m */
    readonly diameter: number;
    readonly duct: 'flex' | 'smooth';
    /** By airflow: m, or why there is no length. */
    readonly lengths: readonly (number | 'not allowed' | 'no limit')[];
    readonly sourceKind: SourceKind;
  }[];
}

export interface SharedTable extends Sourced {
  readonly table: Table;
}

export const materials = inWords('materials', materialFile.rows as readonly MaterialRow[]);
export const ductSizes = inWords('ducts', ductFile.rows as readonly DuctSizeRow[]);
export const bends = inWords('bends', bendFile.rows as unknown as readonly BendRow[]);
export const transitions = inWords('transitions', transitionFile.rows as readonly TransitionRow[]);
export const caps = inWords('caps', capFile.rows as readonly CapRow[]);
export const inlineParts = inWords('inline', inlineFile.rows as unknown as readonly InlineRow[]);
export const entries = inWords('entries', entryFile.rows as readonly EntryRow[]);
export const junctions = inWords('junctions', junctionFile.rows as readonly JunctionRow[]);
export const limits = inWords('limits', limitFile.rows as unknown as readonly LimitRow[]);
export const ductLengthTable = codeFile.ductLength as DuctLengthTable;

/** The handbook's angle factor of bends, and the Reynolds correction of mitres. */
export const bendTables = bendFile.tables as {
  readonly angleFactor: SharedTable;
  readonly reynolds: SharedTable;
};
/** Extra loss of a weather cap by the height of its cover. */
export const capTables = capFile.tables as { readonly weatherCap: SharedTable };
/** Included angle of a stock reducer, degrees (common practice). */
export const defaultTransitionAngle: number = transitionFile.defaultAngle;

function byId<Row extends CatalogueRow>(rows: readonly Row[]): (id: string) => Row | undefined {
  const index = new Map(rows.map((row) => [row.id, row]));
  return (id) => index.get(id);
}

/** The row with this id, or undefined where the catalogue has none. */
export const findMaterial = byId(materials);
export const findBend = byId(bends);
export const findTransition = byId(transitions);
export const findCap = byId(caps);
export const findInline = byId(inlineParts);
export const findEntry = byId(entries);
export const findLimit = byId(limits);
export const findJunction = byId(junctions);

/** The row with this id; refuses an id that the catalogue does not have. */
export function need<Row>(row: Row | undefined, list: string, id: string): Row {
  if (row === undefined) throw new RangeError(`the catalogue has no "${id}" among its ${list}`);
  return row;
}
