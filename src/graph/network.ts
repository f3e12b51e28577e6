import { type House, houseElements, OUTDOORS, ROOM } from '../hydraulics/house.ts';
import type { Air, FanCurve, Network, NetworkEdge, NetworkNode } from '../hydraulics/types.ts';
import { memoise } from './memo.ts';
import { named } from './named.ts';
import type { Plan, PlannedLeg } from './plan.ts';
import type { Route } from './route.ts';

/** The fan that blows into each hood's collar, or in the run, by its node. */
export type Fans = ReadonlyMap<string, FanCurve>;

/** C of a sharp-edged hole on its own area, `1/Cd²` with Cd 0.61. From memory. */
const HOLE_C = 2.69;

/** What stands around the ducts: a house with its leaks and fans, or a room held at a pressure, Pa. */
export type Around = House | { readonly pressure: number };

/**
 * The hydraulic network of a planned route: one edge a leg with all its losses, one edge a fan from
 * the room to its collar, one a fan in the run, and every end of the run outdoors at 0 Pa, its own loss
 * included. In a house the room's pressure is found with the flows: leaks and make-up air join it to the
 * outdoors, other fans draw from it. Pieces that no hood blows into are left out.
 *
 * @param boosters fans in the run, at nodes with one leg in and one out
 */
export function toNetwork(
  route: Route,
  plan: Plan,
  fans: Fans,
  boosters: Fans,
  around: Around,
  air: Air,
): Network {
  const { blown, places, ducts } = ductwork(route, plan, idsOf(fans), idsOf(boosters));
  const house =
    'volume' in around ? houseElements(around) : { room: { id: ROOM, pressure: around.pressure }, edges: [] };
  const leaks = [...plan.leaks].filter(([id]) => blown.has(id) && !isEnd(route, id));
  const outdoors = house.edges.length + leaks.length > 0 ? [{ id: OUTDOORS, pressure: 0 }] : [];
  const inRun = [...boosters].filter(([id]) => blown.has(id));
  const fanEdge = (from: string, node: string, fan: FanCurve): NetworkEdge => ({
    id: named.fan(node),
    from,
    to: named.node(node),
    parts: [],
    fan,
  });
  return {
    nodes: [house.room, ...outdoors, ...places],
    edges: [
      ...[...fans].map(([node, fan]) => fanEdge(ROOM, node, fan)),
      ...ducts,
      ...inRun.map(([node, fan]) => fanEdge(named.inlet(node), node, fan)),
      ...leaks.map(
        ([id, area]): NetworkEdge => ({
          id: named.leak(id),
          from: named.node(id),
          to: OUTDOORS,
          parts: [{ kind: 'local', c: HOLE_C, area }],
        }),
      ),
      ...house.edges,
    ],
    air,
  };
}

const idsOf = (fans: Fans): string => JSON.stringify([...fans.keys()]);

/**
 * What of the network is the same at every speed: the nodes that the fans reach, and the ducts between them.
 *
 * @param fans node ids as JSON; likewise `boosters`
 */
const ductwork = memoise((route: Route, plan: Plan, fans: string, boosters: string) => {
  const blown = reachedFrom(JSON.parse(fans) as string[], route);
  const inRun = new Set(JSON.parse(boosters) as string[]);
  const places = [...blown].map(
    (id): NetworkNode => (isEnd(route, id) ? { id: named.node(id), pressure: 0 } : { id: named.node(id) }),
  );
  const inlets = [...inRun].filter((id) => blown.has(id)).map((id): NetworkNode => ({ id: named.inlet(id) }));
  const ducts = plan.legs
    .filter((leg) => blown.has(leg.from))
    .map(({ edge, to }) => (inRun.has(to) ? { ...edge, to: named.inlet(to) } : edge));
  return { blown, places: [...places, ...inlets], ducts };
});

/** True where the run leaves to the outdoors. */
export function isEnd(route: Route, id: string): boolean {
  const node = route.nodes.get(id);
  return node !== undefined && node.kind !== 'hood' && node.segments.length === 1;
}

/** True where air that is blown in at a node can leave to the outdoors. */
export const hasWayOut = memoise((route: Route, node: string): boolean =>
  [...reachedFrom([node], route)].some((id) => isEnd(route, id)),
);

/** The legs that hang together with a hood, in flow order, and how they follow each other: by number in `legs`. */
export interface Run {
  readonly legs: readonly PlannedLeg[];
  /** The legs that start at the hood. */
  readonly first: readonly number[];
  /** Of each leg those that end where it starts. */
  readonly before: readonly (readonly number[])[];
  /** Of each leg those that start where it ends. */
  readonly after: readonly (readonly number[])[];
}

/** The run from a hood's node, the same at every speed. */
export const runFrom = memoise((route: Route, plan: Plan, node: string): Run => {
  const piece = reachedFrom([node], route);
  const legs = plan.legs.filter((leg) => piece.has(leg.from));
  const starting = new Map<string, number[]>();
  const ending = new Map<string, number[]>();
  legs.forEach(({ from, to }, i) => {
    listIn(starting, from).push(i);
    listIn(ending, to).push(i);
  });
  return {
    legs,
    first: starting.get(node) ?? [],
    before: legs.map(({ from }) => ending.get(from) ?? []),
    after: legs.map(({ to }) => starting.get(to) ?? []),
  };
});

function listIn<Item>(lists: Map<string, Item[]>, key: string): Item[] {
  const list = lists.get(key) ?? [];
  if (list.length === 0) lists.set(key, list);
  return list;
}

/** Every node that hangs together with the given ones. */
function reachedFrom(starts: readonly string[], route: Route): ReadonlySet<string> {
  const reached = new Set(starts);
  for (const id of reached) {
    for (const segment of route.nodes.get(id)?.segments ?? []) {
      const leg = route.segments.get(segment);
      if (!leg) continue;
      reached.add(leg.from);
      reached.add(leg.to);
    }
  }
  return reached;
}
