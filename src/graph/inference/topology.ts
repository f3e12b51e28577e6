import type { Node, Scheme, Segment } from '../document.ts';

/** The drawn graph with its ends looked up: only segments that can be laid, each node's legs at hand. */
export interface Topology extends Wiring {
  readonly nodes: ReadonlyMap<string, Node>;
}

/** What hangs together how: of a topology that which does not change where a node is only moved. */
export interface Wiring {
  /** Segments with two different, known ends, in the document's order. */
  readonly segments: readonly Segment[];
  readonly legs: ReadonlyMap<string, readonly Segment[]>;
  /** Segments that name a node which is not there, or run from a node to itself. */
  readonly broken: readonly Segment[];
  readonly pieces: readonly Piece[];
  readonly roles: ReadonlyMap<string, Node['role']>;
}

/** What hangs together. */
export interface Piece {
  readonly nodes: readonly string[];
  readonly segments: readonly Segment[];
  readonly hoods: readonly string[];
  /** Caps with a duct on one side, and ducts that end open. */
  readonly exits: readonly string[];
}

const none: readonly Segment[] = [];

/** Segments that meet at a node, in the document's order; none for an unknown node. */
export function legsOf(topology: Pick<Topology, 'legs'>, node: string): readonly Segment[] {
  return topology.legs.get(node) ?? none;
}

/** The other end of a segment. */
export function across(segment: Segment, node: string): string {
  return segment.from === node ? segment.to : segment.from;
}

/** Indexes a scheme. Linear in nodes and segments; refuses nothing, what is broken is set aside. */
export function topologyOf(scheme: Scheme): Topology {
  const nodes = new Map(scheme.nodes.map((node) => [node.id, node]));
  return { nodes, ...wiringOf(scheme) };
}

const wirings = new WeakMap<
  Scheme['segments'],
  { readonly nodes: Scheme['nodes']; readonly wiring: Wiring }
>();

/** The wiring of a scheme: the same object as before where neither segments nor the nodes' names and roles differ. */
function wiringOf(scheme: Scheme): Wiring {
  const known = wirings.get(scheme.segments);
  if (known && sameRoles(known.nodes, scheme.nodes)) return known.wiring;
  const wiring = wired(scheme);
  wirings.set(scheme.segments, { nodes: scheme.nodes, wiring });
  return wiring;
}

function sameRoles(some: readonly Node[], others: readonly Node[]): boolean {
  return (
    some.length === others.length &&
    some.every((node, i) => {
      const other = others[i] as Node;
      return node === other || (node.id === other.id && node.role === other.role);
    })
  );
}

function wired(scheme: Scheme): Wiring {
  const segments: Segment[] = [];
  const broken: Segment[] = [];
  const legs = new Map<string, Segment[]>();
  for (const node of scheme.nodes) legs.set(node.id, []);
  for (const segment of scheme.segments) {
    const from = legs.get(segment.from);
    const to = legs.get(segment.to);
    if (!from || !to || from === to) {
      broken.push(segment);
      continue;
    }
    segments.push(segment);
    from.push(segment);
    to.push(segment);
  }
  const roles = new Map(scheme.nodes.map(({ id, role }) => [id, role]));
  return { segments, legs, broken, pieces: piecesOf(roles, legs), roles };
}

function piecesOf(roles: Topology['roles'], legs: ReadonlyMap<string, readonly Segment[]>): Piece[] {
  const seen = new Set<string>();
  const pieces: Piece[] = [];
  for (const start of roles.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const members = [start];
    const segments = new Set<Segment>();
    for (let i = 0; i < members.length; i++) {
      const at = members[i] as string;
      for (const segment of legs.get(at) ?? none) {
        segments.add(segment);
        const next = across(segment, at);
        if (seen.has(next)) continue;
        seen.add(next);
        members.push(next);
      }
    }
    pieces.push({
      nodes: members,
      segments: [...segments],
      hoods: members.filter((id) => roles.get(id) === 'hood'),
      exits: members.filter((id) => roles.get(id) !== 'hood' && legs.get(id)?.length === 1),
    });
  }
  return pieces;
}
