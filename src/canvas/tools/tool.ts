import type { Vec3 } from '../../graph/document.ts';
import type { ScreenPoint, SheetId, SheetPoint } from '../../graph/sheet.ts';
import type { Snap } from '../../graph/snap.ts';
import type { Board, Selection } from '../board.ts';
import type { ActiveShape, SheetHandle } from '../sheet-handle.ts';
import type { FieldAsk, MenuAsk } from './ask.ts';
import type { Pick as Picked, PickOptions, Under } from './pick.ts';

export interface Modifiers {
  readonly shift: boolean;
  /** Suspends snapping while it is down. */
  readonly alt: boolean;
  /** Control, or the command key where there is one. */
  readonly mod: boolean;
}

export const noModifiers: Modifiers = { shift: false, alt: false, mod: false };

export type PointerKind = 'mouse' | 'pen' | 'touch';

/** A pointer event as plain data. */
export interface PointerInput {
  readonly sheet: SheetId;
  readonly point: SheetPoint;
  readonly screen: ScreenPoint;
  readonly modifiers: Modifiers;
  /** 0 main, 1 middle, 2 secondary; -1 where no button changed. */
  readonly button: number;
  readonly pointerType: PointerKind;
  /** 2 for the second press of a double click. */
  readonly clicks: number;
}

/** A key event as plain data; `key` as the DOM names it. */
export interface KeyInput {
  readonly key: string;
  readonly modifiers: Modifiers;
  /** The sheet that has the focus, or that the pointer was last on. */
  readonly sheet: SheetId;
}

export type Cursor =
  | 'default'
  | 'crosshair'
  | 'pointer'
  | 'move'
  | 'grab'
  | 'grabbing'
  | 'copy'
  | 'text'
  | 'cell'
  | 'ew-resize'
  | 'ns-resize'
  | 'nesw-resize'
  | 'nwse-resize';

/**
 * One state of a tool. A handler returns the phase that comes next; a pointer handler that returns
 * nothing stays. `key` says `true` for a key that it used and `false` for one that it leaves alone.
 */
export interface Phase {
  readonly name: string;
  readonly cursor: Cursor;
  /** True while a press is being followed: a lost pointer then cancels. */
  readonly pressed?: boolean;
  enter?(): void;
  /** Clears what the phase shows and previews; called before the next phase enters. */
  leave?(): void;
  move?(at: PointerInput): Phase | undefined;
  down?(at: PointerInput): Phase | undefined;
  up?(at: PointerInput): Phase | undefined;
  key?(input: KeyInput): Phase | boolean;
  /** The pointer went off the sheets with nothing pressed. */
  out?(): void;
  /** The kind of thing that the tool makes was chosen anew: shows it. */
  kindTaken?(): void;
  /** The committed document was changed from elsewhere: undo, redo, a panel. */
  changed?(): Phase | undefined;
  /** Drops the gesture in progress; the document is again exactly what it was. */
  cancel(): Phase;
}

/** What tools use of a mounted sheet. */
export type Surface = Omit<SheetHandle, 'element'>;

/** What every phase is given. */
export interface ToolContext {
  readonly board: Board;
  surface(sheet: SheetId): Surface | undefined;
  /** Where the last click was: a click there again takes what lies behind. */
  lastClick: Pick<PointerInput, 'sheet' | 'screen'> | null;
  /** What is under the pointer, in the committed document. */
  pickAt(at: PointerInput, options?: PickOptions): Picked | null;
  /** Everything under the pointer, the best first: what is drawn in front, and the small before the large. */
  underAt(at: PointerInput): readonly Under[];
  /** Pixels within which things attract, as metres on the sheet. */
  toleranceAt(at: PointerInput): number;
  /** Where the pointer is held to, and why; the bare point while Alt is down. */
  snapAt(at: PointerInput, options?: SnapAsk): Snap;
  /** Shows `shapes` on one sheet and clears the other; no sheet clears both. */
  draw(sheet: SheetId | null, shapes: readonly ActiveShape[]): void;
  /** Marks what the pointer is on, on all sheets; `nothing` unmarks it. */
  hover(over: Selection): void;
  /** A sentence for the status line and the screen reader. */
  announce(text: string): void;
  /** Opens a field on the sheet to type into; `null` closes it. */
  ask(field: FieldAsk | null): void;
  /** Offers what can be done with what is selected. */
  menu(menu: MenuAsk): void;
}

export interface SnapAsk {
  /** Where the leg in hand starts, or what the dragged thing hangs on. */
  readonly from?: Vec3 | undefined;
  /** Where the leg before it started. */
  readonly previous?: Vec3 | undefined;
  /** Where the legs of the dragged node come from: it can be square to several at once. */
  readonly anchors?: readonly Vec3[] | undefined;
  /** Keeps the place level with this point of the sheet, or upright over it. */
  readonly square?: SheetPoint | null | undefined;
  /** The coordinate that the sheet does not show, m, where it is not that of `from`. */
  readonly depth?: number | undefined;
  /** Nodes, blocks and exits that must not attract: those being moved. */
  readonly exclude?: ReadonlySet<string> | undefined;
}

/** Pixels that a press may wander before it becomes a drag. */
export const DRAG_SLOP = 4;

/** True once the pointer has left the place of the press. */
export function dragged(press: PointerInput, now: PointerInput): boolean {
  return (
    press.sheet !== now.sheet ||
    Math.hypot(now.screen.x - press.screen.x, now.screen.y - press.screen.y) > DRAG_SLOP
  );
}

/** Takes away what a gesture shows before it is committed: the changed drawing, and its marks. */
export function putAway({ board, draw }: ToolContext): void {
  board.preview(null);
  draw(null, []);
}
