import {
  type Box,
  boxAround,
  boxAt,
  type Candidate,
  type Placed,
  placeLabels,
  type Wanted,
} from '../../../drawing/label-place.ts';
import type { Mark, SheetDrawing } from '../../../drawing/marks.ts';
import { placeOnSheet } from '../../../drawing/sheet-drawing.ts';
import type { Finding, Route, RouteSegment, Severity } from '../../../graph/route.ts';
import { POINT } from '../../pdf/font.ts';
import type { At, Page } from '../../pdf/page.ts';
import { type Lie, textBoxes } from './draw-marks.ts';
import type { Drawn } from './drawn.ts';
import { inks, pen, sizes, style, type Type } from './look.ts';
import { drawCircle, drawLine, drawRect } from './shapes.ts';

/** Half the size of a key, mm. */
const half = 1.75;
/** Labels are placed in quarters of a millimetre, about as coarse as the pixels that their placing thinks in. */
const quarters = 4;
/** Room that a key takes, quarters of a mm. */
const room = (2 * half + 0.4) * quarters;

/** The same drawing on a page that is measured in quarters of a millimetre. */
function inQuarters({ area, scale, place }: Lie): Lie {
  const by = (at: At): At => ({ x: at.x * quarters, y: at.y * quarters });
  const { x, y } = by(area);
  return {
    area: { x, y, width: area.width * quarters, height: area.height * quarters },
    scale: scale / quarters,
    place: (point) => by(place(point)),
  };
}

/**
 * Draws what ties a drawing to the text: the number of each leg in the route schedule, and the letter of each
 * finding with a line to its place. They stand where the drawing leaves them room; keys that find none are left out.
 */
export function drawKeys(page: Page, drawing: SheetDrawing, onPage: Lie, drawn: Drawn, type: Type): void {
  const lie = inQuarters(onPage);
  const { area } = lie;
  const taken = drawing.layers.flatMap(({ marks }) => marks.flatMap((mark) => boxesOf(mark, onPage, lie)));
  const within: Box = {
    minX: area.x + 2,
    minY: area.y + 2,
    maxX: area.x + area.width - 2,
    maxY: area.y + area.height - 2,
  };
  const feet = new Map<string, At>();
  const wanted = [...legKeys(drawn, drawing, lie), ...findingKeys(drawn, drawing, lie, feet, taken)];
  for (const placed of placeLabels(wanted, within, taken, ductBoxes(drawing, lie))) {
    const { minX, minY, maxX, maxY } = placed.box;
    const at = { x: (minX + maxX) / 2 / quarters, y: (minY + maxY) / 2 / quarters };
    if (placed.kind === 'finding') drawFinding(page, at, placed, drawn, feet.get(placed.id), type);
    else drawNumber(page, at, placed.text, type);
  }
}

/** Texts, and dimension lines along the sheet, which keys keep clear of, in quarters of a mm. */
function boxesOf(mark: Mark, onPage: Lie, lie: Lie): Box[] {
  const texts = textBoxes(mark, onPage).map(({ minX, minY, maxX, maxY }) => ({
    minX: minX * quarters,
    minY: minY * quarters,
    maxX: maxX * quarters,
    maxY: maxY * quarters,
  }));
  if (mark.kind !== 'dimension') return texts;
  const [a, b] = [lie.place(mark.line[0]), lie.place(mark.line[1])];
  const straight = Math.abs(a.x - b.x) < 1 || Math.abs(a.y - b.y) < 1;
  return straight ? [...texts, boxAround(a, b)] : texts;
}

/** Boxes of duct and fittings: what a key had better not cover. */
function ductBoxes(drawing: SheetDrawing, lie: Lie): Box[] {
  const fills = drawing.layers.find(({ id }) => id === 'fill')?.marks ?? [];
  return fills.flatMap((mark) => {
    if (mark.kind !== 'fill') return [];
    const places = mark.outline.flatMap((stroke) =>
      stroke.kind === 'line'
        ? stroke.points.map(lie.place)
        : [-1, 1].map((side) =>
            lie.place({
              u: stroke.centre.u + side * stroke.radius,
              v: stroke.centre.v + side * stroke.radius,
            }),
          ),
    );
    const [xs, ys] = [places.map(({ x }) => x), places.map(({ y }) => y)];
    return [{ minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) }];
  });
}

function legKeys({ numbers, route }: Drawn, { sheet }: SheetDrawing, lie: Lie): Wanted[] {
  return [...route.segments.values()].flatMap((leg) => {
    const number = numbers.get(leg.id);
    const [from, to] = [route.nodes.get(leg.from), route.nodes.get(leg.to)];
    if (number === undefined || !from || !to) return [];
    const [a, b] = [lie.place(placeOnSheet(from.at, sheet)), lie.place(placeOnSheet(to.at, sheet))];
    const across = (widthOf(leg) * 1000) / lie.scale / 2;
    const text = String(number);
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const candidates =
      length < room
        ? ringsAround(a, [across + room * 0.7, across + room * 1.6], text)
        : along(a, b, across, text);
    return [{ kind: 'name', id: leg.id, priority: 50, candidates }];
  });
}

function widthOf({ section }: RouteSegment): number {
  return section.shape === 'round' ? section.diameter : Math.max(section.width, section.height);
}

