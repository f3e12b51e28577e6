import { drawnBounds } from '../../canvas/route-svg.tsx';
import type { Bounds } from '../../drawing/viewport.ts';
import type { Job } from '../../graph/document.ts';
import type { Route } from '../../graph/route.ts';
import type { SheetId } from '../../graph/sheet.ts';

export interface Shown {
  readonly sheet: SheetId;
  readonly bounds: Bounds;
}

/** The floor and the section that shows most of the routes, each at one scale for all of them. */
export function shownSheets(job: Job, routes: readonly Route[]): readonly Shown[] {
  const bounds = (sheet: SheetId) => drawnBounds(job, routes, sheet);
  const sections = (['section-x', 'section-y'] as const).flatMap((sheet) => {
    const covered = bounds(sheet);
    return covered ? [{ sheet, bounds: covered }] : [];
  });
  const width = ({ bounds: { minU, maxU } }: Shown) => maxU - minU;
  const [section] = sections.sort((a, b) => width(b) - width(a));
  const floor = bounds('floor');
  return [...(floor ? [{ sheet: 'floor' as const, bounds: floor }] : []), ...(section ? [section] : [])];
}
