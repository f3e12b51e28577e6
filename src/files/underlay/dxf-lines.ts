import type {
  IArcEntity,
  IBlock,
  ICircleEntity,
  IDimensionEntity,
  IDxf,
  IEllipseEntity,
  IEntity,
  IInsertEntity,
  ILineEntity,
  ILwpolylineEntity,
  IMtextEntity,
  IPolylineEntity,
  ISolidEntity,
  ISplineEntity,
  ITextEntity,
} from 'dxf-parser';
import { words } from '../../words/index.ts';
import { Refused } from './picture.ts';
import {
  type Affine,
  after,
  bulgePoints,
  ellipsePoints,
  type Point,
  placed,
  same,
  splinePoints,
} from './plane.ts';

const says = words.underlayFiles.dxfLines;

export interface Words {
  readonly at: Point;
  readonly text: string;
  /** In units of the drawing. */
  readonly height: number;
  /** Degrees counter-clockwise. */
  readonly rotation: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** What a DXF drawing shows, laid flat: chains of points and words, in its units. */
export interface FlatDrawing {
  readonly lines: readonly (readonly Point[])[];
  readonly words: readonly Words[];
}

/** Blocks inside blocks that are followed. */
const DEEPEST = 12;

/** Points of a drawing that a browser still draws willingly. */
const MOST_POINTS = 1_500_000;

/** Flattens model space: blocks in their places, curves as chords. Layers that are off or frozen stay out. */
export function flatten(dxf: IDxf): FlatDrawing {
  const lines: (readonly Point[])[] = [];
  const words: Words[] = [];
  const layers = dxf.tables?.layer?.layers ?? {};
  let points = 0;

  const hidden = (entity: IEntity) => {
    const layer = layers[entity.layer];
    return (
      entity.visible === false || entity.inPaperSpace || layer?.visible === false || layer?.frozen === true
    );
  };
  const add = (chain: readonly Point[], place: Affine) => {
    points += chain.length;
    if (points > MOST_POINTS) throw new Refused(says.tooMany);
    if (chain.length > 1) lines.push(chain.map((point) => placed(point, place)));
  };
  const write = (text: Words, place: Affine) => {
    const turn = (Math.atan2(place[1], place[0]) * 180) / Math.PI;
    const grown = Math.sqrt(Math.abs(place[0] * place[3] - place[1] * place[2]));
    if (text.text.trim() !== '' && text.height > 0)
      words.push({
        ...text,
        at: placed(text.at, place),
        height: text.height * grown,
        rotation: text.rotation + turn,
      });
  };
  const walk = (entities: readonly IEntity[], place: Affine, depth: number) => {
    for (const entity of entities) {
      if (hidden(entity)) continue;
      const here = flipped(entity) ? after(place, [-1, 0, 0, 1, 0, 0]) : place;
      const chain = chainOf(entity);
      if (chain) add(chain, here);
      const text = wordsOf(entity);
      if (text) write(text, here);
      if (depth < DEEPEST)
        for (const { block, at } of blocksOf(entity, dxf.blocks ?? {}))
          walk(block.entities ?? [], after(here, at), depth + 1);
    }
  };
  walk(dxf.entities, same, 0);
  return {
    lines: lines.filter((chain) => chain.every(isSound)),
    words: words.filter(({ at }) => isSound(at)),
  };
}

function isSound([x, y]: Point): boolean {
  return Number.isFinite(x) && Number.isFinite(y);
}

/** Entities drawn on the back of their plane are mirrored. */
function flipped(entity: IEntity): boolean {
  const seen = entity as { extrusionDirectionZ?: number; extrusionDirection?: { z: number } };
  if (entity.type === 'LINE' || entity.type === 'ELLIPSE') return false;
  return (seen.extrusionDirectionZ ?? seen.extrusionDirection?.z ?? 1) < 0;
}

/** The points of an entity that draws one chain, in its own place. */
function chainOf(entity: IEntity): Point[] | null {
  switch (entity.type) {
    case 'LINE':
      return (entity as ILineEntity).vertices.map(flat);
    case 'LWPOLYLINE':
    case 'POLYLINE':
      return polyline(entity as ILwpolylineEntity | IPolylineEntity);
    case 'CIRCLE':
    case 'ARC': {
      const { center, radius, startAngle = 0, endAngle = 2 * Math.PI } = entity as IArcEntity | ICircleEntity;
      const sweep = entity.type === 'CIRCLE' ? 2 * Math.PI : ahead(startAngle, endAngle);
      return ellipsePoints(flat(center), [radius, 0], [0, radius], startAngle, sweep);
    }
    case 'ELLIPSE': {
      const { center, majorAxisEndPoint: major, axisRatio, startAngle, endAngle } = entity as IEllipseEntity;
      const minor: Point = [-major.y * axisRatio, major.x * axisRatio];
      return ellipsePoints(flat(center), flat(major), minor, startAngle, ahead(startAngle, endAngle));
    }
    case 'SPLINE': {
      const { controlPoints, fitPoints, knotValues, degreeOfSplineCurve } = entity as ISplineEntity;
      if (!controlPoints?.length) return (fitPoints ?? []).map(flat);
      return splinePoints(controlPoints.map(flat), knotValues ?? [], degreeOfSplineCurve);
    }
    case 'SOLID': {
      const [a, b, c, d] = (entity as ISolidEntity).points.map(flat);
      return a && b && c ? [a, b, d ?? c, c, a] : null;
    }
    default:
      return null;
  }
}

function polyline({ vertices, shape }: ILwpolylineEntity | IPolylineEntity): Point[] {
  const [first] = vertices ?? [];
  if (!first) return [];
  const corners = shape ? [...vertices, first] : vertices;
  const points: Point[] = [flat(first)];
  for (let i = 1; i < corners.length; i++) {
    const [from, to] = [corners[i - 1], corners[i]];
    if (from && to) points.push(...bulgePoints(flat(from), flat(to), from.bulge ?? 0));
  }
  return points;
}

/** Blocks that an entity shows, and where: an insert once for each row and column, a dimension its picture. */
function blocksOf(
  entity: IEntity,
  blocks: Readonly<Record<string, IBlock>>,
): { readonly block: IBlock; readonly at: Affine }[] {
  if (entity.type === 'DIMENSION') {
    const block = blocks[(entity as IDimensionEntity).block];
    return block ? [{ block, at: same }] : [];
  }
  if (entity.type !== 'INSERT') return [];
  const insert = entity as IInsertEntity;
  const block = blocks[insert.name];
  if (!block) return [];
  const turn = ((insert.rotation ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [sx, sy] = [insert.xScale ?? 1, insert.yScale ?? 1];
  const base = block.position ?? { x: 0, y: 0 };
  const [columns, rows] = [Math.min(insert.columnCount ?? 1, 100), Math.min(insert.rowCount ?? 1, 100)];
  return Array.from({ length: Math.max(1, columns * rows) }, (_, i) => {
    const dx = (i % columns) * (insert.columnSpacing ?? 0);
    const dy = Math.floor(i / columns) * (insert.rowSpacing ?? 0);
    const origin: Affine = [
      c,
      s,
      -s,
      c,
      insert.position.x + c * dx - s * dy,
      insert.position.y + s * dx + c * dy,
    ];
    return { block, at: after(origin, [sx, 0, 0, sy, -base.x * sx, -base.y * sy]) };
  });
}

const anchors = ['start', 'middle', 'end'] as const;

function wordsOf(entity: IEntity): Words | null {
  if (entity.type === 'TEXT') {
    const { startPoint, endPoint, textHeight, text, rotation = 0, halign = 0 } = entity as ITextEntity;
    const at = halign > 0 && endPoint ? endPoint : startPoint;
    if (!at) return null;
    return {
      at: flat(at),
      text: plainText(text),
      height: textHeight,
      rotation,
      anchor: anchors[halign] ?? 'start',
    };
  }
  if (entity.type === 'MTEXT') {
    const {
      position,
      height,
      text,
      rotation = 0,
      directionVector,
      attachmentPoint = 1,
    } = entity as IMtextEntity;
    if (!position) return null;
    const turned = directionVector
      ? (Math.atan2(directionVector.y, directionVector.x) * 180) / Math.PI
      : rotation;
    const drop = [1, 0.5, 0][Math.floor((attachmentPoint - 1) / 3)] ?? 0;
    const tilt = (turned * Math.PI) / 180;
    const at: Point = [
      position.x + drop * height * Math.sin(tilt),
      position.y - drop * height * Math.cos(tilt),
    ];
    const anchor = anchors[(attachmentPoint - 1) % 3] ?? 'start';
    return { at, text: plainText(text), height, rotation: turned, anchor };
  }
  return null;
}

/** Words without the codes for fonts and signs; lines of a paragraph one after the other. */
function plainText(text: string | undefined): string {
  return (text ?? '')
    .replace(/%%c/gi, 'Ø')
    .replace(/%%d/gi, '°')
    .replace(/%%p/gi, '±')
    .replace(/%%[uok]/gi, '')
    .replace(/\\P/g, ' ')
    .replace(/\\[ACFHQTWfp][^;\\]*;/g, '')
    .replace(/\\[LlOoKkNX~]/g, ' ')
    .replace(/\\([\\{}])/g, '$1')
    .replace(/[{}]/g, '');
}

function flat({ x, y }: { x: number; y: number }): Point {
  return [x, y];
}

/** From one angle on to the next, radians in (0, 2π]. */
function ahead(start: number, end: number): number {
  const sweep = (end - start) % (2 * Math.PI);
  return sweep <= 1e-9 ? sweep + 2 * Math.PI : sweep;
}
