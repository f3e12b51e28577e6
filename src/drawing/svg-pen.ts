import type { SheetPoint } from '../graph/sheet.ts';
import { onCircle, type Stroke } from './stroke.ts';

/** Turns metres of a sheet into units of an SVG, whose `y` goes down. */
export type SvgPlace = (point: SheetPoint) => { readonly x: number; readonly y: number };

/** Units of an SVG a metre: whole millimetres read well and lose nothing. */
export const svgScale = 1000;

/** A sheet's own place in an SVG: millimetres, up on the sheet is up in the picture. */
export const inMillimetres: SvgPlace = ({ u, v }) => ({ x: u * svgScale, y: -v * svgScale });

/**
 * A stroke as commands of an SVG path, arcs as true arcs (a full circle as two). `joined` goes on from where the
 * path is. The places must scale alike in both directions.
 */
export function svgStroke(stroke: Stroke, place: SvgPlace, joined = false): string {
  const begin = joined ? 'L' : 'M';
  if (stroke.kind === 'line') {
    const points = stroke.points.map((point, i) => `${i === 0 ? begin : 'L'}${at(place(point))}`);
    return `${points.join('')}${stroke.closed ? 'Z' : ''}`;
  }
  const { centre, radius, start, end } = stroke;
  const middle = place(centre);
  const rim = place({ u: centre.u + radius, v: centre.v });
  const r = text(Math.hypot(rim.x - middle.x, rim.y - middle.y));
  const turn = end - start;
  const halves = Math.abs(turn) >= 2 * Math.PI - 1e-9 ? 2 : 1;
  let path = `${begin}${at(place(onCircle(centre, radius, start)))}`;
  for (let i = 1; i <= halves; i += 1) {
    const to = place(onCircle(centre, radius, start + (turn * i) / halves));
    const large = Math.abs(turn) / halves > Math.PI ? 1 : 0;
    path += `A${r} ${r} 0 ${large} ${turn > 0 ? 0 : 1} ${at(to)}`;
  }
  return path;
}

/** Strokes as one path, each begun anew. */
export function svgLines(strokes: readonly Stroke[], place: SvgPlace): string {
  return strokes.map((stroke) => svgStroke(stroke, place)).join('');
}

/** Closed outlines as one path, each a chain of strokes. */
export function svgOutlines(outlines: readonly (readonly Stroke[])[], place: SvgPlace): string {
  return outlines
    .map((chain) => {
      const path = chain.map((stroke, i) => svgStroke(stroke, place, i > 0)).join('');
      return path.endsWith('Z') ? path : `${path}Z`;
    })
    .join('');
}

function at({ x, y }: { readonly x: number; readonly y: number }): string {
  return `${text(x)} ${text(y)}`;
}

/** To a hundredth of a unit, without what a number need not say. */
function text(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(rounded === 0 ? 0 : rounded);
}
