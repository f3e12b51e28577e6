import type { Job, Vec3 } from '../graph/document.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import { type Box, type Busy, boxAround, boxAt, grown } from './label-place.ts';
import type { Name } from './labels.ts';
import { type Drawable, pointsOf } from './stroke.ts';
import { type Bounds, boundsOf, toScreen, type Viewport } from './viewport.ts';

/** The names that a sheet shows: hoods by their plan, exits and blocks by their boxes. */
export function namesOn(
  job: Job,
  schemeId: string,
  sheet: SheetId,
  drawables: readonly Drawable[],
): readonly Name[] {
  const scheme = job.schemes.find((s) => s.id === schemeId);
  const hoods = drawables.flatMap(({ kind, id, bounds: box }) => {
    const node = kind === 'hood' && scheme?.nodes.find((n) => n.id === id);
    const hood = node && job.hoods.find((h) => h.id === node.hood);
    return hood ? [{ id, text: hood.name, box, inside: false }] : [];
  });
  const boxes = [...job.exits, ...job.blocks].flatMap(({ id, name, min, max }) => {
    const box = boundsOf([project(min, sheet), project(max, sheet)]);
    return box ? [{ id, text: name, box, inside: true }] : [];
  });
  return [...hoods, ...boxes];
}

/** Bounds on the sheet as a box of the screen. */
export function screenBox(bounds: Bounds, view: Viewport): Box {
  const a = toScreen({ u: bounds.minU, v: bounds.maxV }, view);
  const b = toScreen({ u: bounds.maxU, v: bounds.minV }, view);
  return { minX: a.x, minY: a.y, maxX: b.x, maxY: b.y };
}

/** What labels had better not cover: duct and fittings, and the edges of hoods, exits and blocks. */
export function busyPlaces(
  job: Pick<Job, 'exits' | 'blocks'>,
  drawables: readonly Drawable[],
  sheet: SheetId,
  view: Viewport,
): readonly Busy[] {
  const boxed = ({ min, max }: { readonly min: Vec3; readonly max: Vec3 }) =>
    boxAround(toScreen(project(min, sheet), view), toScreen(project(max, sheet), view));
  return [
    ...drawables.flatMap((item): readonly Busy[] => {
      const box = screenBox(item.bounds, view);
      if (item.kind === 'hood') return edgesOf(box);
      if (item.kind === 'bend') return aroundBend(item, view).map((piece) => ({ ...piece, solid: true }));
      return item.kind === 'leg' ? alongDuct(item, box, view) : [box];
    }),
    ...[...job.exits, ...job.blocks].flatMap((box) => edgesOf(boxed(box))),
  ];
}

/** Slanted duct as boxes along its centre line: one around all of it would hold much that is not duct. */
function alongDuct({ centre }: Drawable, box: Box, view: Viewport): readonly Box[] {
  const axis = centre.find((stroke) => stroke.kind === 'line');
  const [a, b] = [axis?.points[0], axis?.points.at(-1)];
  if (!a || !b) return [box];
  const [from, to] = [toScreen(a, view), toScreen(b, view)];
  const [dx, dy] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  if (dx < 2 || dy < 2) return [box];
  const length = Math.hypot(dx, dy);
  const [wide, high] = [box.maxX - box.minX - dx, box.maxY - box.minY - dy];
  const half = Math.max(1, Math.min((wide * length) / dy, (high * length) / dx) / 2);
  const pieces = Math.min(40, Math.max(1, Math.ceil(length / half)));
  return Array.from({ length: pieces }, (_, i) => {
    const share = (i + 0.5) / pieces;
    return boxAt(
      { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
      2 * half,
      2 * half,
    );
  });
}

/** A bend as boxes along its centre line: the corner that it cuts off stays free. */
function aroundBend({ centre, walls, bounds }: Drawable, view: Viewport): readonly Box[] {
  const axis = centre.flatMap(pointsOf);
  const [first] = axis;
  const ends = walls.flatMap(pointsOf);
  if (!first || ends.length === 0) return [screenBox(bounds, view)];
  const half = Math.max(
    1.5,
    view.scale * Math.min(...ends.map(({ u, v }) => Math.hypot(u - first.u, v - first.v))),
  );
  const spots = axis.map((point) => toScreen(point, view));
  return spots.slice(1).map((spot, i) => grown(boxAround(spots[i] ?? spot, spot), half * 0.8));
}

/** The four sides of a box as thin boxes, for what text may stand in but had better not cross. */
function edgesOf({ minX, minY, maxX, maxY }: Box): Busy[] {
  const sides = [
    { minX, minY, maxX, maxY: minY + 3 },
    { minX, minY: maxY - 3, maxX, maxY },
    { minX, minY, maxX: minX + 3, maxY },
    { minX: maxX - 3, minY, maxX, maxY },
  ];
  return sides.map((side) => ({ ...side, edge: true }));
}