/** On the centre line where the duct is wide enough for it, else beside the duct. */
function along(a: At, b: At, across: number, text: string): Candidate[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const normal = { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
  return [0.5, 0.42, 0.6, 0.33, 0.7, 0.8].flatMap((share, i) => {
    const at = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    const off = across + room * 0.7;
    const aside = [1, -1].map((side): Candidate => {
      const place = { x: at.x + normal.x * side * off, y: at.y + normal.y * side * off };
      return { box: boxAt(place, room, room), text, cost: 6 + i };
    });
    const on: Candidate[] =
      across * 2 > room ? [{ box: boxAt(at, room, room), text, inside: 'duct', cost: i }] : [];
    return [...on, ...aside];
  });
}

const directions = [-45, 45, 135, -135, -90, 90, 0, 180].map((degrees) => (degrees * Math.PI) / 180);

function ringsAround(at: At, distances: readonly number[], text: string): Candidate[] {
  return distances.flatMap((distance, row) =>
    directions.map((angle, i) => ({
      box: boxAt({ x: at.x + distance * Math.cos(angle), y: at.y + distance * Math.sin(angle) }, room, room),
      text,
      cost: row * 2 + i * 0.2,
    })),
  );
}

function findingKeys(
  { lettered, route }: Drawn,
  { sheet }: SheetDrawing,
  lie: Lie,
  feet: Map<string, At>,
  texts: readonly Box[],
): Wanted[] {
  return lettered.flatMap(({ letter, finding }): Wanted[] => {
    const place = placeOf(finding, route);
    if (!place) return [];
    const at = lie.place(placeOnSheet(place.at, sheet));
    feet.set(finding.id, { x: at.x / quarters, y: at.y / quarters });
    const off = (place.width * 1000) / lie.scale / 2;
    const distances = [1.2, 2.2, 3.4, 4.8].map((by) => off * 1.3 + room * by);
    const candidates = ringsAround(at, distances, letter).map((candidate) => {
      const { box, cost } = candidate;
      const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
      return { ...candidate, cost: cost + 9 * texts.filter((text) => strikes(at, middle, text)).length };
    });
    return [{ kind: 'finding', id: finding.id, priority: 100, candidates }];
  });
}

/** True where a line runs through a box, looked at in twenty places of it. */
function strikes(from: At, to: At, { minX, minY, maxX, maxY }: Box): boolean {
  return Array.from({ length: 21 }, (_, i) => i / 20).some((share) => {
    const [x, y] = [from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share];
    return x > minX && x < maxX && y > minY && y < maxY;
  });
}

/** Where a finding is: its first node, else the middle of its first leg; and how wide the duct is there, m. */
function placeOf(finding: Finding, route: Route) {
  const node = finding.nodes.map((id) => route.nodes.get(id)).find((each) => each !== undefined);
  if (node) {
    const leg = route.segments.get(node.segments[0] ?? '');
    return { at: node.at, width: leg ? widthOf(leg) : 0.1 };
  }
  const leg = finding.segments.map((id) => route.segments.get(id)).find((each) => each !== undefined);
  const [from, to] = [route.nodes.get(leg?.from ?? ''), route.nodes.get(leg?.to ?? '')];
  if (!leg || !from || !to) return null;
  const middle = (axis: 0 | 1 | 2) => (from.at[axis] + to.at[axis]) / 2;
  return { at: [middle(0), middle(1), middle(2)] as const, width: widthOf(leg) };
}

const capDown = (size: number) => size * POINT * 0.36;

/** The number of a leg, in a ring. */
export function drawNumber(page: Page, at: At, text: string, type: Type): void {
  drawCircle(page, at, half, { fill: inks.paper, line: pen('edge') });
  const size = text.length > 2 ? sizes.tiny - 0.6 : sizes.small - 0.6;
  page.text({ x: at.x, y: at.y + capDown(size) }, text, style(type, size, 'semibold'), 'middle');
}

/** The letter of a finding: in a filled square for what is dangerous or wrong, in an open one for the rest. */
export function drawLetter(page: Page, at: At, letter: string, severity: Severity, type: Type): void {
  const grave = severity === 'danger' || severity === 'error';
  const box = { x: at.x - half, y: at.y - half, width: 2 * half, height: 2 * half };
  drawRect(page, box, { fill: grave ? inks.danger : inks.paper, line: pen('edge', inks.danger) });
  const size = letter.length > 1 ? sizes.tiny - 0.6 : sizes.small - 0.6;
  const set = style(type, size, 'semibold', grave ? inks.paper : inks.danger);
  page.text({ x: at.x, y: at.y + capDown(size) }, letter, set, 'middle');
}

function drawFinding(
  page: Page,
  at: At,
  placed: Placed,
  { lettered }: Drawn,
  foot: At | undefined,
  type: Type,
): void {
  if (foot) {
    drawLine(page, { line: pen('fine', inks.danger) }, foot, at);
    drawCircle(page, foot, 0.55, { fill: inks.danger });
  }
  const severity = lettered.find(({ finding }) => finding.id === placed.id)?.finding.severity;
  drawLetter(page, at, placed.text, severity ?? 'warning', type);
}
