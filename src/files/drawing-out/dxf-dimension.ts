import type { DxfWriter } from '@tarikjabiri/dxf';
import { type DimensionMark, dimensionLines, PX } from '../../drawing/marks.ts';
import { MIN_TEXT } from '../../drawing/palette.ts';
import { line, type Stroke } from '../../drawing/stroke.ts';

/** What draws the pictures of dimensions into a file. */
export interface DxfFile {
  /** A block of its own for what one dimension looks like, which readers show in its place. */
  readonly addPicture: () => ReturnType<DxfWriter['addBlock']>;
}

/** A block that only a dimension refers to. Group code 70 of a block, the format's reference: from memory. */
const anonymous = 1;

/**
 * Sets how dimensions look for readers that draw them anew: oblique ticks, upright text in the line, sizes in mm of
 * paper times the scale.
 *
 * @param capitals height of capital letters, parts of the font size
 */
export function dimensioning({ document }: DxfWriter, scale: number, capitals: number): DxfFile {
  const sizes = {
    DIMSCALE: scale,
    DIMTXT: MIN_TEXT * PX * capitals,
    DIMASZ: 1.5,
    DIMTSZ: 1.5,
    DIMEXO: 1.5,
    DIMEXE: 1.3,
    DIMGAP: 1,
  };
  const flags = { DIMTIH: 1, DIMTOH: 1, DIMTAD: 0, DIMTIX: 1 };
  Object.assign(document.dimStyleStandard, sizes, flags);
  for (const [name, value] of Object.entries(sizes)) document.header.setVariable(`$${name}`, { 40: value });
  for (const [name, value] of Object.entries(flags)) document.header.setVariable(`$${name}`, { 70: value });
  let count = 0;
  return {
    addPicture: () => {
      count += 1;
      const block = document.blocks.addBlock(`*D${count}`, document.objects, false);
      block.flags = anonymous;
      return block;
    },
  };
}

/** The lines of a dimension, with room for its text in the dimension line where that is long enough. */
export function brokenLines(mark: DimensionMark, scale: number): readonly Stroke[] {
  const { thin, slashes } = dimensionLines(mark, scale);
  const [from, to] = mark.line;
  const { at, width, height } = mark.text;
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const length = Math.hypot(du, dv);
  const [along, across] = [Math.abs(du / length), Math.abs(dv / length)];
  const half = Math.min(width / 2 / along, height / 2 / across) * (scale / 1000);
  const middle = ((at.u - from.u) * du + (at.v - from.v) * dv) / length;
  if (!(middle - half > 0 && middle + half < length)) return [...thin, ...slashes];
  const point = (by: number) => ({ u: from.u + (du * by) / length, v: from.v + (dv * by) / length });
  return [line(from, point(middle - half)), line(point(middle + half), to), ...thin.slice(1), ...slashes];
}
