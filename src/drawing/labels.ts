import type { UnitSystem } from '../graph/document.ts';
import type { Route, RouteNode } from '../graph/route.ts';
import type { ScreenPoint, SheetId } from '../graph/sheet.ts';
import { dot } from '../graph/vector.ts';
import type { Section } from '../hydraulics/types.ts';
import { formatAngle, formatDiameter, formatLength, quantity } from '../units/index.ts';
import { words } from '../words/index.ts';
import { type ColourBy, kindOf } from './colour.ts';
import { extent, led, lineHeight, type Measure, mostWithLeaders, off, textBox, unit } from './label-box.ts';
import type { Candidate, Wanted } from './label-place.ts';
import type { SheetLeg } from './outline.ts';
import { seen } from './tube.ts';
import { alongSight, views } from './view.ts';
import { type Bounds, toScreen, type Viewport } from './viewport.ts';

const says = words.sheets.labels;

/** What something on the sheet is called: inside its box where the name fits, else below it. */
export interface Name {
  readonly id: string;
  readonly text: string;
  readonly box: Bounds;
  readonly inside: boolean;
}

export interface LabelInput {
  readonly sheet: SheetId;
  readonly route: Route;
  readonly legs: readonly SheetLeg[];
  /** Velocity or loss by segment id, SI. */
  readonly values: ReadonlyMap<string, number>;
  readonly by: ColourBy;
  readonly units: UnitSystem;
  /** Ids of what is selected, labelled first. */
  readonly selection: { readonly nodes: readonly string[]; readonly segments: readonly string[] };
  readonly names: readonly Name[];
  readonly view: Viewport;
  readonly measure: Measure;
}

const chosen = 50;
/** Dimension lines stand in steps of this from the centre line, px, so that those of legs in a row line up. */
const step = 8;

/** Every label that a sheet would like to show, each with the places where it may stand. */
export function labelsOf(input: LabelInput): Wanted[] {
  const { legs, route, selection } = input;
  const wanted: Wanted[] = [];
  const middle = centreOf(legs, input.view);
  for (const leg of legs) {
    const { id } = leg.segment;
    const more = selection.segments.includes(id) ? chosen : 0;
    if (leg.endOn) wanted.push(riserLabel(leg, input, more));
    else {
      const length = screenLength(leg, input.view);
      const dimension = dimensionLabel(leg, input, middle);
      if (dimension) wanted.push({ ...dimension, priority: 80 + more + Math.min(9, length / 100) });
      const value = valueLabel(leg, input);
      if (value) wanted.push({ ...value, priority: 70 + more + Math.min(9, length / 100) });
    }
  }
  wanted.push(...sizeLabels(input));
  const halves = new Map(legs.map((leg) => [leg.segment.id, leg.half]));
  for (const id of new Set(legs.flatMap(({ segment }) => [segment.from, segment.to]))) {
    const node = route.nodes.get(id);
    if (!node) continue;
    const turn = turnLabel(node, input, halves);
    if (turn) wanted.push({ ...turn, priority: 60 + (selection.nodes.includes(node.id) ? chosen : 0) });
  }
  for (const name of input.names) wanted.push(nameLabel(name, input));
  return wanted;
}

export function sectionText(section: Section, units: UnitSystem): string {
  if (section.shape === 'round') return says.round(formatDiameter(section.diameter, units));
  const sides = `${formatDiameter(section.width, units)} × ${formatDiameter(section.height, units)}`;
  return section.shape === 'oval' ? says.oval(sides) : sides;
}

function screenLength(leg: SheetLeg, view: Viewport): number {
  return Math.hypot(leg.to.u - leg.from.u, leg.to.v - leg.from.v) * view.scale;
}

function centreOf(legs: readonly SheetLeg[], view: Viewport): ScreenPoint {
  const ends = legs.flatMap((leg) => [toScreen(leg.from, view), toScreen(leg.to, view)]);
  const n = Math.max(1, ends.length);
  return { x: ends.reduce((t, p) => t + p.x, 0) / n, y: ends.reduce((t, p) => t + p.y, 0) / n };
}

