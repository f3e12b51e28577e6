import type { IDxf } from 'dxf-parser';
import { words } from '../../words/index.ts';
import { type FlatDrawing, flatten } from './dxf-lines.ts';
import { Refused, VECTOR_SIDE } from './picture.ts';
import type { Point } from './plane.ts';
import { escaped } from './svg.ts';

const says = words.underlayFiles.dxf;

/** Metres in the units of `$INSUNITS`, by their numbers in the DXF reference. */
const units: Readonly<Record<number, number>> = {
  1: 0.0254,
  2: 0.3048,
  3: 1609.344,
  4: 0.001,
  5: 0.01,
  6: 1,
  7: 1000,
  8: 0.0254e-6,
  9: 0.0254e-3,
  10: 0.9144,
  11: 1e-10,
  12: 1e-9,
  13: 1e-6,
  14: 0.1,
  15: 10,
  16: 100,
};

export interface DrawnDxf {
  readonly svg: string;
  /** Pixels across and down. */
  readonly size: readonly [number, number];
  /** Metres of house a pixel. */
  readonly scale: number;
  /** What the drawing's unit was taken to be, where the file does not name one. */
  readonly assumed: string | null;
}

/** Reads the text of a DXF file; given so that it is loaded only when there is one. */
export type ParseDxf = (text: string) => IDxf | null;

/** Ink of lines on paper. */
const INK = '#24211b';

/** Size of a type over the height of its capitals, which is what a drawing gives: common for sans-serifs, from memory. */
const EM = 1.39;

/** A DXF drawing as a picture of lines with a known scale. Refuses what cannot be read or holds no lines. */
export function drawDxf(text: string, parse: ParseDxf): DrawnDxf {
  if (text.startsWith('AutoCAD Binary DXF')) throw new Refused(says.binary);
  const dxf = parsed(text, parse);
  const drawing = flatten(dxf);
  const bounds = boundsOf(drawing);
  if (!bounds) throw new Refused(says.noLines);
  const { unit, assumed } = unitOf(dxf);
  const [minX, minY, maxX, maxY] = bounds;
  const longer = Math.max(maxX - minX, maxY - minY);
  const pad = longer * 0.01;
  const perPixel = (longer + 2 * pad) / VECTOR_SIDE;
  const size = [
    Math.max(1, Math.ceil((maxX - minX + 2 * pad) / perPixel)),
    Math.max(1, Math.ceil((maxY - minY + 2 * pad) / perPixel)),
  ] as const;
  const toPixel = ([x, y]: Point) =>
    `${tenth((x - minX + pad) / perPixel)} ${tenth(size[1] - (y - minY + pad) / perPixel)}`;
  const path = drawing.lines
    .map((chain) => `M${toPixel(chain[0] ?? [0, 0])}L${chain.slice(1).map(toPixel).join(' ')}`)
    .join('');
  const words = drawing.words.map(
    ({ at, text: said, height, rotation, anchor }) =>
      `<text transform="translate(${toPixel(at)}) rotate(${tenth(-rotation)})" font-size="${tenth((height / perPixel) * EM)}" text-anchor="${anchor}">${escaped(said)}</text>`,
  );
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size[0]}" height="${size[1]}" viewBox="0 0 ${size.join(' ')}">`,
    `<path fill="none" stroke="${INK}" stroke-width="6" stroke-linecap="round" stroke-linejoin="round" d="${path}"/>`,
    `<g fill="${INK}" font-family="sans-serif">${words.join('')}</g></svg>`,
  ].join('');
  return { svg, size, scale: perPixel * unit, assumed };
}

function parsed(text: string, parse: ParseDxf): IDxf {
  let dxf: IDxf | null = null;
  try {
    dxf = parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Refused(says.unreadable(why));
  }
  if (!dxf?.entities) throw new Refused(says.nothing);
  return dxf;
}

/** The drawing's unit; where it names none, millimetres or inches as it says that it measures. */
function unitOf({ header }: IDxf): { readonly unit: number; readonly assumed: string | null } {
  const named = units[Number(header?.$INSUNITS)];
  if (named !== undefined) return { unit: named, assumed: null };
  const inches = Number(header?.$MEASUREMENT) === 0;
  return inches ? { unit: 0.0254, assumed: 'inches' } : { unit: 0.001, assumed: 'millimetres' };
}

/** Least x and y, greatest x and y; `null` for a drawing without an extent. */
function boundsOf({ lines, words }: FlatDrawing): readonly [number, number, number, number] | null {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  const see = ([x, y]: Point) => {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  };
  for (const chain of lines) chain.forEach(see);
  if (lines.length === 0) return null;
  for (const { at } of words) see(at);
  return Math.max(maxX - minX, maxY - minY) > 0 ? [minX, minY, maxX, maxY] : null;
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
