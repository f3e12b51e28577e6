import type { Block, ExitFace, Vec3 } from '../graph/document.ts';
import type { SheetId } from '../graph/sheet.ts';
import { dot } from '../graph/vector.ts';
import { words } from '../words/index.ts';
import { boundsOn, isFaceOn } from './box-faces.ts';
import type { HiddenLines } from './hidden-lines.ts';
import { type LayerId, type Paint, type Pen, PX, type TextMark } from './marks.ts';
import { roughWidth } from './note-box.ts';
import { MIN_TEXT } from './palette.ts';
import { boundsOutline, cooktopsOn, exitHatch, hatchOf, hatchSpacing } from './room.ts';
import type { Layered, Setting } from './sheet-drawing.ts';
import { box, mean, shown } from './solid.ts';
import { line, type Stroke } from './stroke.ts';
import { seen } from './tube.ts';
import type { Bounds } from './viewport.ts';

const muted: Pen = { paint: 'muted', width: PX };
const dashed: Pen = { ...muted, dash: [5 * PX, 3 * PX] };
const faceOnPen = { dash: [8 * PX, 4 * PX], opacity: 0.6 };
const hatchPen: Pen = { paint: 'hatch', width: PX };

interface Look {
  readonly layer: LayerId;
  readonly fill: Paint;
  readonly edge: Paint;
  /** CSS px. */
  readonly hatch: number | null;
}

const lookOfExit: Look = { layer: 'exits', fill: 'exit', edge: 'ok', hatch: exitHatch };

function lookOf({ kind }: Block): Look {
  const edge = kind === 'joist' ? 'hatch' : 'muted';
  return { layer: 'blocks', fill: 'block', edge, hatch: hatchSpacing[kind] };
}

/** Exits, blocks, floor, ceiling and cooktops of a flat sheet; boxes end at `around` where it is given. */
export function roomOnSheet(
  setting: Setting,
  sheet: SheetId,
  around: Bounds | null,
  core: Bounds,
): readonly Layered[] {
  const { job, route } = setting;
  const boxes: (readonly [Block | ExitFace, Look])[] = [
    ...job.exits.map((exit) => [exit, lookOfExit] as const),
    ...job.blocks.map((block) => [block, lookOf(block)] as const),
  ];
  return [
    ...boxes.flatMap(([item, look]) => boxMarks(item, look, sheet, around, setting)),
    ...(sheet === 'floor' ? [] : levels(setting, around ?? core)),
    ...cooktopsOn(job, route.schemeId, sheet).flatMap((shape): Layered[] => [
      ...lines('room', shape.solid, muted),
      ...lines('room', shape.dashed, dashed),
      ...lines('room', shape.burners, { paint: 'hairline', width: PX }),
    ]),
  ];
}

function lines(layer: LayerId, strokes: readonly Stroke[], pen: Pen, of?: string): Layered[] {
  if (strokes.length === 0) return [];
  return [[layer, { kind: 'line', strokes, pen, ...(of === undefined ? {} : { of }) }]];
}

/** A box in its colour, hatched where the sheet cuts through it; one seen face on is a faint outline. */
function boxMarks(
  item: Block | ExitFace,
  { layer, fill, edge, hatch }: Look,
  sheet: SheetId,
  around: Bounds | null,
  { scale }: Setting,
): Layered[] {
  const whole = boundsOn(item, sheet);
  const part = around ? common(whole, around) : whole;
  if (!part) return [];
  const { id: of } = item;
  const faceOn = isFaceOn(item, sheet) && hatch !== null;
  const pen: Pen = { paint: edge, width: PX, ...(faceOn ? faceOnPen : {}) };
  const sides = lines(layer, sidesOf(part, whole), pen, of);
  if (faceOn) return sides;
  const every = ((hatch ?? 0) * PX * scale) / 1000;
  return [
    [layer, { kind: 'fill', outline: [boundsOutline(part)], paint: fill, of }],
    ...(every > 0 ? lines('hatch', hatchOf(part, every), hatchPen, of) : []),
    ...sides,
  ];
}

