import type { DimensionEnd } from '../../../graph/document.ts';
import type { Snap } from '../../../graph/snap.ts';
import type { PointerInput, ToolContext } from '../tool.ts';

/** What a dimension takes hold of under the pointer: a node that it follows, else a place. */
export function endOf(
  context: ToolContext,
  at: PointerInput,
): { readonly end: DimensionEnd; readonly snapped: Snap } {
  const picked = context.pickAt(at, { endsFirst: true });
  const snapped = context.snapAt(at);
  if (picked?.kind === 'node') return { end: { node: picked.id }, snapped: { ...snapped, at: picked.at } };
  return { end: { at: snapped.at }, snapped };
}

export function sameEnd(one: DimensionEnd, other: DimensionEnd): boolean {
  if ('node' in one || 'node' in other) return 'node' in one && 'node' in other && one.node === other.node;
  return one.at.every((value, i) => Math.abs(value - (other.at[i] ?? 0)) < 1e-6);
}
