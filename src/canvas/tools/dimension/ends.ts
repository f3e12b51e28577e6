import { type Box3, boundsOn } from '../../../drawing/box-faces.ts';
import type { DimensionEnd, Job } from '../../../graph/document.ts';
import { partOfBox } from '../../../graph/edits/index.ts';
import type { SheetId, SheetPoint } from '../../../graph/sheet.ts';
import type { Snap } from '../../../graph/snap.ts';
import type { PointerInput, ToolContext } from '../tool.ts';

/** A snap this near to the edge of a box, m, is on it. */
const ON_EDGE = 1e-6;

/** What a dimension takes hold of under the pointer: a node or a face that it then follows, else a place. */
export function endOf(
  context: ToolContext,
  at: PointerInput,
): { readonly end: DimensionEnd; readonly snapped: Snap } {
  const picked = context.pickAt(at, { endsFirst: true });
  const snapped = context.snapAt(at);
  if (picked?.kind === 'node') return { end: { node: picked.id }, snapped: { ...snapped, at: picked.at } };
  const box =
    snapped.reason === '' ? undefined : faceAt(context.board.getState().job, at.sheet, snapped.point);
  if (box) return { end: { box: box.id, part: partOfBox(box, snapped.at) }, snapped };
  return { end: { at: snapped.at }, snapped };
}

export function sameEnd(one: DimensionEnd, other: DimensionEnd): boolean {
  if ('node' in one || 'node' in other) return 'node' in one && 'node' in other && one.node === other.node;
  if ('box' in one || 'box' in other)
    return 'box' in one && 'box' in other && one.box === other.box && same(one.part, other.part);
  return same(one.at, other.at);
}

function same(one: readonly number[], other: readonly number[]): boolean {
  return one.every((value, i) => Math.abs(value - (other[i] ?? 0)) < 1e-6);
}

/** The block or exit face that a point of a sheet is on the edge of. */
function faceAt(
  job: Job,
  sheet: SheetId,
  { u, v }: SheetPoint,
): (Box3 & { readonly id: string }) | undefined {
  const at = (value: number, edge: number) => Math.abs(value - edge) <= ON_EDGE;
  return [...job.blocks, ...job.exits].find((box) => {
    const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
    const inside = u >= minU - ON_EDGE && u <= maxU + ON_EDGE && v >= minV - ON_EDGE && v <= maxV + ON_EDGE;
    return inside && (at(u, minU) || at(u, maxU) || at(v, minV) || at(v, maxV));
  });
}
