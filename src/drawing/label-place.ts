import RBush from 'rbush';
import type { ScreenPoint } from '../graph/sheet.ts';

/** A rectangle in CSS pixels. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * What a label had better not cover; an `edge` is only a line, which a shy label may cross, and what is `solid`
 * is never covered.
 */
export interface Busy extends Box {
  readonly edge?: boolean;
  readonly solid?: boolean;
}

/** Radius of the dot at the foot of a leader, px. */
export const LEADER_DOT = 1.75;

/** A dimension's own lines, px: the line itself, the two that lead to the duct, and the ticks' places. */
export interface DimensionLines {
  readonly from: ScreenPoint;
  readonly to: ScreenPoint;
  readonly extensions: readonly (readonly [ScreenPoint, ScreenPoint])[];
}

/** One place where a label may stand. */
export interface Candidate {
  readonly box: Box;
  readonly text: string;
  readonly dimension?: DimensionLines;
  /** A line from what the text is about to the text, px: a text that stands off covers nothing but edges. */
  readonly leader?: readonly [ScreenPoint, ScreenPoint];
  /** Segment in whose fill the text stands. */
  readonly inside?: string;
  /** What this place costs before what it covers is counted; lower is better. */
  readonly cost: number;
}

export type LabelKind = 'finding' | 'riser' | 'dimension' | 'value' | 'turn' | 'size' | 'name';

export interface Wanted {
  readonly kind: LabelKind;
  readonly id: string;
  /** Higher is placed first. */
  readonly priority: number;
  readonly candidates: readonly Candidate[];
  /** Left out where it would cover anything but an edge. */
  readonly shy?: boolean;
}

export interface Placed extends Candidate {
  readonly kind: LabelKind;
  readonly id: string;
}

/** Free space kept around a label, px. */
const clearance = 3;

/** What stands already: what no text may cover, the texts among it, and lines by what may not cross them. */
interface Taken {
  readonly all: RBush<Box>;
  readonly texts: RBush<Box>;
  /** Dimension lines and leaders, which neither texts nor others of their kind cross. */
  readonly rules: RBush<Box>;
  /** Lines that lead to a dimension, which no text covers. */
  readonly extensions: RBush<Box>;
  readonly crowd: RBush<Busy>;
}

/**
 * Gives every label the cheapest of its places that lies wholly in `area`, touches neither a label placed before
 * nor a line of one nor a `kept` box; labels that find none are left out. `busy` boxes that are not solid may be
 * covered, at a cost that grows with what is covered.
 */
export function placeLabels(
  wanted: readonly Wanted[],
  area: Box,
  kept: readonly Box[],
  busy: readonly Busy[],
): Placed[] {
  const taken: Taken = {
    all: new RBush<Box>().load([...kept]),
    texts: new RBush<Box>(),
    rules: new RBush<Box>(),
    extensions: new RBush<Box>(),
    crowd: new RBush<Busy>().load([...busy]),
  };
  const placed: Placed[] = [];
  for (const label of [...wanted].sort((a, b) => b.priority - a.priority)) {
    const best = cheapest(label, area, taken);
    if (!best) continue;
    placed.push({ ...best, kind: label.kind, id: label.id });
    taken.all.insert(grown(best.box, clearance));
    taken.texts.insert(best.box);
    for (const rule of rulesOf(best)) taken.rules.insert(rule);
    for (const line of extensionsOf(best)) taken.extensions.insert(line);
  }
  return placed;
}

/** How many labels of the kinds have a place in `area` and yet found none free: what zooming in would show. */
export function leftOut(
  wanted: readonly Wanted[],
  placed: readonly Placed[],
  kinds: readonly LabelKind[],
  area: Box,
): number {
  const shown = new Set(placed.map(({ kind, id }) => `${kind} ${id}`));
  return wanted.filter(
    ({ kind, id, candidates }) =>
      kinds.includes(kind) && !shown.has(`${kind} ${id}`) && candidates.some(({ box }) => within(box, area)),
  ).length;
}

function cheapest(label: Wanted, area: Box, taken: Taken): Candidate | null {
  let best: Candidate | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of label.candidates) {
    const { box } = candidate;
    if (candidate.cost >= least || !within(box, area) || !isFree(candidate, taken)) continue;
    const under = candidate.inside ? [] : taken.crowd.search(box);
    const bare = label.shy || candidate.leader !== undefined;
    if (under.some(({ edge, solid }) => solid || (bare && !edge))) continue;
    const cost = candidate.cost + covered(box, under) + (crossesDuct(candidate, taken) ? overDuct : 0);
    if (cost < least) {
      best = candidate;
      least = cost;
    }
  }
  return best;
}