/** A leg on the screen: its ends, its direction, its left-hand normal and half its width, px. */
function frameOf(leg: SheetLeg, view: Viewport) {
  const [from, to] = [toScreen(leg.from, view), toScreen(leg.to, view)];
  const length = Math.max(1e-6, Math.hypot(to.x - from.x, to.y - from.y));
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  return { from, to, length, along, normal: { x: along.y, y: -along.x }, half: leg.half * view.scale };
}

function dimensionLabel(
  leg: SheetLeg,
  input: LabelInput,
  middle: ScreenPoint,
): Omit<Wanted, 'priority'> | null {
  const { from, to, length, along, normal, half } = frameOf(leg, input.view);
  if (length < 14) return null;
  const figure = formatLength(leg.segment.length, input.units);
  const text = leg.inPlane ? figure : says.trueLength(figure);
  const outward =
    Math.sign(dot2(normal, { x: (from.x + to.x) / 2 - middle.x, y: (from.y + to.y) / 2 - middle.y })) || 1;
  const fits = length > extent(text, input.measure, along) * 2 + 12;
  const candidates: Candidate[] = [];
  const first = Math.max(28, extent(text, input.measure, normal) + 9);
  for (const [row, gap] of [first, first + 20, first + 40].entries())
    for (const side of [outward, -outward]) {
      const away = { x: normal.x * side, y: normal.y * side };
      const reachTo = Math.ceil((half + gap) / step) * step;
      const ends = [off(from, away, reachTo), off(to, away, reachTo)] as const;
      const centre = { x: (ends[0].x + ends[1].x) / 2, y: (ends[0].y + ends[1].y) / 2 };
      const at = fits ? centre : off(centre, away, extent(text, input.measure, away) + 3);
      const lead = (node: ScreenPoint) => [off(node, away, half + 5), off(node, away, reachTo + 5)] as const;
      candidates.push({
        box: textBox(at, text, input.measure),
        text,
        dimension: { from: ends[0], to: ends[1], extensions: [lead(from), lead(to)] },
        cost: row * 2 + (side === outward ? 0 : 3),
      });
    }
  return { kind: 'dimension', id: leg.segment.id, candidates };
}

export type ValueInput = Pick<LabelInput, 'values' | 'by' | 'units' | 'view' | 'measure' | 'legs'>;

/** The velocity or loss of a leg: in its duct, there without its unit where that is too long, else beside it. */
export function valueLabel(leg: SheetLeg, input: ValueInput): Omit<Wanted, 'priority'> | null {
  const value = input.values.get(leg.segment.id);
  if (value === undefined) return null;
  const { text, figure } = quantity(kindOf[input.by], value, input.units);
  const shares = [0.55, 0.66, 0.42];
  const bare = alongLeg(leg, figure, input, shares).filter(({ inside }) => inside);
  const candidates = [
    ...alongLeg(leg, text, input, shares),
    ...bare.map((place) => ({ ...place, cost: place.cost + 8 })),
    ...atLeaders(leg, text, input, 10),
  ];
  return { kind: 'value', id: leg.segment.id, candidates };
}

/** The length of a leg, beside it or in its duct. */
export function lengthLabel(leg: SheetLeg, input: ValueInput): Omit<Wanted, 'priority'> {
  const text = formatLength(leg.segment.length, input.units);
  return { kind: 'size', id: leg.segment.id, candidates: alongLeg(leg, text, input, [0.3, 0.75, 0.5]) };
}

