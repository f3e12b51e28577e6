import type { Job } from '../graph/document.ts';
import type { Route } from '../graph/route.ts';
import { project, type SheetId } from '../graph/sheet.ts';
import { outlineOf } from './outline.ts';
import type { Palette } from './palette.ts';
import type { Drawable } from './stroke.ts';
import { inMillimetres, svgLines, svgOutlines, svgScale } from './svg-pen.ts';
import { type Bounds, boundsOf } from './viewport.ts';

/** The colours that a drawing of a route needs; custom properties do as well as values. */
export type DrawingColours = Pick<
  Palette,
  'sheet' | 'ink' | 'muted' | 'hairline' | 'wall' | 'unsolved' | 'block' | 'exit' | 'ok'
>;

interface SheetDrawingProps {
  readonly job: Job;
  readonly route: Route;
  readonly sheet: SheetId;
  /** What is shown, m; so several drawings have one scale. */
  readonly bounds: Bounds;
  readonly colours: DrawingColours;
  /** Fill by segment id, where ducts are coloured. */
  readonly fills?: ReadonlyMap<string, string>;
  /** What it shows, for those who do not see it. */
  readonly label: string;
  readonly className?: string;
}

/** A route on one sheet as a picture made of vectors: duct to scale, with blocks and exits behind it. */
export function SheetDrawing(props: SheetDrawingProps) {
  const { job, route, sheet, bounds, colours, fills, label, className } = props;
  const box = {
    x: bounds.minU * svgScale,
    y: -bounds.maxV * svgScale,
    width: (bounds.maxU - bounds.minU) * svgScale,
    height: (bounds.maxV - bounds.minV) * svgScale,
  };
  return (
    <svg
      className={className}
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="img"
      aria-label={label}
      fill="none"
      strokeLinejoin="round"
    >
      {job.exits.map((face) => (
        <Box key={face.id} box={face} sheet={sheet} fill={colours.exit} edge={colours.ok} />
      ))}
      {job.blocks.map((block) => (
        <Box key={block.id} box={block} sheet={sheet} fill={colours.block} edge={colours.hairline} />
      ))}
      {outlineOf(route, job, sheet).drawables.map((item) => (
        <Item key={`${item.kind}/${item.id}/${item.near}`} item={item} colours={colours} fills={fills} />
      ))}
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
  readonly fill: string;
  readonly edge: string;
}

function Box({ box, sheet, fill, edge }: BoxProps) {
  const [a, b] = [inMillimetres(project(box.min, sheet)), inMillimetres(project(box.max, sheet))];
  return (
    <rect
      x={Math.min(a.x, b.x)}
      y={Math.min(a.y, b.y)}
      width={Math.abs(b.x - a.x)}
      height={Math.abs(b.y - a.y)}
      fill={fill}
      stroke={edge}
      strokeWidth="0.75"
      vectorEffect="non-scaling-stroke"
    />
  );
}

interface ItemProps {
  readonly item: Drawable;
  readonly colours: DrawingColours;
  readonly fills: ReadonlyMap<string, string> | undefined;
}

function Item({ item, colours, fills }: ItemProps) {
  const colour = item.colourOf === null ? colours.sheet : (fills?.get(item.colourOf) ?? colours.unsolved);
  return (
    <g>
      <path d={svgOutlines(item.fill, inMillimetres)} fill={colour} />
      <path
        d={svgLines(item.fine, inMillimetres)}
        stroke={colours.wall}
        strokeWidth="0.5"
        strokeOpacity="0.6"
        vectorEffect="non-scaling-stroke"
      />
      <path d={svgOutlines(item.solid, inMillimetres)} fill={colours.wall} />
      <path
        d={svgLines(item.walls, inMillimetres)}
        stroke={colours.wall}
        strokeWidth="1"
        vectorEffect="non-scaling-stroke"
      />
    </g>
  );
}
