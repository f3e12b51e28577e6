import type { ReactNode } from 'react';
import { type Drawable, pointsOf, type Stroke } from './stroke.ts';
import type { Bounds } from './viewport.ts';

/** Millimetres a metre: numbers of a handy size in the markup. */
const MM = 1000;

/** Path data of strokes, in mm with y down; `closed` joins them to one closed path. */
export function svgPath(strokes: readonly Stroke[], closed = false): string {
  const data = strokes
    .map((stroke, i) => {
      const [first, ...rest] = pointsOf(fine(stroke));
      if (!first) return '';
      const start = `${closed && i > 0 ? 'L' : 'M'}${at(first)}`;
      const end = stroke.kind === 'line' && stroke.closed ? 'Z' : '';
      return `${start}${rest.map((point) => `L${at(point)}`).join('')}${end}`;
    })
    .join('');
  return closed && data !== '' ? `${data}Z` : data;
}

/** An `svg` view box around bounds in metres, with a margin in metres. */
export function viewBoxOf(bounds: Bounds, margin = 0): string {
  const width = bounds.maxU - bounds.minU + 2 * margin;
  const height = bounds.maxV - bounds.minV + 2 * margin;
  return [bounds.minU - margin, -bounds.maxV - margin, width, height]
    .map((value) => round(value * MM))
    .join(' ');
}

/** The smallest rectangle around drawables; null for none. */
export function boundsOfDrawables(drawables: readonly Drawable[]): Bounds | null {
  const [first, ...rest] = drawables.map((item) => item.bounds);
  if (!first) return null;
  return rest.reduce(
    (sum, each) => ({
      minU: Math.min(sum.minU, each.minU),
      minV: Math.min(sum.minV, each.minV),
      maxU: Math.max(sum.maxU, each.maxU),
      maxV: Math.max(sum.maxV, each.maxV),
    }),
    first,
  );
}

interface SheetSvgProps {
  readonly drawables: readonly Drawable[];
  /** Fill by drawable; paper where it gives none. */
  readonly fillOf?: (item: Drawable) => string | undefined;
  /** Whether a drawable stands out. */
  readonly lit?: (item: Drawable) => boolean;
}

/**
 * The sheets' own outlines as SVG, true to scale in mm. Walls, centre lines and finer lines have classes of
 * their own, and keep their width at any scale; the colours are the page's.
 */
export function SheetSvg({ drawables, fillOf, lit }: SheetSvgProps): ReactNode {
  return drawables.map((item) => (
    <g
      key={`${item.kind} ${item.of} ${item.id} ${item.near} ${item.bounds.minU}`}
      className={lit?.(item) ? 'drawn lit' : 'drawn'}
      data-kind={item.kind}
    >
      {item.fill.map((path) => {
        const d = svgPath(path, true);
        const fill = fillOf?.(item);
        return <path key={d} d={d} className="drawn-fill" {...(fill ? { style: { fill } } : {})} />;
      })}
      <Lines strokes={item.fine} className="drawn-fine" />
      <Lines strokes={item.centre} className="drawn-centre" />
      <Lines strokes={item.walls} className="drawn-wall" />
      {item.solid.map((path) => {
        const d = svgPath(path, true);
        return <path key={d} d={d} className="drawn-solid" />;
      })}
    </g>
  ));
}

function Lines({ strokes, className }: { strokes: readonly Stroke[]; className: string }) {
  if (strokes.length === 0) return null;
  return <path d={svgPath(strokes)} className={className} vectorEffect="non-scaling-stroke" fill="none" />;
}

/** Arcs as chords too short to be seen. */
function fine(stroke: Stroke): Stroke {
  if (stroke.kind === 'line') return stroke;
  const steps = Math.max(8, Math.ceil(Math.abs(stroke.end - stroke.start) / 0.05));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const angle = stroke.start + ((stroke.end - stroke.start) * i) / steps;
    return {
      u: stroke.centre.u + stroke.radius * Math.cos(angle),
      v: stroke.centre.v + stroke.radius * Math.sin(angle),
    };
  });
  return { kind: 'line', points };
}

function at({ u, v }: { readonly u: number; readonly v: number }): string {
  return `${round(u * MM)} ${round(-v * MM)}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
