import { palettes } from '../../../drawing/palette.ts';
import { type Colour, colour } from '../../pdf/colour.ts';
import type { PdfFont } from '../../pdf/font.ts';
import type { Line, TextStyle } from '../../pdf/page.ts';

/** The fonts of a job sheet. */
export interface Type {
  readonly regular: PdfFont;
  readonly semibold: PdfFont;
  readonly italic: PdfFont;
}

/** A rectangle of a page, mm. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const print = palettes.print;

export const inks = {
  ink: colour(print.ink),
  muted: colour(print.muted),
  faint: colour(print.hairline),
  accent: colour(print.accent),
  danger: colour(print.danger),
  paper: colour(print.sheet),
  /** Behind heads of tables and what stands out: light enough for a copier to leave the words alone. */
  wash: colour('#f0efeb'),
} as const satisfies Record<string, Colour>;

/** Widths of lines, mm. */
export const weights = { frame: 0.6, edge: 0.25, fine: 0.13 } as const;

export function pen(width: keyof typeof weights, ink: Colour = inks.ink, dash?: readonly number[]): Line {
  return { width: weights[width], colour: ink, ...(dash && { dash }) };
}

/** Sizes of text, points. */
export const sizes = {
  title: 17,
  section: 12,
  heading: 9.5,
  body: 8.5,
  table: 8,
  small: 7,
  tiny: 5.6,
} as const;

/** A style of the sheet: figures of one width unless it is prose. */
export function style(
  type: Type,
  size: number,
  weight: keyof Type = 'regular',
  ink: Colour = inks.ink,
  prose = false,
): TextStyle {
  return { font: type[weight], size, colour: ink, tabular: !prose };
}
