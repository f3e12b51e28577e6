import type { ScreenPoint, SheetId, SheetPoint } from '../../graph/sheet.ts';
import type { Item } from '../selection.ts';

/** A field that opens on a sheet over the number or the words that it changes. */
export interface FieldAsk {
  readonly sheet: SheetId;
  /** The middle of what it changes. */
  readonly at: SheetPoint;
  /** What is typed into it, for a screen reader: "Length of the leg from turn 1 to turn 2". */
  readonly label: string;
  readonly value: string;
  /** Several lines, ended by Control and Enter or by leaving. */
  readonly lines?: true;
  /** Takes what was typed; a sentence where it cannot. */
  commit(text: string): string | null;
}

/** A wish for a menu: a right click, a long press, or the menu key. */
export interface MenuAsk {
  readonly sheet: SheetId;
  readonly screen: ScreenPoint;
  readonly point: SheetPoint;
  /** What lies there, the best first; the first is selected. */
  readonly items: readonly Item[];
}
