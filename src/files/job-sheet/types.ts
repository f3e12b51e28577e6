import type { FormulaRun } from '../../graph/derive/formula.ts';
import type { Severity } from '../../graph/route.ts';
import type { SheetId } from '../../graph/sheet.ts';
import type { System } from '../../units/index.ts';

/**
 * A job sheet as plain data: what it says and in which order, nothing of how it looks. Every text is finished;
 * a number in a table stands beside it in SI, so that a test or another program can compare it.
 */
export interface JobSheet {
  readonly title: TitleBlock;
  readonly sections: readonly SheetSection[];
}

export interface TitleBlock {
  /** "Job sheet". */
  readonly heading: string;
  readonly job: string;
  readonly schemeId: string;
  readonly scheme: string;
  readonly units: System;
  /** As people of the locale write it. */
  readonly date: string;
  /** ISO 8601, UTC. */
  readonly made: string;
  readonly program: string;
  readonly version: string;
  readonly fingerprint: Fingerprint;
  /** All of it as labelled lines, in the order of print. */
  readonly facts: readonly Fact[];
  /** One line for the foot of every page. */
  readonly footer: string;
}

/** SHA-256 of the job's file as this program writes it. */
export interface Fingerprint {
  /** 64 hexadecimal digits. */
  readonly full: string;
  /** The first sixteen in groups of four. */
  readonly short: string;
}

export interface SheetSection {
  readonly id: SectionId;
  readonly title: string;
  /** Starts a page of its own. */
  readonly newPage: boolean;
  readonly blocks: readonly SheetBlock[];
}

export type SectionId =
  | 'summary'
  | 'results'
  | 'drawings'
  | 'route'
  | 'charts'
  | 'findings'
  | 'parts'
  | 'signatures'
  | 'appendix';

export type SheetBlock =
  | TextBlock
  | HeadingBlock
  | FactsBlock
  | CautionsBlock
  | FindingsBlock
  | SheetTable
  | DrawingBlock
  | ChartBlock
  | FormulaBlock
  | SignaturesBlock;

export interface TextBlock {
  readonly kind: 'text';
  readonly text: string;
  /** Small print. */
  readonly quiet?: boolean;
}

/** A heading below the section's. */
export interface HeadingBlock {
  readonly kind: 'heading';
  readonly text: string;
}

export interface FactsBlock {
  readonly kind: 'facts';
  readonly facts: readonly Fact[];
}

export interface Fact {
  readonly label: string;
  readonly text: string;
}

/** Stands out: what can hurt someone. */
export interface CautionsBlock {
  readonly kind: 'cautions';
  readonly cautions: readonly string[];
}

export interface FindingsBlock {
  readonly kind: 'findings';
  readonly findings: readonly SheetFinding[];
  /** Said where there is none. */
  readonly none: string;
}

export interface SheetFinding {
  readonly id: string;
  readonly severity: Severity;
  /** The severity in words, or the state of a code check: "Danger", "Not met". */
  readonly mark: string;
  readonly message: string;
  /** Where on the route: "turn 2 of 4"; empty for the whole run. */
  readonly place: string;
  /** What to do. */
  readonly remedy: string;
  readonly source: string;
}

export interface SheetTable {
  readonly kind: 'table';
  readonly id: string;
  readonly caption?: string;
  readonly columns: readonly SheetColumn[];
  readonly rows: readonly SheetRow[];
  /** Under the table. */
  readonly notes: readonly string[];
}

export interface SheetColumn {
  readonly id: string;
  readonly head: string;
  /** Printed under or after the head; the cells are bare figures then. */
  readonly unit?: string;
  /** Figures stand to the right. */
  readonly align: 'left' | 'right';
  /** Share of the width against the other columns; about the number of characters that it wants. */
  readonly weight: number;
  /** The head is a symbol of a formula and set like one (`formulaRuns`). */
  readonly symbol?: boolean;
  /** Every cell is such a symbol. */
  readonly symbolCells?: boolean;
}

export interface SheetRow {
  readonly id: string;
  /** One a column. */
  readonly cells: readonly SheetCell[];
  /** A sum under the rows above it. */
  readonly total?: boolean;
}

export interface SheetCell {
  readonly text: string;
  /** What the text says, in SI; absent where it is not a number. */
  readonly si?: number;
  /** Said against another figure: below what is asked, a limit that is not kept. */
  readonly poor?: boolean;
}

/** A drawing to be made from the job: a sheet to scale, or the view from an angle. */
export interface DrawingBlock {
  readonly kind: 'drawing';
  readonly drawing: SheetId | 'isometric';
  /** "Floor, looking down". */
  readonly caption: string;
  /** What it shows, for those who do not see it. */
  readonly description: string;
}

export type SheetChart = 'fan' | 'profile' | 'budget';

/** A chart to be made from the solution. */
export interface ChartBlock {
  readonly kind: 'chart';
  readonly chart: SheetChart;
  /** Index into the solution's speeds: the one that is shown, or that stands out. */
  readonly speed: number;
  readonly caption: string;
  readonly description: string;
}

/** One formula of the appendix with every place where it was used. */
export interface FormulaBlock {
  readonly kind: 'formula';
  readonly id: string;
  /** "A.7", by which other formulas refer to it. */
  readonly number: string;
  readonly title: string;
  readonly formula: string;
  /** The formula in runs of one setting each. */
  readonly runs: readonly FormulaRun[];
  /** Empty where the table names them. */
  readonly inputs: readonly FormulaInput[];
  readonly sources: readonly string[];
  readonly notes: readonly string[];
  /**
   * SI as the formula reads it, and the result in the job's units: one row a place and speed, or for what has
   * no place one row an input and one column a speed.
   */
  readonly tables: readonly SheetTable[];
}

export interface FormulaInput {
  readonly symbol: string;
  readonly runs: readonly FormulaRun[];
  readonly name: string;
  /** SI; empty for a ratio. */
  readonly unit: string;
  /** The formula that gives it: "A.3"; absent where it is given. */
  readonly from?: string;
}

export interface SignaturesBlock {
  readonly kind: 'signatures';
  /** What each line is for: "Designed by". */
  readonly lines: readonly string[];
}
