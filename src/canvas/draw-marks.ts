import { roomForHandle } from '../drawing/detail.ts';
import { type Box, boxAt } from '../drawing/label-place.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Drawable } from '../drawing/stroke.ts';
import { type Size, toScreen, type Viewport } from '../drawing/viewport.ts';
import type { Finding, Route, Severity } from '../graph/route.ts';
import { project, type ScreenPoint, type SheetId } from '../graph/sheet.ts';
import type { Selection } from './board.ts';
import { fillAll, type Pen, strokeAll } from './pen.ts';

/** Outlines what is selected or pointed at in the accent: duct by its walls, nodes by their handles. */
export function drawSelection(
  pen: Pen,
  drawables: readonly Drawable[],
  selection: Selection,
  hover: Selection,
  palette: Palette,
  view: Viewport,
): void {
  const chosen = lookup(selection);
  const pointed = lookup(hover);
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  pen.lineCap = 'round';
  pen.strokeStyle = palette.accent;
  for (const item of drawables) {
    const selected = chosen(item);
    if (!selected && !pointed(item)) continue;
    if (selected) {
      pen.globalAlpha = 0.16;
      pen.fillStyle = palette.accent;
      fillAll(pen, item.fill, view);
      pen.globalAlpha = 1;
    }
    pen.lineWidth = selected ? 2.5 : 2;
    pen.globalAlpha = selected ? 1 : 0.7;
    strokeAll(pen, item.walls, view);
    pen.globalAlpha = 1;
  }
  pen.lineCap = 'butt';
}

function lookup({ nodes, segments, parts = [] }: Selection): (item: Drawable) => boolean {
  const ids = { node: new Set(nodes), segment: new Set([...segments, ...parts]) };
  return (item) => ids[item.of].has(item.id);
}

/** A node's place on the screen. */
export interface Handle {
  readonly id: string;
  readonly at: ScreenPoint;
}

/**
 * The nodes in view that have a handle at this zoom: ends of runs, what is selected or pointed at, and
 * every node whose legs leave it room.
 */
export function handlesOf(
  route: Route,
  sheet: SheetId,
  selection: Selection,
  hover: Selection,
  view: Viewport,
  size: Size,
): Handle[] {
  const wanted = new Set([...selection.nodes, ...hover.nodes]);
  const handles: Handle[] = [];
  for (const node of route.nodes.values()) {
    const at = toScreen(project(node.at, sheet), view);
    if (at.x < -8 || at.y < -8 || at.x > size.width + 8 || at.y > size.height + 8) continue;
    const roomy =
      node.segments.length < 2 ||
      node.segments.every((id) => (route.segments.get(id)?.length ?? 0) * view.scale >= roomForHandle);
    if (roomy || wanted.has(node.id)) handles.push({ id: node.id, at });
  }
  return handles;
}

/** Handles in screen pixels: squares at turns, circles where duct begins and ends. */
export function drawHandles(
  pen: Pen,
  handles: readonly Handle[],
  route: Route,
  selection: Selection,
  hover: Selection,
  palette: Palette,
): void {
  pen.setLineDash([]);
  const [chosen, pointedAt] = [new Set(selection.nodes), new Set(hover.nodes)];
  for (const { id, at } of handles) {
    const selected = chosen.has(id);
    const pointed = pointedAt.has(id);
    const size = selected || pointed ? 9 : 7;
    const kind = route.nodes.get(id)?.kind;
    const round = kind === 'hood' || kind === 'cap' || kind === 'open end';
    const [x, y] = [Math.round(at.x) + 0.5, Math.round(at.y) + 0.5];
    pen.beginPath();
    if (round) pen.arc(x, y, size / 2 + 0.5, 0, 2 * Math.PI);
    else pen.rect(x - size / 2, y - size / 2, size, size);
    pen.fillStyle = selected ? palette.accent : palette.sheet;
    pen.strokeStyle = selected || pointed ? palette.accent : palette.ink;
    pen.lineWidth = selected || pointed ? 2 : 1;
    pen.fill();
    pen.stroke();
  }
}

export function handleBoxes(handles: readonly Handle[]): Box[] {
  return handles.map(({ at }) => boxAt(at, 10, 10));
}

const rank: Readonly<Record<Severity, number>> = { danger: 3, error: 2, warning: 1, note: 0 };

export interface Flag {
  /** The place that the flag's pole stands on. */
  readonly foot: ScreenPoint;
  readonly box: Box;
  readonly severity: Severity;
  /** How many findings stand here. */
  readonly count: number;
}

