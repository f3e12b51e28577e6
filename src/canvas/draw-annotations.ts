import { boundsOn, gripsOf } from '../drawing/box-faces.ts';
import { dimensionShape } from '../drawing/dimension-lines.ts';
import type { Measure } from '../drawing/label-box.ts';
import { alongLine, type Box, boxAt } from '../drawing/label-place.ts';
import { NOTE_LINE, NOTE_PADDING, noteSize } from '../drawing/note-box.ts';
import { MIN_TEXT, type Palette } from '../drawing/palette.ts';
import { toScreen, type Viewport } from '../drawing/viewport.ts';
import { schemeOf } from '../graph/infer.ts';
import { project, type ScreenPoint, type SheetId } from '../graph/sheet.ts';
import { formatLength } from '../units/index.ts';
import { bendGrip } from './bend-grip.ts';
import { type BoardState, nothing } from './board.ts';
import { crisp, type Pen, setText } from './pen.ts';
import { type ItemKind, idsOf, single } from './selection.ts';

/** What people have pinned to a sheet: dimensions and notes; over them what is selected of the room, with its grips. */
export function drawAnnotations(
  pen: Pen,
  state: BoardState,
  sheet: SheetId,
  palette: Palette,
  view: Viewport,
): void {
  drawRoomSelection(pen, state, sheet, palette, view);
  drawDimensions(pen, state, sheet, palette, view);
  drawNotes(pen, state, sheet, palette, view);
  drawGrips(pen, state, sheet, palette, view);
}

/** 2 for what is selected, 1 for what is pointed at. */
function weightOf({ selection, hover }: BoardState, kind: ItemKind, id: string): 0 | 1 | 2 {
  if (idsOf(selection, kind).includes(id)) return 2;
  return idsOf(hover, kind).includes(id) ? 1 : 0;
}

function drawRoomSelection(
  pen: Pen,
  state: BoardState,
  sheet: SheetId,
  palette: Palette,
  view: Viewport,
): void {
  const boxes = [
    ...state.live.blocks.map((box) => ({ box, weight: weightOf(state, 'block', box.id) })),
    ...state.live.exits.map((box) => ({ box, weight: weightOf(state, 'exit', box.id) })),
  ];
  pen.setLineDash([]);
  pen.strokeStyle = palette.accent;
  for (const { box, weight } of boxes) {
    if (weight === 0) continue;
    const { minU, minV, maxU, maxV } = boundsOn(box, sheet);
    const [a, b] = [toScreen({ u: minU, v: maxV }, view), toScreen({ u: maxU, v: minV }, view)];
    const [x, y] = [Math.round(a.x), Math.round(a.y)];
    const [width, height] = [Math.max(2, Math.round(b.x) - x), Math.max(2, Math.round(b.y) - y)];
    if (weight === 2) {
      pen.fillStyle = palette.accent;
      pen.globalAlpha = 0.1;
      pen.fillRect(x, y, width, height);
    }
    pen.globalAlpha = weight === 2 ? 1 : 0.7;
    pen.lineWidth = 2;
    pen.strokeRect(x, y, width, height);
    pen.globalAlpha = 1;
  }
}

function drawDimensions(pen: Pen, state: BoardState, sheet: SheetId, palette: Palette, view: Viewport): void {
  const scheme = schemeOf(state.live, state.schemeId);
  for (const dimension of scheme.dimensions ?? []) {
    const shape = dimension.sheet === sheet ? dimensionShape(dimension, scheme, state.live) : null;
    if (!shape) continue;
    const weight = weightOf(state, 'dimension', dimension.id);
    const [from, to] = shape.line.map((point) => toScreen(point, view)) as [ScreenPoint, ScreenPoint];
    const ends = shape.ends.map((point) => toScreen(point, view)) as [ScreenPoint, ScreenPoint];
    pen.setLineDash([]);
    pen.strokeStyle = weight > 0 ? palette.accent : palette.ink;
    pen.lineWidth = weight === 2 ? 2 : 1;
    pen.beginPath();
    extension(pen, ends[0], from);
    extension(pen, ends[1], to);
    pen.moveTo(snap(from.x, to.x), snap(from.y, to.y));
    pen.lineTo(snap(to.x, from.x), snap(to.y, from.y));
    pen.stroke();
    pen.lineWidth = weight === 2 ? 2.5 : 1.5;
    pen.beginPath();
    for (const end of [from, to]) {
      pen.moveTo(end.x - 4, end.y + 4);
      pen.lineTo(end.x + 4, end.y - 4);
    }
    pen.stroke();
    setText(pen, MIN_TEXT, 600);
    const text = formatLength(shape.value, state.units);
    const width = Math.ceil(pen.measureText(text).width) + 8;
    const [x, y] = [Math.round((from.x + to.x) / 2), Math.round((from.y + to.y) / 2)];
    pen.fillStyle = palette.sheet;
    pen.fillRect(x - width / 2, y - 9, width, 18);
    pen.fillStyle = weight > 0 ? palette.accent : palette.ink;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillText(text, x, y + 0.5);
  }
}

/** From a little off what is measured to a little beyond the dimension line; none where the line is on it. */
function extension(pen: Pen, end: ScreenPoint, line: ScreenPoint): void {
  const length = Math.hypot(line.x - end.x, line.y - end.y);
  if (length < 8) return;
  const along = { x: (line.x - end.x) / length, y: (line.y - end.y) / length };
  const [a, b] = [6, length + 5].map((by) => ({ x: end.x + along.x * by, y: end.y + along.y * by })) as [
    ScreenPoint,
    ScreenPoint,
  ];
  pen.moveTo(snap(a.x, b.x), snap(a.y, b.y));
  pen.lineTo(snap(b.x, a.x), snap(b.y, a.y));
}

