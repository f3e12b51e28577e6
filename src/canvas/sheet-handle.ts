import type { LabelKind } from '../drawing/label-place.ts';
import type { Size, Viewport } from '../drawing/viewport.ts';
import type { ScreenPoint, SheetId, SheetPoint } from '../graph/sheet.ts';
import type { Section } from '../hydraulics/types.ts';

/** What a gesture shows while it runs, as plain data in sheet metres. Sizes of marks are in screen pixels. */
export type ActiveShape =
  /** Duct being drawn: a centre line and the section around it. `valid` false draws it as refused. */
  | {
      readonly kind: 'duct';
      readonly points: readonly SheetPoint[];
      readonly section: Section;
      readonly valid?: boolean;
    }
  /** A line that the pointer is held to, across the sheet or between two points. */
  | { readonly kind: 'guide'; readonly from: SheetPoint; readonly to: SheetPoint }
  /** Where the pointer snapped, and why: "on centre line", "45°", "same length". `bare` draws the words alone. */
  | { readonly kind: 'snap'; readonly at: SheetPoint; readonly reason: string; readonly bare?: boolean }
  /** A dimension between two points with its text: `3'-4"`. */
  | { readonly kind: 'measure'; readonly from: SheetPoint; readonly to: SheetPoint; readonly text: string }
  /** A typed or measured value beside the pointer. `strong` for the field being typed into. */
  | { readonly kind: 'note'; readonly at: SheetPoint; readonly text: string; readonly strong?: boolean }
  /** A node that would be made or moved here. */
  | { readonly kind: 'node'; readonly at: SheetPoint }
  /** Box selection. `crossing`: takes all that it touches (dashed), else what it encloses. */
  | { readonly kind: 'box'; readonly from: SheetPoint; readonly to: SheetPoint; readonly crossing?: boolean };

/** One mounted sheet, as tools and pointer wiring see it. */
export interface SheetHandle {
  readonly sheet: SheetId;
  /** Takes focus, pointer and wheel events; its content box is the sheet's screen space. */
  readonly element: HTMLElement;
  size(): Size;
  viewport(): Viewport;
  /** What the label under a place of the screen tells of, where there is one. */
  labelAt(point: ScreenPoint): { readonly kind: LabelKind; readonly id: string } | null;
  /** The middle of a thing's label of a kind, where it is shown. */
  labelOf(kind: LabelKind, id: string): SheetPoint | null;
  /** Redraws the sheet at the next frame. */
  setViewport(view: Viewport): void;
  /** Fits the drawing, or the given points, into view. */
  fit(points?: readonly SheetPoint[]): void;
  /** Replaces what the active layer shows; an empty list clears it. Redraws that layer alone. */
  drawActive(shapes: readonly ActiveShape[]): void;
}
