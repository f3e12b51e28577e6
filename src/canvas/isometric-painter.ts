import { inCrossingOrder } from '../drawing/crossing-order.ts';
import { detailOf, labelledLegs, roomForHandle } from '../drawing/detail.ts';
import { gridStep, multiples } from '../drawing/grid.ts';
import type { Measure } from '../drawing/label-box.ts';
import { type Box, boxAt, placeLabels, type Wanted } from '../drawing/label-place.ts';
import { valueLabel } from '../drawing/labels.ts';
import { type Outline, outlineIn } from '../drawing/outline.ts';
import { MIN_TEXT, type Palette, palettes } from '../drawing/palette.ts';
import { box, mean, shown } from '../drawing/solid.ts';
import type { Drawable, Stroke } from '../drawing/stroke.ts';
import { seen } from '../drawing/tube.ts';
import { type Turn, turnedView } from '../drawing/turned.ts';
import type { View } from '../drawing/view.ts';
import { type Bounds, boundsOf, type Size, toScreen, toSheet, type Viewport } from '../drawing/viewport.ts';
import type { Job, Vec3 } from '../graph/document.ts';
import { memoise } from '../graph/memo.ts';
import type { Route } from '../graph/route.ts';
import type { ScreenPoint, SheetPoint } from '../graph/sheet.ts';
import { nearestOnSheet } from '../graph/spatial.ts';
import { dot, lerp } from '../graph/vector.ts';
import { words } from '../words/index.ts';
import type { BoardState, Selection } from './board.ts';
import { coloursOf } from './colouring.ts';
import { type DuctPaint, drawDucts, drawOne, inView } from './draw-ducts.ts';
import { misfits } from './draw-fit.ts';
import { drawLabels } from './draw-labels.ts';
import { drawHandles, drawSelection } from './draw-marks.ts';
import { fillAll, type Pen, setText, strokeAll } from './pen.ts';

const says = words.sheets.compass;

/** A route in space as one turned view shows it. */
export interface Scene {
  readonly view: View;
  readonly outline: Outline;
  readonly room: readonly Walled[];
  readonly nodes: readonly { readonly id: string; readonly at: SheetPoint; readonly near: number }[];
}

/** A block or an exit as a thin box. */
interface Walled {
  readonly id: string;
  readonly exit: boolean;
  readonly near: number;
  readonly fill: readonly (readonly Stroke[])[];
  readonly walls: readonly Stroke[];
}

/** Everything that a turned view shows of the board, made once for each turn and route. */
export function sceneOf({ solution, live }: BoardState, turn: Turn): Scene {
  return sceneFor(solution.route, live, turn);
}

const sceneFor = memoise((route: Route, job: Job, turn: Turn): Scene => {
  const view = turnedView(turn);
  const room = [
    ...job.exits.map((exit) => ({ ...exit, exit: true })),
    ...job.blocks.map((block) => ({ ...block, exit: false })),
  ].map(({ id, min, max, exit }) => ({
    id,
    exit,
    near: dot(mean([min, max]), view.toward),
    ...shown(box(min, max), view),
  }));
  const outline = outlineIn(route, job, view);
  return {
    view,
    outline: { ...outline, drawables: inCrossingOrder(outline.drawables, outline.legs, view) },
    room: room.sort((a, b) => a.near - b.near),
    nodes: [...route.nodes.values()].map(({ id, at }) => ({
      id,
      at: seen(at, view),
      near: dot(at, view.toward),
    })),
  };
});

/** What the drawing covers in a turned view, m. */
export function sceneBounds(state: BoardState, turn: Turn): Bounds {
  const { outline, view, nodes, room } = sceneOf(state, turn);
  const corners = outline.drawables.flatMap(({ bounds }) => [
    { u: bounds.minU, v: bounds.minV },
    { u: bounds.maxU, v: bounds.maxV },
  ]);
  const feet = [...state.solution.route.nodes.values()].map(({ at }) => seen([at[0], at[1], 0], view));
  const walls = room.flatMap((walled) =>
    walled.walls.flatMap((wall) => (wall.kind === 'line' ? wall.points : [])),
  );
  const route = boundsOf([...corners, ...feet, ...nodes.map(({ at }) => at)], 0.1);
  if (!route) return boundsOf(walls, 0.1) ?? { minU: -1, minV: -0.5, maxU: 3, maxV: 3 };
  return withRoom(route, boundsOf(walls, 0.1) ?? route);
}

/** So much of its size a drawing grows on each side for the room around it. */
const shareForRoom = 0.35;

