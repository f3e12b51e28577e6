import { DxfWriter, point3d, TextHorizontalAlignment, TextVerticalAlignment, Units } from '@tarikjabiri/dxf';
import type { LayerId, Mark, SheetDrawing, TextMark } from '../../drawing/marks.ts';
import type { Stroke } from '../../drawing/stroke.ts';
import type { Route } from '../../graph/route.ts';
import type { SheetPoint } from '../../graph/sheet.ts';
import { dxfText } from './drawing-text.ts';
import { brokenLines, type DxfFile, dimensioning } from './dxf-dimension.ts';

export interface DxfQuery {
  readonly drawings: readonly SheetDrawing[];
  /** The route whose legs are drawn in space; none where only sheets are wanted. */
  readonly space?: Route;
}

interface DxfLayer {
  readonly name: string;
  /** AutoCAD colour index. */
  readonly colour: number;
  readonly line: keyof typeof lineTypes;
}

const layers: Readonly<Record<Exclude<LayerId, 'fill'> | 'space', DxfLayer>> = {
  exits: { name: 'EXITS', colour: 94, line: 'Continuous' },
  blocks: { name: 'BLOCKS', colour: 8, line: 'Continuous' },
  hatch: { name: 'HATCH', colour: 9, line: 'Continuous' },
  room: { name: 'ROOM', colour: 8, line: 'Continuous' },
  hood: { name: 'HOOD', colour: 30, line: 'Continuous' },
  cap: { name: 'CAP', colour: 30, line: 'Continuous' },
  duct: { name: 'DUCT', colour: 7, line: 'Continuous' },
  fittings: { name: 'DUCT-FITTINGS', colour: 5, line: 'Continuous' },
  parts: { name: 'DUCT-PARTS', colour: 6, line: 'Continuous' },
  centre: { name: 'DUCT-CENTRE', colour: 1, line: 'CENTER' },
  flow: { name: 'DUCT-FLOW', colour: 7, line: 'Continuous' },
  names: { name: 'NAMES', colour: 8, line: 'Continuous' },
  labels: { name: 'LABELS', colour: 3, line: 'Continuous' },
  dimensions: { name: 'DIMENSIONS', colour: 3, line: 'Continuous' },
  notes: { name: 'NOTES', colour: 2, line: 'Continuous' },
  space: { name: 'DUCT-CENTRE-3D', colour: 1, line: 'Continuous' },
};

/** Dashes and gaps, mm of paper; a gap is negative. */
const lineTypes = {
  Continuous: [],
  CENTER: [6, -1.5, 1.5, -1.5],
  DASHED: [3, -1.5],
} as const;

/** Height of capital letters, parts of the font size. */
const capitals = 0.73;

/** Room between views in one file, mm of the building. */
const apart = 2000;

type Space = Pick<
  DxfWriter,
  'addArc' | 'addCircle' | 'addLinearDim' | 'addLWPolyline' | 'addLine' | 'addText'
>;

/**
 * Drawings as one DXF file in millimetres, model space 1 : 1, on layers by trade meaning. A single sheet keeps its
 * own coordinates; of several each is a block inserted beside the others, with its coordinates kept inside. Arcs
 * are arcs, dimensions are dimensions. Fills are left out. The run in space is its legs from node to node, in the
 * coordinates of the house.
 */
export function dxfFile({ drawings, space }: DxfQuery): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Gentlebend' });
  const scale = drawings[0]?.scale ?? 50;
  for (const [name, parts] of Object.entries(lineTypes))
    if (parts.length > 0)
      dxf.addLType(
        name,
        name,
        parts.map((mm) => mm * scale),
      );
  for (const { name, colour, line } of Object.values(layers)) dxf.addLayer(name, colour, line);
  const file = dimensioning(dxf, scale, capitals);
  const alone = drawings.length + (space ? 1 : 0) === 1;
  let left = 0;
  for (const drawing of drawings) {
    const target = alone ? dxf : dxf.addBlock(blockNames[drawing.sheet]);
    drawSheet(target, drawing, file);
    if (alone) continue;
    const { minU, maxU, minV } = drawing.bounds;
    dxf.addInsert(blockNames[drawing.sheet], point3d(left - minU * 1000, -minV * 1000, 0));
    left += (maxU - minU) * 1000 + apart;
  }
  if (space) {
    const target = alone ? dxf : dxf.addBlock(blockNames.space);
    drawSpace(target, space);
    if (!alone) dxf.addInsert(blockNames.space, point3d(left, 0, 0));
  }
  return dxf.stringify();
}

