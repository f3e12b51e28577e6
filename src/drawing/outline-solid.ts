import { hoodProfile } from '../graph/bodies.ts';
import type { Hood, Vec3 } from '../graph/document.ts';
import type { RouteNode } from '../graph/route.ts';
import { add, cross, dot, normalize, scale } from '../graph/vector.ts';
import type { SheetLeg } from './outline.ts';
import { between, box, mean, type Solid, shown } from './solid.ts';
import { type Drawable, drawable } from './stroke.ts';
import type { View } from './view.ts';

/** A hood as the solids that it is made of: lip, canopy and neck. */
export function hoodSolids(
  node: RouteNode,
  hood: Hood,
  mountingHeight: number | undefined,
  view: View,
): Drawable[] {
  const [x, y, top] = node.at;
  const { width, depth, bottom, lip, shoulder, neck } = hoodProfile(hood, mountingHeight, top);
  const level = (a: number, b: number, z: number): Vec3[] => [
    [x - a, y - b, z],
    [x + a, y - b, z],
    [x + a, y + b, z],
    [x - a, y + b, z],
  ];
  const short = Math.min(neck, depth / 2);
  const parts = [
    box([x - width / 2, y - depth / 2, bottom], [x + width / 2, y + depth / 2, lip]),
    between(level(width / 2, depth / 2, lip), level(neck, short, shoulder)),
    between(level(neck, short, shoulder), level(neck, short, top)),
  ];
  return inOrder(parts, node.id, 'hood', dot(node.at, view.toward) - 0.2, view);
}

/** Outlines of a cap along the air and away from it, in halves of the duct's size, and how wide it is. */
interface Parts {
  readonly across: readonly { readonly from: number; readonly to: number; readonly reach: number }[];
  /** Sides of the plates and stacks: 4 for a wall's plate, more for what is round. */
  readonly sides: number;
  /** The profile of a wall cap's cover, along the air and up. */
  readonly cover?: readonly (readonly [number, number])[];
}

const wallPlate = { from: -0.06, to: 0.1, reach: 1.5 };
const slope = [
  [0.1, 1.2],
  [0.45, 1.2],
  [1.35, 0.15],
  [1.35, -1.05],
  [0.1, -1.05],
] as const;
const louvre = [
  [0.1, 1.2],
  [0.5, 1.2],
  [0.5, -1.2],
  [0.1, -1.2],
] as const;

function roof(gap: number, spread: number): Parts {
  return {
    sides: 16,
    across: [
      { from: -0.12, to: 0, reach: 1.9 },
      { from: 0, to: gap, reach: 1 },
      { from: gap + 0.35, to: gap + 0.6, reach: spread },
      { from: gap + 0.6, to: gap + 0.95, reach: spread * 0.6 },
    ],
  };
}

function partsOf(cap: string): Parts {
  if (cap === 'open') return { sides: 16, across: [] };
  if (cap.startsWith('roof-low')) return roof(0.25, 1.7);
  if (cap.startsWith('roof') || cap.startsWith('gooseneck')) return roof(0.8, 1.6);
  return { sides: 4, across: [wallPlate], cover: cap.startsWith('wall-louvre') ? louvre : slope };
}

/** A cap as plain solids at the end of its leg. */
export function capSolids(node: RouteNode, cap: string, leg: SheetLeg, view: View): Drawable[] {
  const along = leg.segment.direction;
  const up: Vec3 = Math.abs(along[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1];
  const side = normalize(cross(along, up));
  const top = cross(side, along);
  const { half } = leg;
  const spot = (a: number, s: number, t: number): Vec3 =>
    add(add(node.at, scale(along, a * half)), add(scale(side, s * half), scale(top, t * half)));
  const { across, sides, cover } = partsOf(cap);
  const ring = (a: number, reach: number): Vec3[] => {
    const far = sides === 4 ? reach * Math.SQRT2 : reach;
    return Array.from({ length: sides }, (_, i) => {
      const angle = ((i + 0.5) / sides) * 2 * Math.PI;
      return spot(a, far * Math.cos(angle), far * Math.sin(angle));
    });
  };
  const parts = across.map(({ from, to, reach }) => between(ring(from, reach), ring(to, reach)));
  if (cover)
    parts.push(
      between(
        cover.map(([a, t]) => spot(a, -1.1, t)),
        cover.map(([a, t]) => spot(a, 1.1, t)),
      ),
    );
  return inOrder(parts, node.id, 'cap', dot(node.at, view.toward) + half * 0.5, view);
}

/** Parts of one thing, the farther first. */
function inOrder(
  parts: readonly Solid[],
  id: string,
  kind: 'hood' | 'cap',
  near: number,
  view: View,
): Drawable[] {
  const depth = (solid: Solid) => dot(mean(solid.flat()), view.toward);
  return [...parts]
    .sort((a, b) => depth(a) - depth(b))
    .map((solid, i) =>
      drawable({ kind, id, of: 'node', colourOf: null, near: near + i * 0.002, ...shown(solid, view) }),
    );
}