/** True where neither the text of a place nor its lines meet what stands already. */
function isFree(candidate: Candidate, { all, texts, rules, extensions }: Taken): boolean {
  const { box } = candidate;
  if (all.collides(box) || rules.collides(box) || extensions.collides(box)) return false;
  const crossed = candidate.leader ? [all, rules, extensions] : [all, rules];
  if (rulesOf(candidate).some((rule) => crossed.some((tree) => tree.collides(rule)))) return false;
  return !extensionsOf(candidate).some((line) => texts.collides(line));
}

/** What a leader costs that runs over duct. */
const overDuct = 6;
/** So far a leader may run over the duct that it starts at, px. */
const start = 8;

function crossesDuct({ leader }: Candidate, { crowd }: Taken): boolean {
  if (!leader) return false;
  const [from] = leader;
  return alongLine(...leader).some(
    (spot) =>
      Math.hypot((spot.minX + spot.maxX) / 2 - from.x, (spot.minY + spot.maxY) / 2 - from.y) > start &&
      crowd.search(spot).some(({ edge }) => !edge),
  );
}

/** What an edge costs a text that it crosses, and one that it strikes through; lying wholly on duct costs ten. */
const crossing = 0.5;
const struckThrough = 4;

/** Placed labels moved by pixels. */
export function movedBy(placed: readonly Placed[], dx: number, dy: number): Placed[] {
  const at = ({ x, y }: ScreenPoint) => ({ x: x + dx, y: y + dy });
  return placed.map(({ box, dimension, leader, ...label }) => ({
    ...label,
    ...(leader && { leader: [at(leader[0]), at(leader[1])] as const }),
    box: { minX: box.minX + dx, minY: box.minY + dy, maxX: box.maxX + dx, maxY: box.maxY + dy },
    ...(dimension && {
      dimension: {
        from: at(dimension.from),
        to: at(dimension.to),
        extensions: dimension.extensions.map(([a, b]) => [at(a), at(b)] as const),
      },
    }),
  }));
}

/** The cost of what a box covers: ten for all of its area, counted once for each thing under it. */
function covered(box: Box, under: readonly Busy[]): number {
  const own = Math.max(1, (box.maxX - box.minX) * (box.maxY - box.minY));
  let cost = 0;
  for (const other of under) {
    const width = Math.min(box.maxX, other.maxX) - Math.max(box.minX, other.minX);
    const height = Math.min(box.maxY, other.maxY) - Math.max(box.minY, other.minY);
    if (width <= 0 || height <= 0) continue;
    if (!other.edge) cost += (10 * width * height) / own;
    else cost += width > height ? struckThrough : crossing;
  }
  return cost;
}

function rulesOf({ dimension, leader }: Candidate): Box[] {
  if (dimension) return alongLine(...shortened(dimension.from, dimension.to));
  return leader ? alongLine(...leader) : [];
}

function extensionsOf({ dimension }: Candidate): Box[] {
  return dimension ? dimension.extensions.flatMap((line) => alongLine(...line)) : [];
}

/** A dimension line without its ends, where the next one of a chain may begin. */
function shortened(from: ScreenPoint, to: ScreenPoint): [ScreenPoint, ScreenPoint] {
  const share = Math.min(0.4, 4 / Math.max(1, Math.hypot(to.x - from.x, to.y - from.y)));
  const between = (a: ScreenPoint, b: ScreenPoint) => ({
    x: a.x + (b.x - a.x) * share,
    y: a.y + (b.y - a.y) * share,
  });
  return [between(from, to), between(to, from)];
}

/** Length of the boxes that a slanted line is cut into, px. */
const piece = 6;

/** Boxes that cover a line and little else. */
export function alongLine(from: ScreenPoint, to: ScreenPoint): Box[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const slanted = Math.abs(dx) > 2 && Math.abs(dy) > 2;
  const pieces = slanted ? Math.ceil(Math.hypot(dx, dy) / piece) : 1;
  const at = (i: number) => ({ x: from.x + (dx * i) / pieces, y: from.y + (dy * i) / pieces });
  return Array.from({ length: pieces }, (_, i) => grown(boxAround(at(i), at(i + 1)), 1));
}

export function boxAround(a: ScreenPoint, b: ScreenPoint): Box {
  return {
    minX: Math.min(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxX: Math.max(a.x, b.x),
    maxY: Math.max(a.y, b.y),
  };
}

export function boxAt(centre: ScreenPoint, width: number, height: number): Box {
  return {
    minX: centre.x - width / 2,
    minY: centre.y - height / 2,
    maxX: centre.x + width / 2,
    maxY: centre.y + height / 2,
  };
}

export function grown(box: Box, by: number): Box {
  return { minX: box.minX - by, minY: box.minY - by, maxX: box.maxX + by, maxY: box.maxY + by };
}

function within(box: Box, area: Box): boolean {
  return box.minX >= area.minX && box.minY >= area.minY && box.maxX <= area.maxX && box.maxY <= area.maxY;
}
