import { outlineOf } from '../drawing/outline.ts';
import { inMillimetres } from '../drawing/svg-pen.ts';
import { type Bounds, boundsOf } from '../drawing/viewport.ts';
import type { Job } from '../graph/document.ts';
import type { Route } from '../graph/route.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import { SheetSvg, viewBoxOf } from './sheet-svg.tsx';

interface RouteDrawingProps {
  readonly job: Job;
  readonly route: Route;
  readonly sheet: SheetId;
  /** What is shown, m; so several drawings have one scale. */
  readonly bounds: Bounds;
  /** What it shows, for those who do not see it. */
  readonly label: string;
  readonly className: string;
}

/**
 * A route on one sheet as a picture made of vectors, to scale: its duct with blocks and exits behind it. The
 * colours are the page's, by class.
 */
export function RouteDrawing({ job, route, sheet, bounds, label, className }: RouteDrawingProps) {
  return (
    <svg className={className} viewBox={viewBoxOf(bounds)} role="img" aria-label={label}>
      {job.exits.map((face) => (
        <Box key={face.id} box={face} sheet={sheet} className="drawn-exit" />
      ))}
      {job.blocks.map((block) => (
        <Box key={block.id} box={block} sheet={sheet} className="drawn-block" />
      ))}
      <SheetSvg drawables={outlineOf(route, job, sheet).drawables} />
    </svg>
  );
}

/** What routes cover on a sheet, with a margin, m; null where none is drawn. */
export function drawnBounds(
  job: Job,
  routes: readonly Route[],
  sheet: SheetId,
  margin = 0.25,
): Bounds | null {
  const corners = routes.flatMap((route) =>
    outlineOf(route, job, sheet).drawables.flatMap(({ bounds }) => [
      { u: bounds.minU, v: bounds.minV },
      { u: bounds.maxU, v: bounds.maxV },
    ]),
  );
  return boundsOf(corners, margin);
}

interface BoxProps {
  readonly box: Pick<Job['blocks'][number], 'min' | 'max'>;
  readonly sheet: SheetId;
  readonly className: string;
}

function Box({ box, sheet, className }: BoxProps) {
  const [a, b] = [inMillimetres(project(box.min, sheet)), inMillimetres(project(box.max, sheet))];
  return (
    <rect
      className={className}
      x={Math.min(a.x, b.x)}
      y={Math.min(a.y, b.y)}
      width={Math.abs(b.x - a.x)}
      height={Math.abs(b.y - a.y)}
      vectorEffect="non-scaling-stroke"
    />
  );
}
