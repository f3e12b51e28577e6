import { inkOnFill, textOn } from './colour.ts';
import { arrowOf } from './flow-arrow.ts';
import { type HiddenLines, hiddenLines } from './hidden-lines.ts';
import { type LayerId, type Paint, type Pen, PX } from './marks.ts';
import type { Layered, Setting } from './sheet-drawing.ts';
import { type Drawable, type DrawableKind, polygon } from './stroke.ts';
import { toSheet } from './viewport.ts';

const layerOf: Readonly<Record<DrawableKind, LayerId>> = {
  leg: 'duct',
  riser: 'duct',
  bend: 'fittings',
  transition: 'fittings',
  joint: 'fittings',
  'in-line': 'parts',
  cap: 'cap',
  hood: 'hood',
};

const bodyPen: Pen = { paint: 'wall', width: 1.25 * PX };
const ductPen: Pen = { paint: 'wall', width: 1.5 * PX };
const arrowPen: Pen = { paint: 'wall', width: PX };

/** Duct, fittings, caps, hoods, centre lines and arrows of the flow; with what hides lines among them. */
export function ductMarks(setting: Setting): {
  readonly marks: readonly Layered[];
  readonly hidden: HiddenLines;
} {
  const { outline, fills } = setting;
  const hidden = hiddenLines(outline.drawables);
  const marks = outline.drawables.flatMap((item, order): Layered[] => {
    const { id: of } = item;
    const colour = item.colourOf === null ? undefined : fills.get(item.colourOf);
    const paint: Paint = item.colourOf === null ? 'sheet' : ((colour ?? 'unsolved') as Paint);
    const inside: Paint = colour ? inkOnFill[textOn(colour)] : 'wall';
    const layer = layerOf[item.kind];
    const lines = (strokes: Drawable['walls'], on: LayerId, pen: Pen): Layered[] => {
      const left = hidden.visible(strokes, order);
      return left.length > 0 ? [[on, { kind: 'line', strokes: left, pen, of }]] : [];
    };
    const duct = item.kind === 'leg' || item.kind === 'bend';
    return [
      ...item.fill.map((path): Layered => ['fill', { kind: 'fill', outline: path, paint, of }]),
      ...item.solid.map((path): Layered => ['fill', { kind: 'fill', outline: path, paint: inside, of }]),
      ...lines(item.fine, layer, { paint: inside, width: PX, opacity: 0.6 }),
      ...lines(item.walls, layer, duct ? ductPen : bodyPen),
      ...centreOf(item, inside),
    ];
  });
  return { marks: [...marks, ...arrows(setting, hidden)], hidden };
}

/** Centre lines run through what covers them: they are measured to. */
function centreOf({ centre, id }: Drawable, paint: Paint): Layered[] {
  if (centre.length === 0) return [];
  const pen: Pen = { paint, width: PX, opacity: 0.6, dash: [10 * PX, 3 * PX, 2 * PX, 3 * PX] };
  return [['centre', { kind: 'line', strokes: centre, pen, of: id }]];
}

/** Arrows of the flow; none where the duct that it stands on is hidden. */
function arrows({ outline, paper }: Setting, hidden: HiddenLines): Layered[] {
  const orders = new Map(outline.drawables.flatMap((d, i) => (d.kind === 'leg' ? [[d.id, i] as const] : [])));
  return outline.legs.flatMap((leg): Layered[] => {
    const arrow = arrowOf(leg, paper);
    if (!arrow) return [];
    const head = polygon(arrow.corners.map((corner) => toSheet(corner, paper)));
    const left = hidden.visible([head], orders.get(leg.segment.id) ?? 0);
    if (left.length !== 1 || left[0] !== head) return [];
    const { id: of } = leg.segment;
    return [
      ['flow', { kind: 'fill', outline: [head], paint: 'sheet', of }],
      ['flow', { kind: 'line', strokes: [head], pen: arrowPen, of }],
    ];
  });
}
