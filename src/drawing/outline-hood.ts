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
const lipHeight = 0.06;

function plan(hood: Hood) {
  return { width: hood.width ?? usualWidth, depth: hood.depth ?? usualDepth };
}

/**
 * The measures of a hood whose collar is `top` m above the floor: its plan, the heights of its underside,
 * of the lip's upper edge and of the shoulder where canopy meets neck, and half the neck's width.
 */
export function hoodProfile(hood: Hood, mountingHeight: number | undefined, top: number) {
  const bottom = Math.min(top - 0.15, counterHeight + (mountingHeight ?? 0.71));
  const lip = bottom + lipHeight;
  const shoulder = Math.max(lip + 0.04, Math.min(top - 0.02, bottom + 0.28));
  const collar = (hood.collar.shape === 'round' ? hood.collar.diameter : hood.collar.width) / 2;
  return { ...plan(hood), bottom, lip, shoulder, neck: collar + 0.04 };
}

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
  const fromAbove = Math.abs(view.toward[2]) > 0.5;
  const { width, depth } = plan(hood);
  const at = seen(node.at, view);
  const base = { kind: 'hood', id: node.id, of: 'node', colourOf: null } as const;
  if (fromAbove) {
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
  const { bottom, lip, shoulder, neck } = hoodProfile(hood, mountingHeight, at.v);
  const point = (u: number, v: number): SheetPoint => ({ u: at.u + u, v });
  const canopy = polygon([
    point(-across / 2, bottom),
    point(across / 2, bottom),
    point(across / 2, lip),
    point(neck, shoulder),
    point(neck, at.v),
    point(-neck, at.v),
    point(-neck, shoulder),
    point(-across / 2, lip),
  ]);
  return drawable({
    ...base,
    near: dot(node.at, view.toward) - 0.2,
    fill: [[canopy]],
    walls: [canopy],
    fine: [
      line(point(-across / 2, lip), point(across / 2, lip)),
      line(point(-neck, shoulder), point(neck, shoulder)),
    ],
  });
}
