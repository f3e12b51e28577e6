import { produce } from 'immer';
import type { Block, Job, Vec3 } from '../../src/graph/document.ts';
import { addHood } from '../../src/graph/edits/index.ts';
import { emptyJob } from '../../src/graph/templates.ts';
import { between, type Random, seeded } from './random.ts';

/** An invented room with a hood near its south wall, exits north, east and through the roof, and blocks strewn about. */
export function roomOf(seed: number, [x, y, z]: Vec3, count: number, longest = 1.6): Job {
  const collar: Vec3 = [x / 2, 0.5, Math.min(1.2, z - 1)];
  const random = seeded(seed);
  const blocks: Block[] = [];
  while (blocks.length < count) {
    const block = blockIn(random, [x, y, z], blocks.length, longest);
    if (![0, 1, 2].every((i) => near(block, collar, i))) blocks.push(block);
  }
  const job: Job = {
    ...emptyJob('metric'),
    title: 'Invented room',
    blocks,
    exits: [
      { id: 'north', name: 'north wall', kind: 'wall', min: [0, y, 0], max: [x, y + 0.15, z] },
      { id: 'east', name: 'east wall', kind: 'wall', min: [x, 0, 0], max: [x + 0.15, y, z] },
      { id: 'roof', name: 'roof', kind: 'roof', min: [0, 0, z], max: [x, y, z + 0.2] },
    ],
  };
  return produce(job, (draft) => void addHood(draft, 'scheme-1', collar));
}

function blockIn(random: Random, room: Vec3, index: number, longest: number): Block {
  const size: Vec3 = [
    between(random, 0.1, longest),
    between(random, 0.1, longest),
    between(random, 0.1, 1.2),
  ];
  const min = room.map((side, i) => between(random, 0, Math.max(0.1, side - (size[i] as number)))) as Vec3;
  const max = min.map((low, i) => low + (size[i] as number)) as Vec3;
  return { id: `b${index}`, name: `block ${index}`, kind: 'obstacle', min, max };
}

/** Blocks keep this far from the collar's line, so that a first bend is possible, m. */
function near({ min, max }: Block, at: Vec3, axis: number): boolean {
  const reach = axis === 2 ? 0.7 : 0.45;
  const value = at[axis] as number;
  return (min[axis] as number) < value + reach && (max[axis] as number) > value - (axis === 2 ? 0 : reach);
}
