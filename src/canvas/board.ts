import type { Draft } from 'immer';
import type { ColourBy } from '../drawing/colour.ts';
import type { Theme } from '../drawing/palette.ts';
import type { Block, ExitFace, Job, UnitSystem } from '../graph/document.ts';
import type { SheetId } from '../graph/sheet.ts';
import type { SchemeSolution } from '../graph/solution.ts';

/** What the sheets and tools need from the program around them; the app's store implements it. */
export interface Board {
  getState(): BoardState;
  subscribe(listener: (state: BoardState, previous: BoardState) => void): () => void;
  /** One edit, one undo step. Ends a preview. An edit that changes nothing leaves no step. */
  dispatch(label: string, recipe: Recipe): void;
  /** Shows `job` with `recipe` applied, solved, without committing it; `null` restores exactly. */
  preview(recipe: Recipe | null): void;
  set(change: Partial<BoardSettings>): void;
  undo(): void;
  redo(): void;
}

export type Recipe = (job: Draft<Job>) => void;

export type ToolId =
  | 'select'
  | 'draw'
  | 'hood'
  | 'cap'
  | 'insert'
  | 'pan'
  | 'part'
  | 'split'
  | 'join'
  | 'block'
  | 'exit'
  | 'dimension'
  | 'note'
  | 'measure'
  | 'underlay'
  | 'scale';

export interface Selection {
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  /** Parts in line, as `segment/index`. */
  readonly parts?: readonly string[];
  readonly blocks?: readonly string[];
  readonly exits?: readonly string[];
  readonly notes?: readonly string[];
  readonly dimensions?: readonly string[];
}

export const nothing: Selection = { nodes: [], segments: [] };

/** A scheme that is not the document's: the job that it was made from, and what is inferred from it. */
export interface Ghost {
  readonly job: Job;
  readonly solution: SchemeSolution;
}

/** Where each section is cut, m along its line of sight; null where it is not, and shows all. */
export type SectionDepths = Readonly<Record<Exclude<SheetId, 'floor'>, number | null>>;

/** What the tools that make several kinds of things make next: a kind of block, of exit face, a part's catalogue id. */
export interface ToolKinds {
  readonly block: Block['kind'];
  readonly exit: ExitFace['kind'];
  readonly part: string;
}

export const firstKinds: ToolKinds = { block: 'chase', exit: 'wall', part: 'backdraught-damper' };

export interface BoardSettings {
  readonly schemeId: string;
  readonly tool: ToolId;
  readonly kinds: ToolKinds;
  readonly selection: Selection;
  /** What the pointer or a panel points at. */
  readonly hover: Selection;
  /** Index into `solution.speeds`: the speed that colours the ducts. */
  readonly speed: number;
  readonly colourBy: ColourBy;
  /** Which section stands beside the floor sheet. */
  readonly section: Exclude<SheetId, 'floor'>;
  /** Height at which the floor sheet draws where no node says otherwise, m. */
  readonly workingHeight: number;
  readonly sectionDepth: SectionDepths;
  /** A proposal's scheme drawn as a ghost over the real one. */
  readonly ghost: Ghost | null;
  readonly theme: Theme;
  /** The underlay that its tools act on; the one under the pointer where there is none. */
  readonly underlay?: string | null;
}

export interface BoardState extends BoardSettings {
  /** The committed document. */
  readonly job: Job;
  /** `job`, or `job` with the gesture in progress applied. */
  readonly live: Job;
  /** Of `live`, for `schemeId`. */
  readonly solution: SchemeSolution;
  readonly units: UnitSystem;
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
}
