import type { Route } from './route.ts';

/**
 * How far a change goes from the segment that it starts at: `fitting` to the next bend, change of size,
 * junction or end; `junction` to where runs join or end; `run` to all that hangs together.
 */
export type Reach = 'fitting' | 'junction' | 'run';

/** Segments within reach of one, both ways along the duct, in the order of the air; none for one that is not there. */
export function stretchFrom(route: Route, segmentId: string, reach: Reach): readonly string[] {
  if (!route.segments.has(segmentId)) return [];
  const taken = new Set([segmentId]);
  for (const id of taken) {
    const leg = route.segments.get(id);
    for (const end of leg ? [leg.from, leg.to] : []) {
      const node = route.nodes.get(end);
      if (!node || !goesOn(node.kind, node.segments.length, reach)) continue;
      for (const next of node.segments) taken.add(next);
    }
  }
  return route.order.filter((id) => taken.has(id));
}

function goesOn(kind: string, legs: number, reach: Reach): boolean {
  if (reach === 'run') return true;
  if (reach === 'junction') return legs === 2 && kind !== 'hood';
  return kind === 'joint';
}