function common(a: Bounds, b: Bounds): Bounds | null {
  const [minU, maxU] = [Math.max(a.minU, b.minU), Math.min(a.maxU, b.maxU)];
  const [minV, maxV] = [Math.max(a.minV, b.minV), Math.min(a.maxV, b.maxV)];
  return minU <= maxU && minV <= maxV ? { minU, minV, maxU, maxV } : null;
}

/** The sides of a box, but for those that it was cut off at. */
function sidesOf(part: Bounds, whole: Bounds): readonly Stroke[] {
  if ((Object.keys(part) as (keyof Bounds)[]).every((key) => part[key] === whole[key]))
    return [boundsOutline(part)];
  const { minU, minV, maxU, maxV } = part;
  return [
    ...(minV === whole.minV ? [line({ u: minU, v: minV }, { u: maxU, v: minV })] : []),
    ...(maxU === whole.maxU ? [line({ u: maxU, v: minV }, { u: maxU, v: maxV })] : []),
    ...(maxV === whole.maxV ? [line({ u: maxU, v: maxV }, { u: minU, v: maxV })] : []),
    ...(minU === whole.minU ? [line({ u: minU, v: maxV }, { u: minU, v: minV })] : []),
  ];
}

/** The finished floor with ground below it, and the ceiling. */
function levels({ job, scale }: Setting, { minU, maxU }: Bounds): Layered[] {
  const mm = scale / 1000;
  const ceiling = job.kitchen.ceilingHeight;
  const level = (v: number) => line({ u: minU, v }, { u: maxU, v });
  const ground: Bounds = { minU, minV: -7 * PX * mm, maxU, maxV: 0 };
  const name = (text: string, v: number): TextMark => ({
    kind: 'text',
    at: { u: maxU - PX * 8 * mm, v: v + 9 * PX * mm },
    align: 'right',
    text,
    size: MIN_TEXT * PX,
    weight: 400,
    paint: 'muted',
    width: roughWidth(text, MIN_TEXT) * PX,
    height: MIN_TEXT * PX,
  });
  return [
    ...lines('hatch', hatchOf(ground, 5 * PX * mm), hatchPen),
    ...lines('room', [level(0)], { paint: 'ink', width: 1.5 * PX }),
    ...lines('room', [level(ceiling)], { ...muted, dash: [14, 4, 3, 4].map((px) => px * PX) }),
    ['room', name(words.drawings.floorLevel, 0)],
    ['room', name(words.drawings.ceilingLevel, ceiling)],
  ];
}

/** Plumb lines are left out of drawings with more nodes than this. */
const mostPlumbLines = 60;

/** Blocks and exits as thin boxes in space, and a plumb line from every node to the floor. */
export function roomInSpace(setting: Setting, hidden: HiddenLines): readonly Layered[] {
  const { job, route, view, outline } = setting;
  const boxes: (readonly [Block | ExitFace, Look])[] = [
    ...job.exits.map((exit) => [exit, lookOfExit] as const),
    ...job.blocks.map((block) => [block, lookOf(block)] as const),
  ];
  const nearest = (near: number) => outline.drawables.findIndex((item) => item.near > near);
  const walled = boxes.flatMap(([item, { layer, fill, edge }]): Layered[] => {
    const faces = shown(box(item.min, item.max), view);
    const order = nearest(dot(mean([item.min, item.max]), view.toward));
    const left = order < 0 ? faces.walls : hidden.visible(faces.walls, order - 1);
    const pen: Pen = { paint: edge, width: PX, opacity: 0.55 };
    return [
      ...faces.fill.map(
        (outlineOfFace): Layered => [
          layer,
          { kind: 'fill', outline: outlineOfFace, paint: fill, of: item.id },
        ],
      ),
      ...lines(layer, left, pen, item.id),
    ];
  });
  const places = [...route.nodes.values()].map(({ at }) => at);
  if (places.length > mostPlumbLines) return walled;
  const plumb = places.map((at: Vec3) => line(seen(at, view), seen([at[0], at[1], 0], view)));
  const pen: Pen = { paint: 'muted', width: PX, opacity: 0.5, dash: [PX, 4 * PX] };
  return [...walled, ...lines('room', hidden.visible(plumb, -1), pen)];
}