const blockNames = {
  floor: 'FLOOR',
  'section-x': 'SECTION-NORTH',
  'section-y': 'SECTION-WEST',
  isometric: 'ISOMETRIC',
  space: 'RUN-3D',
} as const;

function drawSheet(to: Space, drawing: SheetDrawing, file: DxfFile): void {
  for (const { id, marks } of drawing.layers) {
    if (id === 'fill') continue;
    const { name } = layers[id];
    for (const mark of marks) drawMark(to, mark, name, drawing.scale, file);
  }
}

function drawMark(to: Space, mark: Mark, layerName: string, scale: number, file: DxfFile): void {
  if (mark.kind === 'fill') return;
  if (mark.kind === 'text') drawText(to, mark, layerName, scale);
  else if (mark.kind === 'line') {
    const dashed = mark.pen.dash !== undefined && layerName !== layers.centre.name;
    for (const stroke of mark.strokes) drawStroke(to, stroke, layerName, dashed ? 'DASHED' : undefined);
  } else {
    const [from, till] = mark.line;
    const picture = file.addPicture();
    for (const stroke of brokenLines(mark, scale)) drawStroke(picture, stroke, layerName, undefined);
    drawText(picture, mark.text, layerName, scale);
    to.addLinearDim(at(mark.feet[0]), at(mark.feet[1]), {
      layerName,
      blockName: picture.name,
      styleName: 'Standard',
      definitionPoint: at(till),
      middlePoint: at(mark.text.at),
      angle: degrees(Math.atan2(till.v - from.v, till.u - from.u)) % 180,
      ActualMeasurement: mm(Math.hypot(till.u - from.u, till.v - from.v)),
      text: dxfText(mark.text.text),
    });
  }
}

function at({ u, v }: SheetPoint) {
  return point3d(mm(u), mm(v), 0);
}

/** Metres to millimetres, to a millionth of one. */
function mm(metres: number): number {
  return Math.round(metres * 1e9) / 1e6 + 0;
}

function drawStroke(to: Space, stroke: Stroke, layerName: string, lineType: string | undefined): void {
  const options = { layerName, ...(lineType ? { lineType } : {}) };
  if (stroke.kind === 'arc') {
    const { centre, radius, start, end } = stroke;
    const [from, till] = start < end ? [start, end] : [end, start];
    if (till - from > 2 * Math.PI - 1e-9) to.addCircle(at(centre), mm(radius), options);
    else to.addArc(at(centre), mm(radius), degrees(from), degrees(till), options);
    return;
  }
  const [first, second, ...more] = stroke.points;
  if (!first || !second) return;
  if (more.length === 0 && !stroke.closed) to.addLine(at(first), at(second), options);
  else
    to.addLWPolyline(
      stroke.points.map((point) => ({ point: at(point) })),
      { ...options, flags: stroke.closed ? 1 : 0 },
    );
}

/** Radians to degrees from 0 to 360. */
function degrees(angle: number): number {
  const turned = ((angle * 180) / Math.PI) % 360;
  return turned < 0 ? turned + 360 : turned;
}

const sides = {
  left: TextHorizontalAlignment.Left,
  centre: TextHorizontalAlignment.Center,
  right: TextHorizontalAlignment.Right,
} as const;

function drawText(to: Space, { at: place, align, text, size }: TextMark, layerName: string, scale: number) {
  const value = dxfText(text);
  if (value.trim() === '') return;
  to.addText(at(place), size * capitals * scale, value, {
    layerName,
    horizontalAlignment: sides[align],
    verticalAlignment: TextVerticalAlignment.Middle,
    secondAlignmentPoint: at(place),
  });
}

/** Legs from node to node in space. */
function drawSpace(to: Space, { segments, nodes }: Route): void {
  const place = (id: string) => nodes.get(id)?.at.map(mm) as [number, number, number] | undefined;
  for (const { from, to: till } of segments.values()) {
    const [a, b] = [place(from), place(till)];
    if (a && b) to.addLine(point3d(...a), point3d(...b), { layerName: layers.space.name });
  }
}
