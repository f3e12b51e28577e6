import type { Segment } from '../document.ts';
import { memoise } from '../memo.ts';
import { across, legsOf, type Piece, type Topology } from './topology.ts';

/** A segment with its ends in the direction of the air. */
export interface Directed {
  readonly segment: Segment;
  readonly from: string;
  readonly to: string;
}

/** Which way the air goes, and in which order it meets the segments. */
export interface Flow {
  readonly directed: ReadonlyMap<string, Directed>;
  /** Segment ids, each run in one go from its hood to its exit. */
  readonly order: readonly string[];
  /** Segments that close a loop. */
  readonly closing: readonly Segment[];
}

interface Walk {
  /** Nodes as they are reached. */
  readonly reached: readonly string[];
  /** The segment by which a node was reached, and from where. */
  readonly parent: ReadonlyMap<string, Directed>;
  readonly closing: readonly Segment[];
}

/**
 * Finds the direction of the air from where hoods and exits lie, whatever order the segments are
 * stored in. Across every segment of a tree the air goes from the side with hoods to the side with
 * exits; where both sides have both, to the side with more exits for its hoods (the solve's sign has
 * the last word there). A segment that closes a loop runs from the end nearer to a hood.
 * Free while the wiring is the same.
 */
export function flowOf({ pieces, legs, roles }: Topology): Flow {
  return flowing(pieces, legs, roles);
}

/** Of a wiring that on which the air's direction depends. */
type Pipes = Pick<Topology, 'legs' | 'roles'>;

const flowing = memoise(
  (pieces: Topology['pieces'], legs: Topology['legs'], roles: Topology['roles']): Flow => {
    const topology: Pipes = { legs, roles };
    const directed = new Map<string, Directed>();
    const order: string[] = [];
    const closing: Segment[] = [];
    for (const piece of pieces) {
      if (piece.segments.length === 0) continue;
      const walk = walkFrom(topology, piece, startOf(topology, piece));
      directTree(topology, piece, walk, directed);
      directClosing(walk, directed);
      closing.push(...walk.closing);
      orderPiece(piece, directed, order);
    }
    return { directed, order, closing };
  },
);

/** A hood; without one a loose end that is no cap; without that the first node drawn. */
function startOf(topology: Pipes, piece: Piece): string {
  return (
    piece.hoods[0] ?? piece.exits.find((id) => topology.roles.get(id) !== 'cap') ?? (piece.nodes[0] as string)
  );
}

function walkFrom(topology: Pipes, piece: Piece, start: string): Walk {
  const reached = [start];
  const parent = new Map<string, Directed>();
  const known = new Set(reached);
  const used = new Set<Segment>();
  for (let i = 0; i < reached.length; i++) {
    const at = reached[i] as string;
    for (const segment of legsOf(topology, at)) {
      const next = across(segment, at);
      if (known.has(next)) continue;
      known.add(next);
      used.add(segment);
      parent.set(next, { segment, from: at, to: next });
      reached.push(next);
    }
  }
  return { reached, parent, closing: piece.segments.filter((segment) => !used.has(segment)) };
}

function directTree(topology: Pipes, piece: Piece, walk: Walk, directed: Map<string, Directed>): void {
  const exits = new Set(piece.exits);
  const beyond = new Map<string, { hoods: number; exits: number }>();
  for (const id of walk.reached) {
    const hoods = topology.roles.get(id) === 'hood' ? 1 : 0;
    beyond.set(id, { hoods, exits: exits.has(id) ? 1 : 0 });
  }
  for (let i = walk.reached.length - 1; i > 0; i--) {
    const id = walk.reached[i] as string;
    const step = walk.parent.get(id) as Directed;
    const side = beyond.get(id) as { hoods: number; exits: number };
    const rest = beyond.get(step.from) as { hoods: number; exits: number };
    rest.hoods += side.hoods;
    rest.exits += side.exits;
    const back = side.hoods * (exits.size - side.exits) > (piece.hoods.length - side.hoods) * side.exits;
    directed.set(step.segment.id, back ? { segment: step.segment, from: id, to: step.from } : step);
  }
}

function directClosing(walk: Walk, directed: Map<string, Directed>): void {
  const rank = new Map(walk.reached.map((id, index) => [id, index]));
  for (const segment of walk.closing) {
    const forward = (rank.get(segment.from) ?? 0) <= (rank.get(segment.to) ?? 0);
    const [from, to] = forward ? [segment.from, segment.to] : [segment.to, segment.from];
    directed.set(segment.id, { segment, from, to });
  }
}

/** Depth first, a segment after all that feed it; segments on a ring that nothing feeds come last. */
function orderPiece(piece: Piece, directed: ReadonlyMap<string, Directed>, order: string[]): void {
  const leaving = new Map<string, Directed[]>(piece.nodes.map((id) => [id, []]));
  const waiting = new Map<string, number>();
  for (const segment of piece.segments) {
    const step = directed.get(segment.id) as Directed;
    leaving.get(step.from)?.push(step);
    waiting.set(step.to, (waiting.get(step.to) ?? 0) + 1);
  }
  const pending: Directed[] = [];
  const leave = (node: string) => pending.push(...(leaving.get(node) ?? []).reverse());
  for (const id of [...piece.nodes].reverse()) if (!waiting.has(id)) leave(id);
  const placed = new Set<string>();
  for (let step = pending.pop(); step; step = pending.pop()) {
    placed.add(step.segment.id);
    order.push(step.segment.id);
    const left = (waiting.get(step.to) ?? 1) - 1;
    waiting.set(step.to, left);
    if (left === 0) leave(step.to);
  }
  for (const segment of piece.segments) if (!placed.has(segment.id)) order.push(segment.id);
}
