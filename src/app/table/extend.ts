import type { Vec3 } from '../../graph/document.ts';
import type { Route } from '../../graph/route.ts';
import type { TraceRow } from '../../graph/trace.ts';
import { add, scale } from '../../graph/vector.ts';
import { words } from '../../words/index.ts';

const says = words.table.ways;

const half = Math.SQRT1_2;

/** Ways that a leg can be drawn without a sheet. */
export const ways = [
  { id: 'up', name: says.up, along: [0, 0, 1] },
  { id: 'down', name: says.down, along: [0, 0, -1] },
  { id: 'east', name: says.east, along: [1, 0, 0] },
  { id: 'north', name: says.north, along: [0, 1, 0] },
  { id: 'west', name: says.west, along: [-1, 0, 0] },
  { id: 'south', name: says.south, along: [0, -1, 0] },
  { id: 'northeast', name: says.northeast, along: [half, half, 0] },
  { id: 'northwest', name: says.northwest, along: [-half, half, 0] },
  { id: 'southwest', name: says.southwest, along: [-half, -half, 0] },
  { id: 'southeast', name: says.southeast, along: [half, -half, 0] },
  { id: 'on', name: says.on, along: null },
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
