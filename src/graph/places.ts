import { words } from '../words/index.ts';
import type { Block } from './document.ts';
import { memoise } from './memo.ts';
import type { Route, RouteNode } from './route.ts';

const says = words.route.places;

/** Names places of a route in trade words. */
export interface Places {
  /** "turn 2 of 4", "the hood", "the cap", "the open end". */
  node(id: string): string;
  /** "turn 2", where how many there are goes without saying. */
  brief(id: string): string;
  /** Short enough for a row, without an article: "turn 2", "hood", "open end". */
  short(id: string): string;
  /** Its number where it is one of several turns, else null. */
  turnNumber(id: string): number | null;
  /** "turn 2 of 4, the 90° bend above the wall cabinet". */
  turn(id: string): string;
  /** "the leg from turn 1 to turn 2". */
  leg(id: string): string;
  /** Where a leg is, beside what is said of it: "from turn 1 to turn 2". */
  between(id: string): string;
}

/** Words for the nodes and legs of a route, counted along the run in the direction of the air. */
export function placesOf(route: Route, blocks: readonly Block[] = []): Places {
  const counted = () => countedAlong(route);
  const numbered = (id: string, kind: Counted & keyof typeof says.one) => {
    const { counts, numbers } = counted();
    return counts[kind] > 1 ? says.numbered(says.several[kind], numbers.get(id)) : says.one[kind];
  };

  const named = (id: string, brief: boolean): string => {
    const at = route.nodes.get(id);
    if (!at) return says.noNode;
    if (at.bend) {
      const { counts, numbers } = counted();
      if (counts.turn === 1) return says.theTurn;
      const number = numbers.get(id) ?? 1;
      return brief ? says.turn(number) : says.turnOf(number, counts.turn);
    }
    switch (at.kind) {
      case 'hood':
      case 'cap':
      case 'junction':
        return numbered(id, at.kind);
      case 'open end':
        return numbered(id, 'open');
      case 'loose':
        return says.loose;
      case 'transition':
        return says.sizeChangeAfter(before(id, brief));
      default:
        return says.jointAfter(before(id, brief));
    }
  };
  const node = (id: string) => named(id, false);

  /** The nearest named place upstream of a joint. */
  const before = (id: string, brief: boolean): string => {
    const { numbers } = counted();
    const seen = new Set<string>();
    let at = id;
    while (!seen.has(at)) {
      seen.add(at);
      const arriving = route.nodes.get(at)?.segments.find((s) => route.segments.get(s)?.to === at);
      const from = arriving && route.segments.get(arriving)?.from;
      if (!from) break;
      if (numbers.has(from)) return named(from, brief);
      at = from;
    }
    return says.start;
  };

  return {
    node,
    brief: (id) => named(id, true),
    turn(id) {
      const at = route.nodes.get(id);
      if (!at?.bend) return node(id);
      const bend = says.bend(node(id), Math.round(at.bend.angle));
      const under = blockUnder(at, blocks);
      return under ? says.above(bend, under.name) : bend;
    },
    short(id) {
      const at = route.nodes.get(id);
      if (!at) return says.short.noNode;
      const { counts, numbers } = counted();
      if (at.bend) return counts.turn === 1 ? says.short.turn : says.turn(numbers.get(id) ?? 1);
      switch (at.kind) {
        case 'hood':
        case 'cap':
        case 'junction':
        case 'open end': {
          const kind = at.kind === 'open end' ? 'open' : at.kind;
          const name = says.several[kind];
          return counts[kind] > 1 ? says.numbered(name, numbers.get(id)) : name;
        }
        case 'loose':
          return says.short.loose;
        case 'transition':
          return says.short.sizeChange;
        default:
          return says.short.joint;
      }
    },
    turnNumber(id) {
      const { counts, numbers } = counted();
      return route.nodes.get(id)?.bend && counts.turn > 1 ? (numbers.get(id) ?? 1) : null;
    },
    between(id) {
      const leg = route.segments.get(id);
      return leg ? says.between(named(leg.from, true), named(leg.to, true)) : says.noLeg;
    },
    leg(id) {
      const leg = route.segments.get(id);
      return leg ? says.leg(named(leg.from, true), named(leg.to, true)) : says.noLeg;
    },
  };
}

/** What is numbered where a route has several of it. */
type Counted = 'turn' | 'junction' | 'cap' | 'hood' | 'open';

/** How many a route has of each, and the number of every one, in the order of the air. Counted when first spoken of. */
const countedAlong = memoise((route: Route) => {
  const numbers = new Map<string, number>();
  const counts: Record<Counted, number> = { turn: 0, junction: 0, cap: 0, hood: 0, open: 0 };
  const count = (id: string) => {
    const node = route.nodes.get(id);
    const kind = node && countedAs(node);
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
  return { counts, numbers };
});

function countedAs(node: RouteNode): Counted | undefined {
  if (node.bend) return 'turn';
  if (node.kind === 'junction' || node.kind === 'cap' || node.kind === 'hood') return node.kind;
  return node.kind === 'open end' ? 'open' : undefined;
}

function blockUnder({ at: [x, y, z] }: RouteNode, blocks: readonly Block[]): Block | undefined {
  return blocks.find(
    ({ kind, min, max }) =>
      kind === 'cabinet' && x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1] && z >= max[2],
  );
}

/** The sentence with a capital letter. */
export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
