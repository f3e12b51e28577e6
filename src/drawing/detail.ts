import type { SheetLeg } from './outline.ts';
import type { Viewport } from './viewport.ts';

/**
 * The level-of-detail plan. What a duct shows follows its width on the screen, the widest of the drawing
 * deciding for all, so that no run changes its look half way along:
 *
 * - `full`, from 7 px: walls, centre lines, gores, ribs, joints, flow arrows, marks inside parts.
 * - `walls`, from 2.5 px: fills and walls alone, all of a colour as one path.
 * - `line`, below: every leg one line in its colour, as wide as its duct but never under 1.5 px; no fittings.
 *
 * Handles and labels follow the length of a leg on the screen: a handle where both legs leave it room,
 * a label where the leg is longer than its text is high, and of those the longest legs' first.
 */
export type Detail = 'full' | 'walls' | 'line';

const leastForFull = 7;
const leastForWalls = 2.5;

/** How much of a drawing is shown at a zoom. */
export function detailOf(legs: readonly SheetLeg[], view: Viewport): Detail {
  let widest = 0;
  for (const leg of legs) widest = Math.max(widest, leg.half * 2);
  const width = widest * view.scale;
  if (legs.length === 0 || width >= leastForFull) return 'full';
  return width >= leastForWalls ? 'walls' : 'line';
}

/** Narrowest line that stands for a duct, px. */
export const leastLine = 1.5;

/** Handles of nodes whose legs are shorter than this are left out unless they are selected or pointed at, px. */
export const roomForHandle = 24;

/** Legs that labels are placed for at most: the selected, then the longest on the screen. */
export const mostLabelled = 220;

/** The legs that are worth a label: long enough on the screen for its text, the longest where there are many. */
export function labelledLegs(
  legs: readonly SheetLeg[],
  selected: readonly string[],
  view: Viewport,
): readonly SheetLeg[] {
  const chosen = new Set(selected);
  const worth = legs
    .map((leg) => ({
      leg,
      length: chosen.has(leg.segment.id) ? Number.POSITIVE_INFINITY : onScreen(leg, view),
    }))
    .filter(({ length }) => length >= leastLabelled);
  if (worth.length > mostLabelled) worth.sort((a, b) => b.length - a.length).splice(mostLabelled);
  return worth.map(({ leg }) => leg);
}

/** Height of a text: legs shorter than this tell nothing, px. Those seen end on count by their width. */
const leastLabelled = 14;

function onScreen(leg: SheetLeg, { scale }: Viewport): number {
  if (leg.endOn) return leg.half * 2 * scale + 8;
  return Math.hypot(leg.to.u - leg.from.u, leg.to.v - leg.from.v) * scale;
}
