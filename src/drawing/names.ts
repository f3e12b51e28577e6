import type { Job, Vec3 } from '../graph/document.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import { type Box, type Busy, boxAround } from './label-place.ts';
import type { Name } from './labels.ts';
import type { Drawable } from './stroke.ts';
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
    ...drawables.flatMap(({ kind, bounds }) => {
      const box = screenBox(bounds, view);
      return kind === 'hood' ? edgesOf(box) : [box];
    }),
    ...[...job.exits, ...job.blocks].flatMap((box) => edgesOf(boxed(box))),
  ];
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