/** Findings nearer together than about this share a flag, px. */
const flagRoom = 22;

/** One flag for each place with findings, the gravest showing, where the pole's foot is in view. Notes fly none. */
export function flagsOf(
  findings: readonly Finding[],
  route: Route,
  sheet: SheetId,
  avoid: readonly Box[],
  view: Viewport,
  size: Size,
): Flag[] {
  const places = new Map<string, { foot: ScreenPoint; severity: Severity; count: number }>();
  for (const finding of findings) {
    if (finding.severity === 'note') continue;
    const at = placeOf(finding, route, sheet);
    if (!at) continue;
    const foot = toScreen(at, view);
    const key = `${Math.round(foot.x / flagRoom)},${Math.round(foot.y / flagRoom)}`;
    const known = places.get(key);
    const graver = !known || rank[finding.severity] > rank[known.severity];
    places.set(key, {
      ...(graver ? { foot, severity: finding.severity } : known),
      count: (known?.count ?? 0) + 1,
    });
  }
  return [...places.values()]
    .filter(({ foot }) => foot.x > 0 && foot.y > 0 && foot.x < size.width && foot.y < size.height)
    .map((place) => ({
      ...place,
      box: flagBox(place.foot, avoid),
    }));
}

/** The pennant beside its pole's top: to the right, or to the left where it would hide something on the right. */
function flagBox(foot: ScreenPoint, avoid: readonly Box[]): Box {
  const [x, y] = [Math.round(foot.x), Math.round(foot.y)];
  const at = (left: number): Box => ({ minX: left, minY: y - 32, maxX: left + 21, maxY: y - 17 });
  const hides = (box: Box) =>
    avoid.some((o) => o.minX < box.maxX && box.minX < o.maxX && o.minY < box.maxY && box.minY < o.maxY);
  const right = at(x);
  return hides(right) && !hides(at(x - 21)) ? at(x - 21) : right;
}

function placeOf(finding: Finding, route: Route, sheet: SheetId) {
  const node = finding.nodes.map((id) => route.nodes.get(id)).find((n) => n !== undefined);
  if (node) return project(node.at, sheet);
  const segment = finding.segments.map((id) => route.segments.get(id)).find((s) => s !== undefined);
  const from = segment && route.nodes.get(segment.from);
  const to = segment && route.nodes.get(segment.to);
  if (!from || !to) return null;
  const [a, b] = [project(from.at, sheet), project(to.at, sheet)];
  return { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 };
}

/** Small pennants: filled for danger and error, outlined for a warning; `!` or how many there are. */
export function drawFlags(pen: Pen, flags: readonly Flag[], palette: Palette, font: string): void {
  pen.setLineDash([]);
  pen.lineJoin = 'round';
  for (const { foot, box, severity, count } of flags) {
    const grave = severity !== 'warning';
    const colour = grave ? palette.danger : palette.accent;
    const right = box.minX >= Math.round(foot.x);
    const pole = (right ? box.minX : box.maxX) + 0.5;
    const [tip, notch] = right ? [box.maxX, box.maxX - 5] : [box.minX, box.minX + 5];
    pen.strokeStyle = colour;
    pen.lineWidth = 1.5;
    pen.beginPath();
    pen.moveTo(pole, Math.round(foot.y) - 4);
    pen.lineTo(pole, box.minY);
    pen.stroke();
    pen.beginPath();
    pen.moveTo(pole, box.minY);
    pen.lineTo(tip, box.minY);
    pen.lineTo(notch, (box.minY + box.maxY) / 2);
    pen.lineTo(tip, box.maxY);
    pen.lineTo(pole, box.maxY);
    pen.closePath();
    pen.fillStyle = grave ? colour : palette.sheet;
    pen.fill();
    pen.stroke();
    pen.font = font;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    pen.fillStyle = grave ? palette.sheet : colour;
    const middle = right ? box.minX + 8 : box.maxX - 8;
    pen.fillText(count > 1 ? String(count) : '!', middle, (box.minY + box.maxY) / 2 + 0.5);
  }
}

/** The shapes of a proposal as dashed outlines over the real route. */
export function drawGhost(pen: Pen, drawables: readonly Drawable[], palette: Palette, view: Viewport): void {
  pen.strokeStyle = palette.accent;
  pen.lineWidth = 1.5;
  pen.setLineDash([6, 4]);
  for (const item of drawables) if (item.kind !== 'hood') strokeAll(pen, item.walls, view);
  pen.setLineDash([]);
}
