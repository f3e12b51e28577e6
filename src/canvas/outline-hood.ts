import type { Hood } from '../graph/document.ts';
import type { RouteNode } from '../graph/route.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { dot } from '../graph/vector.ts';
import { type Drawable, drawable, line, polygon } from './stroke.ts';
import { seen } from './tube.ts';
import type { View } from './view.ts';

/** Depth of a hood, width of one that does not say, and counter height, m: common practice. */
export const usualDepth = 0.56;
export const usualWidth = 0.76;
export const counterHeight = 0.914;
/** Height of the lip at the bottom of a canopy, m. */
const lip = 0.06;

/**
 * A hood below its collar: a rectangle in plan, a canopy with its lip in elevation. Its underside is
 * where the mounting height puts it above a counter, kept below the collar.
 */
export function hoodDrawable(
  node: RouteNode,
  hood: Hood,
  mountingHeight: number | undefined,
  view: View,
): Drawable {
  const plan = Math.abs(view.toward[2]) > 0.5;
  const width = hood.width ?? usualWidth;
  const depth = hood.depth ?? usualDepth;
  const at = seen(node.at, view);
  const base = { kind: 'hood', id: node.id, of: 'node', colourOf: null } as const;
  if (plan) {
    const [w, d] = [width / 2, depth / 2];
    const inset = 0.05;
    const corner = (a: number, b: number): SheetPoint => ({ u: at.u + a, v: at.v + b });
    const box = (by: number) =>
      polygon([
        corner(-w + by, -d + by),
        corner(w - by, -d + by),
        corner(w - by, d - by),
        corner(-w + by, d - by),
      ]);
    return drawable({
      ...base,
      near: dot(node.at, view.toward) - 0.2,
      fill: [[box(0)]],
      walls: [box(0)],
      fine: [box(inset)],
    });
  }
  const across = Math.abs(view.right[0]) > 0.5 ? width : depth;
  const bottom = Math.min(at.v - 0.15, counterHeight + (mountingHeight ?? 0.71));
  const collar = (hood.collar.shape === 'round' ? hood.collar.diameter : hood.collar.width) / 2;
  const shoulder = Math.max(bottom + lip + 0.04, Math.min(at.v - 0.02, bottom + 0.28));
  const neck = collar + 0.04;
  const point = (u: number, v: number): SheetPoint => ({ u: at.u + u, v });
  const canopy = polygon([
    point(-across / 2, bottom),
    point(across / 2, bottom),
    point(across / 2, bottom + lip),
    point(neck, shoulder),
    point(neck, at.v),
    point(-neck, at.v),
    point(-neck, shoulder),
    point(-across / 2, bottom + lip),
  ]);
  return drawable({
    ...base,
    near: dot(node.at, view.toward) - 0.2,
    fill: [[canopy]],
    walls: [canopy],
    fine: [
      line(point(-across / 2, bottom + lip), point(across / 2, bottom + lip)),
      line(point(-neck, shoulder), point(neck, shoulder)),
    ],
  });
}