/** The route with the room around it, as long as that leaves the route most of the picture. */
function withRoom(route: Bounds, room: Bounds): Bounds {
  const [u, v] = [(route.maxU - route.minU) * shareForRoom, (route.maxV - route.minV) * shareForRoom];
  return {
    minU: Math.min(route.minU, Math.max(room.minU, route.minU - u)),
    minV: Math.min(route.minV, Math.max(room.minV, route.minV - v)),
    maxU: Math.max(route.maxU, Math.min(room.maxU, route.maxU + u)),
    maxV: Math.max(route.maxV, Math.min(room.maxV, route.maxV + v)),
  };
}

/** Paper, ground and room, then the duct among it from the farthest to the nearest. */
export function paintScene(pen: Pen, state: BoardState, turn: Turn, viewport: Viewport, size: Size): void {
  const palette = palettes[state.theme];
  const scene = sceneOf(state, turn);
  pen.setLineDash([]);
  pen.fillStyle = palette.sheet;
  pen.fillRect(0, 0, size.width, size.height);
  drawGround(pen, state, scene, palette, viewport);
  const paint: DuctPaint = { palette, colours: coloursOf(state).fills };
  if (detailOf(scene.outline.legs, viewport) !== 'full') {
    for (const walled of scene.room) drawWalled(pen, walled, palette, viewport);
    drawDucts(pen, scene.outline, paint, viewport, size);
    return;
  }
  const queue: { readonly near: number; draw(): void }[] = [
    ...scene.room.map((walled) => ({
      near: walled.near,
      draw: () => drawWalled(pen, walled, palette, viewport),
    })),
    ...notBefore(inView(scene.outline.drawables, viewport, size)).map(({ item, near }) => ({
      near,
      draw: () => drawOne(pen, item, paint, viewport),
    })),
  ];
  for (const { draw } of queue.sort((a, b) => a.near - b.near)) draw();
}

/** Drawables with a nearness that grows in their order. */
function notBefore(items: readonly Drawable[]): { readonly item: Drawable; readonly near: number }[] {
  let last = Number.NEGATIVE_INFINITY;
  return items.map((item) => {
    last = Math.max(last, item.near);
    return { item, near: last };
  });
}

function drawWalled(pen: Pen, { exit, fill, walls }: Walled, palette: Palette, view: Viewport): void {
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.fillStyle = exit ? palette.exit : palette.block;
  fillAll(pen, fill, view);
  pen.strokeStyle = exit ? palette.ok : palette.muted;
  pen.globalAlpha = 0.55;
  pen.lineWidth = 1;
  strokeAll(pen, walls, view);
  pen.globalAlpha = 1;
}

/** Plumb lines are left out of drawings with more nodes than this. */
const mostPlumbLines = 60;

/** The floor as a grid below the route, and a plumb line from every node to it. */
function drawGround(
  pen: Pen,
  state: BoardState,
  { view }: Scene,
  palette: Palette,
  viewport: Viewport,
): void {
  const places = [...state.solution.route.nodes.values()].map(({ at }) => at);
  const step = gridStep(viewport.scale, state.units).major;
  const bounds = boundsOf(places.map(([u, v]) => ({ u, v }))) ?? { minU: 0, minV: 0, maxU: 2, maxV: 2 };
  const [west, east] = [Math.floor(bounds.minU / step) - 1, Math.ceil(bounds.maxU / step) + 1];
  const [south, north] = [Math.floor(bounds.minV / step) - 1, Math.ceil(bounds.maxV / step) + 1];
  const ground = (x: number, y: number) => toScreen(seen([x, y, 0], view), viewport);
  pen.strokeStyle = palette.gridMajor;
  pen.lineWidth = 1;
  pen.beginPath();
  for (const x of multiples(west * step, east * step, step))
    stroke(pen, ground(x, south * step), ground(x, north * step));
  for (const y of multiples(south * step, north * step, step))
    stroke(pen, ground(west * step, y), ground(east * step, y));
  pen.stroke();
  if (places.length > mostPlumbLines) return;
  pen.strokeStyle = palette.muted;
  pen.globalAlpha = 0.5;
  pen.setLineDash([1, 4]);
  pen.beginPath();
  for (const [x, y, z] of places) stroke(pen, toScreen(seen([x, y, z], view), viewport), ground(x, y));
  pen.stroke();
  pen.setLineDash([]);
  pen.globalAlpha = 1;
}

function stroke(pen: Pen, a: ScreenPoint, b: ScreenPoint): void {
  pen.moveTo(a.x, a.y);
  pen.lineTo(b.x, b.y);
}

