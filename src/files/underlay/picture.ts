/** What the pixels of a picture measure. */
export type PictureMeasure =
  /** Metres of house a pixel, from the drawing's own units; `assumed` where the file does not name them. */
  | { readonly kind: 'real'; readonly scale: number; readonly assumed: string | null }
  /** Metres of paper a pixel: a drawing scale such as 1:50 makes it real. */
  | { readonly kind: 'paper'; readonly scale: number }
  | { readonly kind: 'unknown' };

/** A picture that is ready to be laid under a sheet. */
export interface Picture {
  readonly name: string;
  /** `data:image/…`, within `MAX_IMAGE`. */
  readonly image: string;
  /** Pixels across and down. */
  readonly size: readonly [number, number];
  readonly measure: PictureMeasure;
  /** Lines without a page behind them, which a dark sheet would swallow. */
  readonly bare: boolean;
  /** What was done to the picture, in sentences. */
  readonly notes: readonly string[];
}

/** A file as it was chosen or dropped. */
export interface SourceFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A file that makes no underlay; its message says what is wrong and what to do. */
export class Refused extends Error {
  override name = 'Refused';
}

/** Bytes of a picture that a job keeps as they are; a larger one is compressed anew. */
export const MAX_BYTES = 9_000_000;

/** Characters of `image` at most: `MAX_BYTES` in base64. */
export const MAX_IMAGE = 12_000_100;

/** Pixels that a job keeps at most; a larger picture is made smaller. */
export const MAX_PIXELS = 48e6;

/** Pixels that are decoded at all: beyond, a small file could fill the memory. */
export const MAX_DECODED = 200e6;

/** Pixels along the longer side of a picture that is made of lines. */
export const VECTOR_SIDE = 4000;

/** Width of a picture of which nothing is known, m, until two points give its scale. */
export const GUESSED_WIDTH = 8;

/** Metres a pixel that a picture starts with; `ratio` is the drawing scale, 50 for 1:50, where one is known. */
export function startScale({ measure, size }: Picture, ratio: number | null): number {
  if (measure.kind === 'real') return measure.scale;
  if (measure.kind === 'paper' && ratio !== null) return measure.scale * ratio;
  return GUESSED_WIDTH / size[0];
}

/** Bytes as a `data:` address. */
export function dataUrl(bytes: Uint8Array, type: string): string {
  let text = '';
  const chunk = 0x8000;
  for (let i = 0; i < bytes.length; i += chunk) text += String.fromCharCode(...bytes.subarray(i, i + chunk));
  return `data:${type};base64,${btoa(text)}`;
}

/** A text as a picture that a job can hold. */
export function svgUrl(svg: string): string {
  return dataUrl(new TextEncoder().encode(svg), 'image/svg+xml');
}