/** Places inside the duct where the text fits between its walls, else beside it. */
function alongLeg(
  leg: SheetLeg,
  text: string,
  input: Pick<LabelInput, 'view' | 'measure'>,
  shares: readonly number[],
): Candidate[] {
  const { along, normal, half } = frameOf(leg, input.view);
  const from = toScreen(leg.straightFrom, input.view);
  const to = toScreen(leg.straightTo, input.view);
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const candidates: Candidate[] = [];
  const across = extent(text, input.measure, normal);
  const run = extent(text, input.measure, along);
  for (const [i, share] of shares.entries()) {
    const at = off(from, along, length * share);
    const clearOfEnds = length * Math.min(share, 1 - share) > run + 4;
    if (across + 1 <= half && clearOfEnds && length > 2 * run + 40)
      candidates.push({ box: textBox(at, text, input.measure), text, inside: leg.segment.id, cost: i });
    for (const side of [1, -1])
      candidates.push({
        box: textBox(off(at, normal, side * (half + across + 2)), text, input.measure),
        text,
        cost: 4 + i,
      });
  }
  return candidates;
}

/** How far from its duct a text may stand at the end of a leader, px. */
const leaders = [20, 36, 52] as const;

/** Places off the duct, each at the end of a leader that goes square away from it or aslant. */
function atLeaders(
  leg: SheetLeg,
  text: string,
  input: Pick<LabelInput, 'view' | 'measure' | 'legs'>,
  cost: number,
): Candidate[] {
  if (input.legs.length > mostWithLeaders) return [];
  const { along, normal, half } = frameOf(leg, input.view);
  const [from, to] = [toScreen(leg.straightFrom, input.view), toScreen(leg.straightTo, input.view)];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return [0.5, 0.75, 0.25].flatMap((share, i) =>
    [1, -1].flatMap((side) => {
      const foot = off(off(from, along, length * share), normal, side * half);
      return [0, 0.7, -0.7].flatMap((slant, j) => {
        const away = unit(normal.x * side + along.x * slant, normal.y * side + along.y * slant);
        return leaders.map((reach, row) =>
          led(foot, away, reach, text, input.measure, cost + i * 0.2 + j * 0.4 + row),
        );
      });
    }),
  );
}

/** One size tag for each stretch of duct of the same size: on its longest leg that has room for it. */
function sizeLabels(input: LabelInput): Wanted[] {
  const byId = new Map(input.legs.map((leg) => [leg.segment.id, leg]));
  const stretches: SheetLeg[][] = [];
  let last: string | null = null;
  for (const id of input.route.order) {
    const leg = byId.get(id);
    if (!leg) continue;
    const text = sectionText(leg.segment.section, input.units);
    if (text === last) stretches[stretches.length - 1]?.push(leg);
    else stretches.push([leg]);
    last = text;
  }
  return stretches.flatMap((legs) => {
    const [longest, ...others] = legs.sort(
      (a, b) => screenLength(b, input.view) - screenLength(a, input.view),
    );
    if (!longest) return [];
    const text = sectionText(longest.segment.section, input.units);
    const candidates = [longest, ...others.slice(0, 3)].flatMap((leg, i) => {
      const places = leg.endOn
        ? around(leg, text, input)
        : [...alongLeg(leg, text, input, [0.8, 0.34, 0.7, 0.9]), ...atLeaders(leg, text, input, 12)];
      return places.map((place) => ({ ...place, cost: place.cost + i * 6 }));
    });
    return [{ kind: 'size', id: longest.segment.id, priority: 50, candidates }];
  });
}

function riserLabel(leg: SheetLeg, input: LabelInput, more: number): Wanted {
  const { toward, away } = alongSight[input.sheet];
  const length = formatLength(leg.segment.length, input.units);
  const text = words.sheets.along.leg(leg.toward ? toward : away, length);
  return { kind: 'riser', id: leg.segment.id, priority: 100 + more, candidates: around(leg, text, input) };
}

