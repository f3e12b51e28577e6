import RBush from 'rbush';
import { words } from '../../words/index.ts';
import type { Block, ExitFace, Vec3 } from '../document.ts';
import { keepLatest, memoise } from '../memo.ts';
import type { Places } from '../places.ts';
import type { Finding, Route, RouteBend, RouteNode, RouteSegment, Severity } from '../route.ts';
import { add, scale } from '../vector.ts';
import { type Box, hullOf, overlap } from './gap.ts';
import { arcTubes, coneIn, neighbours, outsideHalf, type Tube, tubeBetween } from './tube.ts';

const says = words.route.room;

/** Overlaps below this are contact, m. */
export const contact = 0.001;

/** The room a route has to fit in, ready to be asked what is near a place. */
export interface Room {
  readonly route: Route;
  readonly exits: readonly ExitFace[];
  readonly chases: readonly Block[];
  /** Wanted between the outside of a duct and what it passes, m. */
  readonly clearance: number;
  /** False where the clearance is the usual one. */
  readonly wantedByJob: boolean;
  readonly places: Places;
  /** A length in the job's units. */
  length(metres: number): string;
  /** Blocks within `margin` metres of a box. */
  near(box: Box, margin: number): readonly Block[];
}

/** A part of the duct that fits or does not: the straight of a leg, or the arc of a bend. */
export interface Part {
  /** As it is spoken of; asked only where there is something to say. */
  words(): string;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
  readonly tubes: readonly Tube[];
  readonly hull: Box;
  /** Legs that meet in it: its own, or the two of a bend. */
  readonly legs: readonly RouteSegment[];
}

interface Boxed {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly block: Block;
}

/** Finds blocks by their plan and then their height. Built once for each list of blocks. */
export const blockIndex = memoise((blocks: readonly Block[]): Room['near'] => {
  const tree = new RBush<Boxed>().load(
    blocks.map((block) => ({
      minX: block.min[0],
      minY: block.min[1],
      maxX: block.max[0],
      maxY: block.max[1],
      block,
    })),
  );
  return ({ min, max }, margin) =>
    tree
      .search({ minX: min[0] - margin, minY: min[1] - margin, maxX: max[0] + margin, maxY: max[1] + margin })
      .map(({ block }) => block)
      .filter((block) => overlap({ min, max }, block, margin + contact));
});

/** What a part takes up in space. */
export type Solid = Pick<Part, 'tubes' | 'hull'>;

/** The straight of a leg, if its bends leave one. */
export function straightOf(leg: RouteSegment, route: Route): Solid | null {
  const [from, to] = [route.nodes.get(leg.from), route.nodes.get(leg.to)];
  return from && to ? straight(leg, from, to, ...neighbours(leg, route)) : null;
}

/** The straight of a leg as a part that can be spoken of. */
export function legPart(leg: RouteSegment, solid: Solid, places: Places): Part {
  return { ...solid, words: () => places.leg(leg.id), nodes: [], segments: [leg.id], legs: [leg] };
}

const straight = keepLatest(
  (leg: RouteSegment, from: RouteNode, to: RouteNode, ...meeting: readonly Vec3[]): Solid | null => {
    const tube = tubeBetween(leg, from, to, meeting);
    if (!tube) return null;
    const cone = coneIn(tube, leg, from);
    return cone
      ? { tubes: [tube, cone], hull: around([hullOf(tube), hullOf(cone)]) }
      : { tubes: [tube], hull: hullOf(tube) };
  },
);

/** The box of a bend's corner and its two tangent points, grown by the outside of its duct, which holds its arc. */
export function cornerOf(node: RouteNode, route: Route): Box | null {
  const { bend } = node;
  const upstream = bend && route.segments.get(bend.upstream);
  const downstream = bend && route.segments.get(bend.downstream);
  if (!bend || bend.radius <= 0 || !upstream || !downstream) return null;
  return corner(node, bend, upstream, downstream);
}

const corner = keepLatest(
  (node: RouteNode, { tangent }: RouteBend, upstream: RouteSegment, downstream: RouteSegment): Box => {
    const ends = [upstream, downstream].map((leg) =>
      add(node.at, scale(leg.direction, leg.from === node.id ? tangent : -tangent)),
    );
    const around = outsideHalf(upstream);
    const reach = (sense: 1 | -1) =>
      ([0, 1, 2] as const).map(
        (axis) => sense * (Math.max(...[node.at, ...ends].map((at) => sense * at[axis])) + around),
      ) as Vec3;
    return { min: reach(-1), max: reach(1) };
  },
);

/** The arc of a bend, if it has one. */
export function arcPart(node: RouteNode, route: Route, places: Places): Part | null {
  const legs = [node.bend?.upstream, node.bend?.downstream].flatMap(
    (id) => (id !== undefined && route.segments.get(id)) || [],
  );
  const tubes = arcTubes(node, route);
  if (tubes.length === 0) return null;
  return {
    words: () => places.node(node.id),
    nodes: [node.id],
    segments: [],
    tubes,
    hull: around(tubes.map(hullOf)),
    legs,
  };
}

/** The box around some boxes. */
export function around(boxes: readonly Box[]): Box {
  const side = (corner: 'min' | 'max', pick: (...values: number[]) => number) =>
    ([0, 1, 2] as const).map((axis) => pick(...boxes.map((box) => box[corner][axis]))) as Vec3;
  return { min: side('min', Math.min), max: side('max', Math.max) };
}

/** A block as it is spoken of: "joist 4", "the beam". */
export function blockWords(block: Block): string {
  return says.block(block.name.trim() || says.kinds[block.kind]);
}

/** Which way a move along an axis goes, and the side of a block that looks that way. */
export function wayWords(axis: 0 | 1 | 2, sense: 1 | -1): { readonly move: string; readonly side: string } {
  const way = sense > 0 ? says.plus : says.minus;
  return { move: way.move[axis] ?? '', side: way.side[axis] ?? '' };
}

/** A finding about a part and some blocks, its id made from the rule and both. */
export function fitFinding(
  rule: string,
  severity: Severity,
  part: Part,
  blocks: readonly Block[],
  message: string,
  rest: { readonly remedy: string; readonly source?: string },
): Finding {
  const ids = blocks.map((block) => block.id);
  return {
    id: `${rule}:${[...part.nodes, ...part.segments, ...ids].join('+')}`,
    rule,
    severity,
    message,
    ...rest,
    nodes: part.nodes,
    segments: part.segments,
    blocks: ids,
  };
}
