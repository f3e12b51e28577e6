import type { ReactNode } from 'react';
import type { Drawable, Stroke } from '../drawing/stroke.ts';
import { inMillimetres, svgLines, svgOutlines, svgScale } from '../drawing/svg-pen.ts';
import type { Bounds } from '../drawing/viewport.ts';

/** Path data of strokes, in mm with y down, arcs as true arcs; `closed` joins them to one closed path. */
export function svgPath(strokes: readonly Stroke[], closed = false): string {
  if (strokes.length === 0) return '';
  return closed ? svgOutlines([strokes], inMillimetres) : svgLines(strokes, inMillimetres);
}

/** An `svg` view box around bounds in metres, with a margin in metres. */
export function viewBoxOf(bounds: Bounds, margin = 0): string {
  const width = bounds.maxU - bounds.minU + 2 * margin;
  const height = bounds.maxV - bounds.minV + 2 * margin;
  return [bounds.minU - margin, -bounds.maxV - margin, width, height]
    .map((value) => round(value * svgScale))
    .join(' ');
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

function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
