import type { Block, Job, Vec3 } from './document.ts';
import { outsideHalf } from './fit/tube.ts';
import { memoise } from './memo.ts';
import type { Route } from './route.ts';

/** What a cap keeps its distance from, by the name of its distance in the document. */
export type Surrounding = 'propertyLine' | 'opening' | 'intake';

const what: Readonly<Partial<Record<Block['kind'], Surrounding>>> = {
  'lot line': 'propertyLine',
  window: 'opening',
  intake: 'intake',
};

/** The blocks that duct can run into: all but those that mark what stands around a cap. Free where none does. */
export const solidBlocks = memoise((blocks: readonly Block[]): readonly Block[] =>
  blocks.some(({ kind }) => what[kind]) ? blocks.filter(({ kind }) => !what[kind]) : blocks,
);

/** A thing around a cap as it is drawn. */
export interface DrawnNear {
  readonly block: Block;
  /** From the rim of the duct at the cap to the nearest of the thing, m; never more than there is. */
  readonly distance: number;
  /** How far the rim's lowest place stands above the thing's top, m; below it where negative. */
  readonly above: number;
}

/** The drawn things of a kind around a cap, the nearest first. None where the cap has no duct. */
export function drawnAround(job: Job, route: Route, cap: string, kind: Surrounding): readonly DrawnNear[] {
  const node = route.nodes.get(cap);
  const leg = route.segments.get(node?.segments[0] ?? '');
  if (!node || !leg) return [];
  const rim = outsideHalf(leg);
  return job.blocks
    .filter((block) => what[block.kind] === kind)
    .map((block) => ({
      block,
      distance: Math.max(0, gapTo(node.at, block) - rim),
      above: node.at[2] - rim - block.max[2],
    }))
    .sort((a, b) => a.distance - b.distance);
}

/** Distance from a place to a box, m; 0 within it. */
function gapTo(at: Vec3, { min, max }: Block): number {
  return Math.hypot(
    ...([0, 1, 2] as const).map((axis) => Math.max(min[axis] - at[axis], at[axis] - max[axis], 0)),
  );
}
