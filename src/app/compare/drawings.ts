import { drawnBounds } from '../../canvas/route-svg.tsx';
import { type Bounds, boundsOf, overlaps } from '../../drawing/viewport.ts';
import type { Job } from '../../graph/document.ts';
import type { Route } from '../../graph/route.ts';
import { project, type SheetId } from '../../graph/sheet.ts';

export interface Shown {
  readonly sheet: SheetId;
  readonly bounds: Bounds;
}

/** How far the walls, joists and cabinets beside the routes are shown, m; beyond, they are cut off. */
const surroundings = 2;
const margin = 0.1;

/**
 * The floor and the section that shows most of the routes, each with every route whole and at one scale for all
 * of them, and with what they run through as far as it is near.
 */
export function shownSheets(job: Job, routes: readonly Route[]): readonly Shown[] {
  const sections = (['section-x', 'section-y'] as const).flatMap((sheet) => {
    const covered = drawnBounds(job, routes, sheet);
    return covered ? [{ sheet, bounds: covered }] : [];
  });
  const [section] = sections.sort((a, b) => widthOf(b.bounds) - widthOf(a.bounds));
  const floor = drawnBounds(job, routes, 'floor');
  const shown = [
    ...(floor ? [{ sheet: 'floor' as const, bounds: floor }] : []),
    ...(section ? [section] : []),
  ];
  return shown.map(({ sheet, bounds }) => ({ sheet, bounds: withSurroundings(job, sheet, bounds) }));
}

export const widthOf = ({ minU, maxU }: Bounds): number => maxU - minU;
export const heightOf = ({ minV, maxV }: Bounds): number => maxV - minV;

function withSurroundings({ exits, blocks }: Job, sheet: SheetId, routes: Bounds): Bounds {
  const boxes = [...exits, ...blocks].flatMap(({ min, max }) => {
    const box = boundsOf([project(min, sheet), project(max, sheet)], margin);
    return box && overlaps(box, routes) ? [box] : [];
  });
  const all = [routes, ...boxes];
  const least = (key: 'minU' | 'minV') =>
    Math.max(routes[key] - surroundings, Math.min(...all.map((each) => each[key])));
  const most = (key: 'maxU' | 'maxV') =>
    Math.min(routes[key] + surroundings, Math.max(...all.map((each) => each[key])));
  return { minU: least('minU'), maxU: most('maxU'), minV: least('minV'), maxV: most('maxV') };
}
