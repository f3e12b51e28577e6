import type { Measure } from '../drawing/label-box.ts';
import { MIN_TEXT } from '../drawing/palette.ts';
import { type Pen, setText } from './pen.ts';

/** Widths of the labels' texts, each measured once. */
export interface TextWidths {
  with(pen: Pen): Measure;
  /** Forgets them, after a font has arrived. */
  forget(): void;
}

export function createMeasure(): TextWidths {
  const widths = new Map<string, number>();
  return {
    with: (pen) => (text) => {
      const known = widths.get(text);
      if (known !== undefined) return known;
      setText(pen, MIN_TEXT, 500);
      const { width } = pen.measureText(text);
      widths.set(text, width);
      return width;
    },
    forget: () => widths.clear(),
  };
}