/** Where pinned dimensions have their lines and their words on a sheet, px: other labels keep clear of them. */
export function dimensionBoxes(
  { live, schemeId, units }: BoardState,
  sheet: SheetId,
  view: Viewport,
  measure: Measure,
): Box[] {
  const scheme = schemeOf(live, schemeId);
  return (scheme.dimensions ?? []).flatMap((dimension) => {
    const shape = dimension.sheet === sheet ? dimensionShape(dimension, scheme, live) : null;
    if (!shape) return [];
    const [from, to] = shape.line.map((point) => toScreen(point, view)) as [ScreenPoint, ScreenPoint];
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const width = measure(formatLength(shape.value, units)) + 12;
    return [boxAt(middle, width, 18), ...alongLine(from, to)];
  });
}

/** Where notes stand on a sheet, px: other labels keep clear of them. */
export function noteBoxes({ live }: BoardState, sheet: SheetId, view: Viewport): Box[] {
  return (live.sheetNotes ?? []).flatMap((note) => {
    if (note.sheet !== sheet) return [];
    const { x, y } = toScreen({ u: note.at[0], v: note.at[1] }, view);
    const { width, height } = noteSize(note.text);
    return [{ minX: x, minY: y, maxX: x + width, maxY: y + height }];
  });
}

function drawNotes(pen: Pen, state: BoardState, sheet: SheetId, palette: Palette, view: Viewport): void {
  for (const note of state.live.sheetNotes ?? []) {
    if (note.sheet !== sheet) continue;
    const weight = weightOf(state, 'note', note.id);
    const at = toScreen({ u: note.at[0], v: note.at[1] }, view);
    const { width, height, lines } = noteSize(note.text);
    const [x, y] = [crisp(at.x), crisp(at.y)];
    pen.setLineDash([]);
    pen.fillStyle = palette.sheet;
    pen.strokeStyle = weight > 0 ? palette.accent : palette.muted;
    pen.lineWidth = weight === 2 ? 2 : 1;
    pen.beginPath();
    pen.roundRect(x, y, width, height, 3);
    pen.fill();
    pen.stroke();
    pen.fillStyle = weight > 0 ? palette.accent : palette.muted;
    pen.beginPath();
    pen.arc(x, y, 3, 0, 2 * Math.PI);
    pen.fill();
    setText(pen, MIN_TEXT, 400);
    pen.fillStyle = palette.ink;
    pen.textAlign = 'left';
    pen.textBaseline = 'middle';
    for (const [i, line] of lines.entries())
      pen.fillText(line, x + NOTE_PADDING, y + NOTE_PADDING / 2 + (i + 0.5) * NOTE_LINE + 0.5);
  }
}

/** The grips of the one thing selected: squares on a block's corners and sides, a ring on a bend's arc. */
function drawGrips(pen: Pen, state: BoardState, sheet: SheetId, palette: Palette, view: Viewport): void {
  if (state.tool !== 'select') return;
  const item = single(state.selection);
  const { blocks, exits } = state.live;
  const box =
    item?.kind === 'block'
      ? blocks.find(({ id }) => id === item.id)
      : item?.kind === 'exit'
        ? exits.find(({ id }) => id === item.id)
        : undefined;
  pen.setLineDash([]);
  pen.fillStyle = palette.sheet;
  pen.strokeStyle = palette.accent;
  pen.lineWidth = 1.5;
  const shown = box ? shownGrips(boundsOn(box, sheet), view) : () => false;
  for (const grip of box ? gripsOf(box, sheet) : []) {
    if (!shown(grip)) continue;
    const at = toScreen(grip.at, view);
    pen.beginPath();
    pen.rect(Math.round(at.x) - 3.5, Math.round(at.y) - 3.5, 7, 7);
    pen.fill();
    pen.stroke();
  }
  const bend = bendGrip(
    state.solution.route,
    item?.kind === 'node' ? state.selection : nothing,
    sheet,
    view.scale,
  );
  const corner = bend && state.solution.route.nodes.get(bend.node);
  if (!bend || !corner) return;
  const [at, from] = [toScreen(bend.at, view), toScreen(project(corner.at, sheet), view)];
  pen.globalAlpha = 0.7;
  pen.lineWidth = 1;
  pen.beginPath();
  pen.moveTo(from.x, from.y);
  pen.lineTo(at.x, at.y);
  pen.stroke();
  pen.globalAlpha = 1;
  pen.lineWidth = 2;
  pen.beginPath();
  pen.arc(at.x, at.y, 5.5, 0, 2 * Math.PI);
  pen.fill();
  pen.stroke();
}

/** Side grips stand only where they keep clear of those on the corners. */
function shownGrips(bounds: ReturnType<typeof boundsOn>, view: Viewport) {
  const wide = (bounds.maxU - bounds.minU) * view.scale > 36;
  const high = (bounds.maxV - bounds.minV) * view.scale > 36;
  return ({ u, v }: { readonly u: number; readonly v: number }) => (u === 0 ? wide : v === 0 ? high : true);
}

/** Puts an upright or level line on the middle of a pixel; a slanted one stays where it is. */
function snap(at: number, other: number): number {
  return Math.abs(at - other) < 0.5 ? crisp(at) : at;
}
