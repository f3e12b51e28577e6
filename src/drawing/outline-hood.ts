import { hoodProfile } from '../graph/bodies.ts';
import type { Hood } from '../graph/document.ts';
import type { RouteNode } from '../graph/route.ts';
import type { SheetPoint } from '../graph/sheet.ts';
import { dot } from '../graph/vector.ts';
import { type Drawable, drawable, line, polygon } from './stroke.ts';
import { seen } from './tube.ts';
import type { View } from './view.ts';

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
  const at = seen(node.at, view);
  const { width, depth, bottom, lip, shoulder, neck } = hoodProfile(hood, mountingHeight, node.at[2]);
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
