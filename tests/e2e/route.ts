import type { Vec3 } from '../../src/graph/document.ts';
import type { BoardPage } from './support.ts';

export const foot = 0.3048;

/** East, north and up in feet from a place. */
export const from = (place: Vec3, x: number, y: number, z: number): Vec3 => [
  place[0] + x * foot,
  place[1] + y * foot,
  place[2] + z * foot,
];

export interface Drawn {
  readonly collar: Vec3;
  readonly turn1: Vec3;
  readonly turn2: Vec3;
  readonly turn3: Vec3;
  readonly end: Vec3;
}

/** Draws up out of the hood, east, north, and up to the roof: the mouse alone, both sheets, an empty job. */
export async function drawRoute(board: BoardPage): Promise<Drawn> {
  await board.open('?new');
  await board.tool('Place hood');
  await board.click('floor', [2 * foot, 2 * foot, 0]);
  const [hood] = (await board.seen()).job.schemes[0]?.nodes ?? [];
  if (hood?.role !== 'hood') throw new Error('no hood was placed');
  const collar = hood.at;
  const drawn = {
    collar,
    turn1: from(collar, 0, 0, 3),
    turn2: from(collar, 6, 0, 3),
    turn3: from(collar, 6, 6, 3),
    end: from(collar, 6, 6, 6),
  };
  await board.tool('Draw duct');
  await board.click('section-x', drawn.collar);
  await board.click('section-x', drawn.turn1);
  await board.click('section-x', drawn.turn2);
  await board.click('floor', drawn.turn3);
  await board.click('section-x', drawn.end);
  await board.tool('Place cap');
  await board.click('section-x', drawn.end);
  await board.tool('Select and move');
  return drawn;
}
