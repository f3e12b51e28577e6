import type { Air, FanCurve, Network, NetworkEdge, NetworkNode } from '../hydraulics/types.ts';
import type { Plan } from './plan.ts';
import type { Route } from './route.ts';

/** The fan that blows into each hood's collar, by the hood's node. */
export type Fans = ReadonlyMap<string, FanCurve>;

/** Names of edges and nodes in the network, so that what is solved finds its way back to the drawing. */
export const named = {
  room: 'room',
  node: (id: string) => `at/${id}`,
  duct: (id: string) => `duct/${id}`,
  fan: (node: string) => `fan/${node}`,
} as const;

/**
 * The hydraulic network of a planned route: one edge a leg with all its losses, one edge a fan from
 * the room to its collar, and every end of the run outdoors at 0 Pa, its own loss included. The room
 * stands at 0 Pa until a house is put around it. Pieces that no fan blows into are left out.
 */
export function toNetwork(route: Route, plan: Plan, fans: Fans, air: Air): Network {
  const blown = reachedFrom([...fans.keys()], route);
  const nodes: NetworkNode[] = [{ id: named.room, pressure: 0 }];
  for (const id of blown)
    nodes.push(isEnd(route, id) ? { id: named.node(id), pressure: 0 } : { id: named.node(id) });
  const ducts: NetworkEdge[] = plan.legs
    .filter((leg) => blown.has(leg.from))
    .map((leg) => ({
      id: named.duct(leg.id),
      from: named.node(leg.from),
      to: named.node(leg.to),
      parts: [leg.duct, ...leg.fittings.flatMap((fitting) => fitting.loss.parts)],
    }));
  const blowers: NetworkEdge[] = [...fans].map(([node, fan]) => ({
    id: named.fan(node),
    from: named.room,
    to: named.node(node),
    parts: [],
    fan,
  }));
  return { nodes, edges: [...blowers, ...ducts], air };
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