/** Over the scene: what is selected or pointed at, values, handles, title and compass. */
export function paintSceneMarks(
  pen: Pen,
  state: BoardState,
  turn: Turn,
  viewport: Viewport,
  size: Size,
  measure: Measure,
): void {
  const palette = palettes[state.theme];
  const { outline, nodes, view } = sceneOf(state, turn);
  const { fills, values } = coloursOf(state);
  const drawables: readonly Drawable[] = inView(outline.drawables, viewport, size);
  pen.setLineDash([]);
  pen.lineWidth = 2;
  for (const { item, grave, close } of misfits(state.solution.findings, drawables, state.live.blocks)) {
    if (close) continue;
    pen.strokeStyle = grave ? palette.danger : palette.accent;
    strokeAll(pen, item.walls, viewport);
  }
  drawSelection(pen, drawables, state.selection, state.hover, palette, viewport);
  const wantedHandles = new Set([...state.selection.nodes, ...state.hover.nodes]);
  const { segments, nodes: routeNodes } = state.solution.route;
  const handles = nodes
    .filter(({ id }) => {
      const met = routeNodes.get(id)?.segments ?? [];
      const room = met.every((leg) => (segments.get(leg)?.length ?? 0) * viewport.scale >= roomForHandle);
      return room || met.length < 2 || wantedHandles.has(id);
    })
    .map(({ id, at }) => ({ id, at: toScreen(at, viewport) }));
  const labelled = labelledLegs(outline.legs, state.selection.segments, viewport);
  const labels = {
    values,
    by: state.colourBy,
    units: state.units,
    view: viewport,
    measure,
    legs: labelled,
  };
  const wanted: Wanted[] = labelled.flatMap((leg) => {
    const label = leg.endOn ? null : valueLabel(leg, labels);
    const length = Math.hypot(leg.to.u - leg.from.u, leg.to.v - leg.from.v) * viewport.scale;
    const chosen = state.selection.segments.includes(leg.segment.id) ? 1000 : 0;
    return label && length > 24 ? [{ ...label, priority: chosen + Math.min(900, length) }] : [];
  });
  const area: Box = { minX: 4, minY: 30, maxX: size.width - 4, maxY: size.height - 4 };
  const kept = [
    ...handles.map(({ at }) => boxAt(at, 10, 10)),
    { minX: 0, minY: size.height - 74, maxX: 78, maxY: size.height },
  ];
  drawLabels(pen, placeLabels(wanted, area, kept, []), palette, fills);
  drawHandles(pen, handles, state.solution.route, state.selection, state.hover, palette);
  drawCompass(pen, view, palette, size);
}

const axes: readonly { readonly name: string; readonly along: Vec3 }[] = [
  { name: says.east, along: [1, 0, 0] },
  { name: says.north, along: [0, 1, 0] },
  { name: says.up, along: [0, 0, 1] },
];

/** East, north and up as the view shows them. */
function drawCompass(pen: Pen, view: View, palette: Palette, size: Size): void {
  const at = { x: 36, y: size.height - 34 };
  pen.strokeStyle = palette.muted;
  pen.fillStyle = palette.muted;
  pen.lineWidth = 1.25;
  setText(pen, MIN_TEXT, 500);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const { name, along } of axes) {
    const { u, v } = seen(along, view);
    const length = Math.hypot(u, v);
    if (length < 0.2) continue;
    pen.beginPath();
    stroke(pen, at, { x: at.x + u * 18, y: at.y - v * 18 });
    pen.stroke();
    const out = 18 + 9 / length;
    pen.fillText(name, at.x + u * out, at.y - v * out);
  }
}

/** Pixels around a node or a duct's centre line within which a click counts. */
const reach = 8;

/** What a point of the picture is on: of several the nearest to the viewer, and a node before its legs. */
export function pickInScene(scene: Scene, point: ScreenPoint, viewport: Viewport): Selection | null {
  const at = toSheet(point, viewport);
  const within = reach / viewport.scale;
  const nodes = scene.nodes.filter((node) => Math.hypot(node.at.u - at.u, node.at.v - at.v) <= within);
  const node = nodes.sort((a, b) => b.near - a.near)[0];
  if (node) return { nodes: [node.id], segments: [] };
  let best: { readonly id: string; readonly near: number } | null = null;
  for (const leg of scene.outline.legs) {
    const { t, distance } = nearestOnSheet(at, leg.from, leg.to);
    if (distance > Math.max(within, leg.half)) continue;
    const near = dot(lerp(leg.start, leg.end, t), scene.view.toward);
    if (!best || near > best.near) best = { id: leg.segment.id, near };
  }
  return best && { nodes: [], segments: [best.id] };
}