/** Places around a leg seen end on. */
function around(leg: SheetLeg, text: string, input: LabelInput): Candidate[] {
  const at = toScreen({ u: (leg.from.u + leg.to.u) / 2, v: (leg.from.v + leg.to.v) / 2 }, input.view);
  const half = leg.half * input.view.scale;
  const ways = [
    [1, 0],
    [-1, 0],
    [0.72, -0.72],
    [0.72, 0.72],
    [-0.72, -0.72],
    [-0.72, 0.72],
    [0, -1],
    [0, 1],
  ] as const;
  const beside = ways.map(([x, y], i) => {
    const edge = off(at, { x, y }, half + 8);
    const centre = {
      x: edge.x + (Math.sign(x) * (input.measure(text) + 6)) / 2,
      y: edge.y + (Math.sign(y) * lineHeight) / 2,
    };
    return { box: textBox(centre, text, input.measure), text, cost: i * 0.3 };
  });
  if (input.legs.length > mostWithLeaders) return beside;
  const away = leaders.flatMap((reach, row) =>
    ways.map(([x, y], i) => {
      const way = unit(x, y);
      return led(off(at, way, half), way, reach, text, input.measure, 4 + row + i * 0.3);
    }),
  );
  return [...beside, ...away];
}

/** The angle of a turn that lies in the plane of the sheet, outside its corner. */
function turnLabel(
  node: RouteNode,
  input: LabelInput,
  halves: ReadonlyMap<string, number>,
): Omit<Wanted, 'priority'> | null {
  const bend = node.bend;
  const up = bend && input.route.segments.get(bend.upstream);
  const down = bend && input.route.segments.get(bend.downstream);
  if (!bend || !up || !down) return null;
  const view = views[input.sheet];
  const level = (d: typeof up.direction) => Math.abs(dot(d, view.toward)) < 0.05;
  if (!level(up.direction) || !level(down.direction)) return null;
  const reached = halves.get(up.id);
  if (reached === undefined) return null;
  const half = reached * input.view.scale;
  const [a, b] = [seen(up.direction, view), seen(down.direction, view)];
  const out = { x: a.u - b.u, y: -(a.v - b.v) };
  const size = Math.hypot(out.x, out.y) || 1;
  const outward = { x: out.x / size, y: out.y / size };
  const at = toScreen(seen(node.at, view), input.view);
  const turn = (bend.angle * Math.PI) / 360;
  const corner = (bend.radius / Math.cos(turn)) * input.view.scale;
  const radius = bend.radius * input.view.scale;
  const text = formatAngle(bend.angle);
  const beyond = Math.max(half * 0.3, radius + half - corner);
  const reach = extent(text, input.measure, outward);
  const places = [
    off(at, outward, beyond + 4 + reach),
    off(at, outward, beyond + 10 + reach),
    off(at, outward, -(corner - radius + half + 4 + reach)),
  ];
  const candidates: Candidate[] = places.map((place, i) => ({
    box: textBox(place, text, input.measure),
    text,
    cost: i,
  }));
  const square = Math.abs(bend.angle - 90) < 0.5;
  if (!square && input.legs.length <= mostWithLeaders)
    for (const [row, length] of leaders.entries())
      candidates.push(led(off(at, outward, beyond), outward, length, text, input.measure, 6 + row));
  return { kind: 'turn', id: node.id, candidates };
}

function nameLabel({ id, text, box, inside }: Name, input: LabelInput): Wanted {
  const a = toScreen({ u: box.minU, v: box.maxV }, input.view);
  const b = toScreen({ u: box.maxU, v: box.minV }, input.view);
  const [x, y] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
  const fits = b.x - a.x > input.measure(text) + 8 && b.y - a.y > lineHeight;
  const third = (b.x - a.x) / 3;
  const spots = inside
    ? [
        [x, y],
        [x - third, y],
        [x + third, y],
        [x, b.y - 12],
        [x, a.y + 12],
      ]
    : [
        [x, b.y + 12],
        [x, a.y - 12],
        [x, b.y + 28],
      ];
  const places = inside && !fits ? [] : spots;
  return {
    kind: 'name',
    id,
    priority: 40,
    shy: inside,
    candidates: places.map(([cx, cy], i) => ({
      box: textBox({ x: cx ?? x, y: cy ?? y }, text, input.measure),
      text,
      cost: i,
    })),
  };
}

function dot2(a: ScreenPoint, b: ScreenPoint): number {
  return a.x * b.x + a.y * b.y;
}
