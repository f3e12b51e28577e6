import type { SheetPoint } from '../graph/sheet.ts';
import type { Bounds } from './viewport.ts';

/** A line or a true circular arc on a sheet, in metres and radians. */
export type Stroke =
  | { readonly kind: 'line'; readonly points: readonly SheetPoint[]; readonly closed?: boolean }
  | {
      readonly kind: 'arc';
      readonly centre: SheetPoint;
      readonly radius: number;
      /** From the `u` axis, counter-clockwise; the arc runs from `start` to `end` whichever is larger. */
      readonly start: number;
      readonly end: number;
    };

export type DrawableKind = 'leg' | 'riser' | 'bend' | 'transition' | 'joint' | 'cap' | 'hood' | 'in-line';

/** One thing on a sheet, ready to draw, in sheet metres. */
export interface Drawable {
  readonly kind: DrawableKind;
  /** Node or segment id. */
  readonly id: string;
  readonly of: 'node' | 'segment';
  /** The segment whose value colours it; null where it is drawn in paper. */
  readonly colourOf: string | null;
  /** How near to the viewer, m: what is nearer is drawn later. */
  readonly near: number;
  readonly bounds: Bounds;
  /** Closed paths, each a chain of strokes. */
  readonly fill: readonly (readonly Stroke[])[];
  /** Outlines: walls and bodies. */
  readonly walls: readonly Stroke[];
  /** Centre lines. */
  readonly centre: readonly Stroke[];
  /** Finer lines: gores, ribs, joints, glyphs. */
  readonly fine: readonly Stroke[];
  /** Closed paths filled with ink: the marks of risers and dampers. */
  readonly solid: readonly (readonly Stroke[])[];
}

export function line(...points: readonly SheetPoint[]): Stroke {
  return { kind: 'line', points };
}

export function polygon(points: readonly SheetPoint[]): Stroke {
  return { kind: 'line', points, closed: true };
}

export function circle(centre: SheetPoint, radius: number): Stroke {
  return { kind: 'arc', centre, radius, start: 0, end: 2 * Math.PI };
}

/** A point of an arc at an angle, m. */
export function onCircle(centre: SheetPoint, radius: number, angle: number): SheetPoint {
  return { u: centre.u + radius * Math.cos(angle), v: centre.v + radius * Math.sin(angle) };
}

/** The same arc or line run the other way. */
export function reversed(stroke: Stroke): Stroke {
  return stroke.kind === 'arc'
    ? { ...stroke, start: stroke.end, end: stroke.start }
    : { ...stroke, points: [...stroke.points].reverse() };
}

/** Points along a stroke, arcs sampled about every 10°. */
export function pointsOf(stroke: Stroke): readonly SheetPoint[] {
  if (stroke.kind === 'line') return stroke.points;
  const steps = Math.max(2, Math.ceil(Math.abs(stroke.end - stroke.start) / 0.17));
  return Array.from({ length: steps + 1 }, (_, i) =>
    onCircle(stroke.centre, stroke.radius, stroke.start + ((stroke.end - stroke.start) * i) / steps),
  );
}

type Drawn = Omit<Drawable, 'bounds' | 'fill' | 'walls' | 'centre' | 'fine' | 'solid'> &
  Partial<Pick<Drawable, 'fill' | 'walls' | 'centre' | 'fine' | 'solid'>>;

/** Fills in what a drawable leaves out, and its bounds. */
export function drawable(drawn: Drawn): Drawable {
  const { fill = [], walls = [], centre = [], fine = [], solid = [] } = drawn;
  const bounds = { minU: Infinity, minV: Infinity, maxU: -Infinity, maxV: -Infinity };
  for (const stroke of [...fill.flat(), ...walls, ...centre, ...fine, ...solid.flat()])
    for (const { u, v } of pointsOf(stroke)) {
      bounds.minU = Math.min(bounds.minU, u);
      bounds.minV = Math.min(bounds.minV, v);
      bounds.maxU = Math.max(bounds.maxU, u);
      bounds.maxV = Math.max(bounds.maxV, v);
    }
  return { ...drawn, fill, walls, centre, fine, solid, bounds };
}
