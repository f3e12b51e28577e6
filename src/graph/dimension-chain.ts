import type { Block, Node, Vec3 } from './document.ts';
import { project, type SheetId } from './sheet.ts';

/** What a tick of a chain is taken from. */
export type TickSource =
  | { readonly kind: 'node'; readonly id: string }
  | { readonly kind: 'block'; readonly id: string; readonly face: 'low' | 'high' };

export interface Tick {
  /** m along the axis. */
  readonly at: number;
  /** What lies here: a node first, whose place is then the tick's. */
  readonly sources: readonly TickSource[];
}

export interface DimensionChain {
  readonly axis: 'u' | 'v';
  /** In order along the axis. */
  readonly ticks: readonly Tick[];
  /** Between each tick and the next, m. */
  readonly spans: readonly { readonly from: number; readonly to: number; readonly length: number }[];
  /** From the first tick to the last, m: what the spans add up to. */
  readonly total: number;
}

/** Places nearer than this are one tick, m: thinner than any line that a tape is held to. */
export const sameTick = 0.003;

/**
 * A chain of dimensions along an axis of a sheet, through nodes and the faces of blocks. Places within
 * `tolerance` metres of the first of them share its tick, so that ticks never run together into one over
 * a long row; a node's place goes before a face's.
 */
export function dimensionChain(
  nodes: readonly Pick<Node, 'id' | 'at'>[],
  blocks: readonly Pick<Block, 'id' | 'min' | 'max'>[],
  sheet: SheetId,
  axis: 'u' | 'v',
  tolerance: number = sameTick,
): DimensionChain {
  const along = (at: Vec3) => project(at, sheet)[axis];
  const places: { readonly at: number; readonly source: TickSource }[] = [
    ...nodes.map(({ id, at }) => ({ at: along(at), source: { kind: 'node' as const, id } })),
    ...blocks.flatMap(({ id, min, max }) => [
      { at: along(min), source: { kind: 'block' as const, id, face: 'low' as const } },
      { at: along(max), source: { kind: 'block' as const, id, face: 'high' as const } },
    ]),
  ].sort((one, other) => one.at - other.at);
  const ticks: Tick[] = [];
  for (let i = 0; i < places.length; ) {
    const start = (places[i] as (typeof places)[0]).at;
    let end = i;
    while (end < places.length && (places[end] as (typeof places)[0]).at - start <= tolerance) end += 1;
    const group = places.slice(i, end);
    const shown = group.find(({ source }) => source.kind === 'node') ?? group[0];
    const others = group.filter((place) => place !== shown);
    if (shown) ticks.push({ at: shown.at, sources: [shown, ...others].map(({ source }) => source) });
    i = end;
  }
  const spans = ticks.slice(1).map(({ at }, i) => {
    const from = (ticks[i] as Tick).at;
    return { from, to: at, length: at - from };
  });
  return { axis, ticks, spans, total: (ticks.at(-1)?.at ?? 0) - (ticks[0]?.at ?? 0) };
}
