import type { Underlay } from '../../../graph/document.ts';
import { underlayBounds } from '../../draw-underlay.ts';
import type { ActiveShape } from '../../sheet-handle.ts';
import type { PointerInput, ToolContext } from '../tool.ts';

/**
 * The underlay that a tool acts on: the one chosen in the list, else the topmost under the pointer, else
 * the only one of the sheet.
 */
export function underlayAt({ board }: ToolContext, at: PointerInput): Underlay | undefined {
  const { job, underlay: chosen } = board.getState();
  const here = job.underlays.filter(({ sheet }) => sheet === at.sheet);
  const wanted = here.find(({ id }) => id === chosen);
  if (wanted) return wanted;
  return here.findLast((underlay) => covers(underlay, at)) ?? (here.length === 1 ? here[0] : undefined);
}

function covers(underlay: Underlay, { point: { u, v } }: PointerInput): boolean {
  const bounds = underlayBounds(underlay);
  return !bounds || (u >= bounds.minU && u <= bounds.maxU && v >= bounds.minV && v <= bounds.maxV);
}

/** The edge of an underlay. */
export function edgeOf(underlay: Underlay): ActiveShape[] {
  const bounds = underlayBounds(underlay);
  if (!bounds) return [];
  const from = { u: bounds.minU, v: bounds.minV };
  return [{ kind: 'box', from, to: { u: bounds.maxU, v: bounds.maxV } }];
}

export function nameOf({ name }: Underlay): string {
  return name ?? 'underlay';
}
