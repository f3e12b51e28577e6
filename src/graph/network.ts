import { type House, houseElements, OUTDOORS, ROOM } from '../hydraulics/house.ts';
import type { Air, FanCurve, Network, NetworkEdge, NetworkNode } from '../hydraulics/types.ts';
import type { Plan } from './plan.ts';
import type { Route } from './route.ts';

/** The fan that blows into each hood's collar, or in the run, by its node. */
export type Fans = ReadonlyMap<string, FanCurve>;

/** Names of edges and nodes in the network, so that what is solved finds its way back to the drawing. */
export const named = {
  room: ROOM,
  node: (id: string) => `at/${id}`,
  /** The side of a fan in the run that the air comes in by. */
  inlet: (id: string) => `inlet/${id}`,
  duct: (id: string) => `duct/${id}`,
  fan: (node: string) => `fan/${node}`,
  leak: (node: string) => `leak/${node}`,
} as const;

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
  const blown = reachedFrom([...fans.keys()], route);
  const house =
    'volume' in around ? houseElements(around) : { room: { id: ROOM, pressure: around.pressure }, edges: [] };
  const nodes: NetworkNode[] = [house.room];
  const leaks = [...plan.leaks].filter(([id]) => blown.has(id) && !isEnd(route, id));
  if (house.edges.length + leaks.length > 0) nodes.push({ id: OUTDOORS, pressure: 0 });
  const inRun = [...boosters].filter(([id]) => blown.has(id));
  for (const id of blown)
    nodes.push(isEnd(route, id) ? { id: named.node(id), pressure: 0 } : { id: named.node(id) });
  for (const [id] of inRun) nodes.push({ id: named.inlet(id) });
  const ducts: NetworkEdge[] = plan.legs
    .filter((leg) => blown.has(leg.from))
    .map((leg) => ({
      id: named.duct(leg.id),
      from: named.node(leg.from),
      to: boosters.has(leg.to) ? named.inlet(leg.to) : named.node(leg.to),
      parts: [leg.duct, ...leg.fittings.flatMap((fitting) => fitting.loss.parts)],
    }));
  const fanEdge = (from: string, node: string, fan: FanCurve): NetworkEdge => ({
    id: named.fan(node),
    from,
    to: named.node(node),
    parts: [],
    fan,
  });
  return {
    nodes,
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

/** True where the run leaves to the outdoors. */
export function isEnd(route: Route, id: string): boolean {
  const node = route.nodes.get(id);
  return node !== undefined && node.kind !== 'hood' && node.segments.length === 1;
}

/** Every node that hangs together with the given ones. */
export function reachedFrom(starts: readonly string[], route: Route): ReadonlySet<string> {
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
