import type { Drawable } from '../drawing/stroke.ts';
import { views } from '../drawing/view.ts';
import type { Vec3 } from '../graph/document.ts';
import { memoise } from '../graph/memo.ts';
import type { Route, RouteSegment } from '../graph/route.ts';
import { depthOf, type SheetId } from '../graph/sheet.ts';
import type { BoardState } from './board.ts';

/** How a thing stands to the plane that a section is cut at: in it, behind it, or between it and the viewer. */
export type Standing = 'cut' | 'beyond' | 'before';

/** How strongly a thing is drawn by where it stands, 0-1. */
export const strength: Readonly<Record<Standing, number>> = { cut: 1, beyond: 0.5, before: 0.2 };

/** Where a sheet is cut, m along its line of sight; null for one that shows all. */
export function planeOf({ sectionDepth }: BoardState, sheet: SheetId): number | null {
  return sheet === 'floor' ? null : sectionDepth[sheet];
}

/** Where a box of space stands to a section's plane. */
export function standing(min: Vec3, max: Vec3, sheet: SheetId, plane: number): Standing {
  const [low, high] = [depthOf(min, sheet), depthOf(max, sheet)].sort((a, b) => a - b) as [number, number];
  if (low <= plane && plane <= high) return 'cut';
  const sight = depthOf(views[sheet].toward, sheet);
  return (low - plane) * sight > 0 ? 'before' : 'beyond';
}

export interface Standings {
  of(item: Pick<Drawable, 'of' | 'id'>): Standing;
  leg(id: string): Standing;
}

/** Where every leg and fitting of a route stands to a section's plane, with the width of its duct. */
export const standingsOf = memoise((route: Route, sheet: SheetId, plane: number): Standings => {
  const legs = new Map<string, Standing>();
  const nodes = new Map<string, Standing>();
  for (const leg of route.segments.values()) {
    const ends = [leg.from, leg.to].flatMap((id) => {
      const node = route.nodes.get(id);
      return node ? [node.at] : [];
    });
    legs.set(leg.id, between(ends, halfOf(leg), sheet, plane));
  }
  for (const node of route.nodes.values()) {
    const half = Math.max(0, ...node.segments.map((id) => halfOf(route.segments.get(id))));
    nodes.set(node.id, between([node.at], half, sheet, plane));
  }
  const leg = (id: string) => legs.get(id) ?? 'cut';
  return {
    leg,
    of: ({ of, id }) => (of === 'node' ? (nodes.get(id) ?? 'cut') : leg(id.split('/')[0] ?? id)),
  };
});

function between(places: readonly Vec3[], half: number, sheet: SheetId, plane: number): Standing {
  const [first] = places;
  if (!first) return 'cut';
  const corner = (pick: (...values: number[]) => number, by: number): Vec3 => [
    pick(...places.map((at) => at[0])) + by,
    pick(...places.map((at) => at[1])) + by,
    pick(...places.map((at) => at[2])) + by,
  ];
  return standing(corner(Math.min, -half), corner(Math.max, half), sheet, plane);
}

function halfOf(leg: RouteSegment | undefined): number {
  if (!leg) return 0;
  const { section } = leg;
  return (section.shape === 'round' ? section.diameter : Math.max(section.width, section.height)) / 2;
}
