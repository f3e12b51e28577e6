import type { SheetId, SheetPoint } from '../graph/sheet.ts';
import type { Palette } from './palette.ts';
import { line, type Stroke } from './stroke.ts';
import type { Bounds } from './viewport.ts';

/** What can be drawn on paper: the three sheets, and the route in space as the isometric shows it. */
export type DrawnSheet = SheetId | 'isometric';

/** By what a line means to the trade, in the order in which they are drawn. */
export const layerIds = [
  'exits',
  'blocks',
  'hatch',
  'room',
  'fill',
  'hood',
  'cap',
  'duct',
  'fittings',
  'parts',
  'centre',
  'flow',
  'names',
  'labels',
  'dimensions',
  'notes',
] as const;
export type LayerId = (typeof layerIds)[number];

/** A colour of the palette by its name, or one that does not change with it. */
export type Paint = keyof Palette | `rgb(${string})` | `#${string}`;

export interface Pen {
  readonly paint: Paint;
  /** mm on paper. */
  readonly width: number;
  /** Dashes and gaps, mm on paper. */
  readonly dash?: readonly number[];
  readonly opacity?: number;
}

/** A closed outline filled. */
export interface FillMark {
  readonly kind: 'fill';
  readonly outline: readonly Stroke[];
  readonly paint: Paint;
  readonly opacity?: number;
  /** Id of the node, leg, block or exit that it belongs to. */
  readonly of?: string;
}

export interface LineMark {
  readonly kind: 'line';
  readonly strokes: readonly Stroke[];
  readonly pen: Pen;
  readonly of?: string;
}

export interface TextMark {
  readonly kind: 'text';
  /** The middle of the line of text; of its left or right end where it is aligned there. */
  readonly at: SheetPoint;
  readonly align: 'left' | 'centre' | 'right';
  readonly text: string;
  /** Font size, mm on paper. */
  readonly size: number;
  readonly weight: 400 | 500 | 600;
  readonly paint: Paint;
  /** What parts it from the lines behind it: a rim round its letters, or a plate of `width` by `height` mm. */
  readonly behind?: { readonly as: 'rim' | 'plate'; readonly paint: Paint };
  readonly width: number;
  readonly height: number;
  readonly of?: string;
}

export interface DimensionMark {
  readonly kind: 'dimension';
  /** What is measured, and the ends of the dimension line. */
  readonly feet: readonly [SheetPoint, SheetPoint];
  readonly line: readonly [SheetPoint, SheetPoint];
  readonly extensions: readonly (readonly [SheetPoint, SheetPoint])[];
  /** m */
  readonly value: number;
  readonly text: TextMark;
  readonly of?: string;
}

export type Mark = FillMark | LineMark | TextMark | DimensionMark;

export interface Layer {
  readonly id: LayerId;
  readonly marks: readonly Mark[];
}

/** One sheet ready for paper: places in metres of the sheet, thicknesses and letters in mm of paper. */
export interface SheetDrawing {
  readonly sheet: DrawnSheet;
  /** n of 1 : n. */
  readonly scale: number;
  /** What is drawn, with its margin, m on the sheet. */
  readonly bounds: Bounds;
  /** The same on paper, mm. */
  readonly width: number;
  readonly height: number;
  /** From the farthest back; none is empty. */
  readonly layers: readonly Layer[];
}

/** CSS pixels to mm of paper: labels and pens have the size that they have on a screen. */
export const PX = 25.4 / 96;

const slash = 4 * PX;

/** The lines of a dimension on a drawing at 1 : `scale`: its own, those that lead to it, and the slashes at its ends. */
export function dimensionLines(
  { line: [from, to], extensions }: DimensionMark,
  scale: number,
): { readonly thin: readonly Stroke[]; readonly slashes: readonly Stroke[] } {
  const by = (slash * scale) / 1000;
  return {
    thin: [line(from, to), ...extensions.map(([a, b]) => line(a, b))],
    slashes: [from, to].map(({ u, v }) => line({ u: u - by, v: v - by }, { u: u + by, v: v + by })),
  };
}

export const dimensionPens = {
  thin: { paint: 'muted', width: PX },
  slashes: { paint: 'ink', width: 1.5 * PX },
} as const satisfies Record<string, Pen>;

/** A paint as a CSS colour. */
export function cssOf(paint: Paint, palette: Palette): string {
  return paint in palette ? palette[paint as keyof Palette] : paint;
}

/** Red, green and blue from 0 to 255 and opacity from 0 to 1, of the two forms of colour that are drawn with. */
export function channelsOf(css: string): {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
  readonly opacity: number;
} {
  if (css.startsWith('#')) {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => Number.parseInt(css.slice(at, at + 2), 16));
    return { red, green, blue, opacity: 1 };
  }
  const [red = 0, green = 0, blue = 0, percent = 100] = (css.match(/[\d.]+/g) ?? []).map(Number);
  return { red, green, blue, opacity: percent / 100 };
}
