import type { ScreenPoint } from '../graph/sheet.ts';
import { type Box, boxAt } from './label-place.ts';
import type { SheetLeg } from './outline.ts';
import { toScreen, type Viewport } from './viewport.ts';

export interface Arrow {
  /** Its outline from the tip round, px. */
  readonly corners: readonly ScreenPoint[];
  readonly box: Box;
}

/** The arrowhead of a leg, near the start of its straight duct; null where it would crowd the leg. */
export function arrowOf(leg: SheetLeg, view: Viewport): Arrow | null {
  if (leg.endOn) return null;
  const from = toScreen(leg.straightFrom, view);
  const to = toScreen(leg.straightTo, view);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const width = leg.half * 2 * view.scale;
  if (length < 36 || width < 6) return null;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const head = Math.min(9, Math.max(4, width * 0.28));
  const at = { x: from.x + along.x * length * 0.22, y: from.y + along.y * length * 0.22 };
  const tip = { x: at.x + along.x * head, y: at.y + along.y * head };
  const point = (back: number, side: number) => ({
    x: tip.x - along.x * back * head - along.y * side * head,
    y: tip.y - along.y * back * head + along.x * side * head,
  });
  return {
    corners: [tip, point(2, 0.62), point(1.5, 0), point(2, -0.62)],
    box: boxAt(at, head * 2 + 4, head * 2 + 4),
  };
}
