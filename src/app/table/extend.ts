import type { Vec3 } from '../../graph/document.ts';
import type { Route } from '../../graph/route.ts';
import type { TraceRow } from '../../graph/trace.ts';
import { add, scale } from '../../graph/vector.ts';

const half = Math.SQRT1_2;

/** Ways that a leg can be drawn without a sheet. */
export const ways = [
  { id: 'up', name: 'Up', along: [0, 0, 1] },
  { id: 'down', name: 'Down', along: [0, 0, -1] },
  { id: 'east', name: 'East', along: [1, 0, 0] },
  { id: 'north', name: 'North', along: [0, 1, 0] },
  { id: 'west', name: 'West', along: [-1, 0, 0] },
  { id: 'south', name: 'South', along: [0, -1, 0] },
  { id: 'northeast', name: 'Northeast', along: [half, half, 0] },
  { id: 'northwest', name: 'Northwest', along: [-half, half, 0] },
  { id: 'southwest', name: 'Southwest', along: [-half, -half, 0] },
  { id: 'southeast', name: 'Southeast', along: [half, -half, 0] },
  { id: 'on', name: 'Straight on', along: null },
] as const satisfies readonly { id: string; name: string; along: Vec3 | null }[];

export type WayId = (typeof ways)[number]['id'];

/** The node from which a run goes on when a row is at hand: the row's own, or the end of its duct. */
export function endOf(row: TraceRow | undefined): string | undefined {
  if (!row) return undefined;
  return row.kind === 'node' ? row.id : row.to;
}

/** Where a leg of `length` metres ends; `null` for straight on where no duct arrives. */
export function legEnd(route: Route, from: string, way: WayId, length: number): Vec3 | null {
  const node = route.nodes.get(from);
  if (!node) return null;
  const arriving = node.segments
    .map((id) => route.segments.get(id))
    .find((leg) => leg !== undefined && leg.to === from);
  const along = ways.find(({ id }) => id === way)?.along ?? arriving?.direction;
  return along ? add(node.at, scale(along as Vec3, length)) : null;
}
