import RBush from 'rbush';
import type { ScreenPoint } from '../graph/sheet.ts';

/** A rectangle in CSS pixels. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** What a label had better not cover; an `edge` is only a line, which a shy label may cross. */
export interface Busy extends Box {
  readonly edge?: boolean;
}

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

/**
 * Gives every label the cheapest of its places that lies wholly in `area` and touches neither a label
 * placed before nor a `kept` box; labels that find none are left out. `busy` boxes may be covered,
 * at a cost that grows with what is covered.
 */
export function placeLabels(
  wanted: readonly Wanted[],
  area: Box,
  kept: readonly Box[],
  busy: readonly Busy[],
): Placed[] {
  const taken = new RBush<Box>().load([...kept]);
  const crowd = new RBush<Busy>().load([...busy]);
  const placed: Placed[] = [];
  for (const label of [...wanted].sort((a, b) => b.priority - a.priority)) {
    const best = cheapest(label, area, taken, crowd);
    if (!best) continue;
    placed.push({ ...best, kind: label.kind, id: label.id });
    taken.insert(grown(best.box, clearance));
    if (best.dimension) for (const line of linesOf(best.dimension)) taken.insert(line);
  }
  return placed;
}

function cheapest(label: Wanted, area: Box, taken: RBush<Box>, crowd: RBush<Busy>): Candidate | null {
  let best: Candidate | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of label.candidates) {
    const { box } = candidate;
    if (!within(box, area) || taken.collides(box)) continue;
    const lines = candidate.dimension ? linesOf(candidate.dimension) : [];
    if (lines.some((line) => taken.collides(line))) continue;
    const over = candidate.inside ? 0 : covered(box, crowd);
    if (label.shy && crowd.search(box).some(({ edge }) => !edge)) continue;
    const cost = candidate.cost + over;
    if (cost < least) {
      best = candidate;
      least = cost;
    }
  }
  return best;
}

/** What an edge costs a text that it crosses, and one that it strikes through; lying wholly on duct costs ten. */
const crossing = 0.5;
const struckThrough = 4;

/** Placed labels moved by pixels. */
export function movedBy(placed: readonly Placed[], dx: number, dy: number): Placed[] {
  const at = ({ x, y }: ScreenPoint) => ({ x: x + dx, y: y + dy });
  return placed.map(({ box, dimension, ...label }) => ({
    ...label,
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
function covered(box: Box, crowd: RBush<Busy>): number {
  const own = Math.max(1, (box.maxX - box.minX) * (box.maxY - box.minY));
  let cost = 0;
  for (const other of crowd.search(box)) {
    const width = Math.min(box.maxX, other.maxX) - Math.max(box.minX, other.minX);
    const height = Math.min(box.maxY, other.maxY) - Math.max(box.minY, other.minY);
    if (!other.edge) cost += (10 * Math.max(0, width) * Math.max(0, height)) / own;
    else cost += width > height ? struckThrough : crossing;
  }
  return cost;
}

/** A dimension line as a thin box; nothing for a slanted one, whose box would block far more than it. */
function linesOf(dimension: DimensionLines): Box[] {
  const { from, to } = dimension;
  if (Math.abs(from.x - to.x) > 2 && Math.abs(from.y - to.y) > 2) return [];
  return [grown(boxAround(from, to), 1)];
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
