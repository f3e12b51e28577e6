import type { Block } from './document.ts';
import type { Route, RouteNode } from './route.ts';

/** Names places of a route in trade words. */
export interface Places {
  /** "turn 2 of 4", "the hood", "the cap", "the open end". */
  node(id: string): string;
  /** "turn 2 of 4, the 90° bend above the wall cabinet". */
  turn(id: string): string;
  /** "the leg from turn 1 to turn 2". */
  leg(id: string): string;
}

/** Words for the nodes and legs of a route, counted along the run in the direction of the air. */
export function placesOf(route: Route, blocks: readonly Block[] = []): Places {
  const numbers = new Map<string, number>();
  const counts = { turn: 0, junction: 0, cap: 0, hood: 0, open: 0 };
  const kindOf = (node: RouteNode): keyof typeof counts | undefined => {
    if (node.bend) return 'turn';
    if (node.kind === 'junction' || node.kind === 'cap' || node.kind === 'hood') return node.kind;
    return node.kind === 'open end' ? 'open' : undefined;
  };
  const count = (id: string) => {
    const node = route.nodes.get(id);
    const kind = node && kindOf(node);
    if (!kind || numbers.has(id)) return;
    counts[kind] += 1;
    numbers.set(id, counts[kind]);
  };
  for (const id of route.order) {
    const leg = route.segments.get(id);
    if (!leg) continue;
    count(leg.from);
    count(leg.to);
  }
  const numbered = (id: string, kind: keyof typeof counts, word: string) =>
    counts[kind] > 1 ? `${word} ${numbers.get(id) ?? ''}`.trim() : `the ${word}`;

  const node = (id: string): string => {
    const at = route.nodes.get(id);
    if (!at) return 'a node that is not there';
    if (at.bend) return counts.turn === 1 ? 'the turn' : `turn ${numbers.get(id) ?? 1} of ${counts.turn}`;
    switch (at.kind) {
      case 'hood':
        return numbered(id, 'hood', 'hood');
      case 'cap':
        return numbered(id, 'cap', 'cap');
      case 'junction':
        return numbered(id, 'junction', 'junction');
      case 'open end':
        return numbered(id, 'open', 'open end');
      case 'loose':
        return 'a loose point';
      case 'transition':
        return `the change of size after ${before(id)}`;
      default:
        return `the joint after ${before(id)}`;
    }
  };

  /** The nearest named place upstream of a joint. */
  const before = (id: string): string => {
    const seen = new Set<string>();
    let at = id;
    while (!seen.has(at)) {
      seen.add(at);
      const arriving = route.nodes.get(at)?.segments.find((s) => route.segments.get(s)?.to === at);
      const from = arriving && route.segments.get(arriving)?.from;
      if (!from) break;
      if (numbers.has(from)) return node(from);
      at = from;
    }
    return 'the start';
  };

  return {
    node,
    turn(id) {
      const at = route.nodes.get(id);
      if (!at?.bend) return node(id);
      return `${node(id)}, the ${Math.round(at.bend.angle)}° bend${above(at, blocks)}`;
    },
    leg(id) {
      const leg = route.segments.get(id);
      if (!leg) return 'a leg that is not there';
      return `the leg from ${node(leg.from)} to ${node(leg.to)}`.replace(/ of \d+/g, '');
    },
  };
}

function above(node: RouteNode, blocks: readonly Block[]): string {
  const [x, y, z] = node.at;
  const under = blocks.find(
    ({ kind, min, max }) =>
      kind === 'cabinet' && x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1] && z >= max[2],
  );
  return under ? ` above the ${under.name.replace(/^the /i, '')}` : '';
}

/** The sentence with a capital letter. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
