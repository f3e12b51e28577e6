import { describe, expect, test } from 'vitest';
import { estimate } from '../../../../src/advice/route-search/estimate.ts';
import { placeOf, type RouteGrid, tailFrom } from '../../../../src/advice/route-search/grid.ts';
import { Heap } from '../../../../src/advice/route-search/heap.ts';
import { type GridRoute, searchGrid } from '../../../../src/advice/route-search/search.ts';
import { cellsOf, searchSeveral } from '../../../../src/advice/route-search/several.ts';
import { seeded, whole } from '../../../support/random.ts';
import { leastByExhaustion, openMoves, randomGrid } from '../../../support/route-grids.ts';

function best(grid: RouteGrid): GridRoute | null {
  const search = searchGrid(grid);
  let step = search.next();
  while (!step.done) step = search.next();
  return step.value.route;
}

describe('the search', () => {
  test.each([
    ['flat', true],
    ['three-dimensional', false],
  ])('costs what exhaustive search costs on 100 random %s grids', (_, flat) => {
    let reached = 0;
    for (let seed = 1; seed <= 100; seed += 1) {
      const grid = randomGrid(seeded(seed), flat);
      const least = leastByExhaustion(grid);
      expect(best(grid)?.cost ?? Number.POSITIVE_INFINITY, `seed ${seed}`).toBe(least);
      if (least < Number.POSITIVE_INFINITY) reached += 1;
    }
    expect(reached).toBeGreaterThan(40);
  });

  test('gives a route whose steps, turns and exit add up to its cost', () => {
    for (let seed = 1; seed <= 100; seed += 1) {
      const grid = randomGrid(seeded(seed), seed % 2 === 0);
      const route = best(grid);
      if (!route) continue;
      const steps = cellsOf(grid, route).length - 1;
      const sum =
        (grid.seeds[route.seed]?.cost ?? 0) +
        steps * grid.stepCost +
        route.turns.length * grid.turnCost +
        (grid.exits[route.exit]?.cost ?? 0);
      expect(sum, `seed ${seed}`).toBe(route.cost);
    }
  });
});

describe('the estimate', () => {
  const grids = Array.from({ length: 60 }, (_, i) => randomGrid(seeded(i + 1), i % 3 === 0));

  test('falls by no more than a move costs, whatever the move', () => {
    let moves = 0;
    for (const grid of grids)
      for (const { place, direction, cost, next } of openMoves(grid)) {
        moves += 1;
        const after = cost + estimate(grid, next.place, next.direction);
        if (estimate(grid, place, direction) > after)
          throw new Error(`${JSON.stringify({ place, direction, next, cost, exits: grid.exits })}`);
      }
    expect(moves).toBeGreaterThan(10_000);
  });

  test('never overrates what is left of a best route', () => {
    for (const grid of grids) {
      const open: RouteGrid = { ...grid, turnFree: () => true };
      for (let cell = 0; cell < grid.size[0] * grid.size[1] * grid.size[2]; cell += 3) {
        const seed = { cell, direction: 0 as const, cost: 0 };
        const route = best({ ...open, seeds: [seed] });
        if (route) expect(estimate(grid, placeOf(grid.size, cell), 0)).toBeLessThanOrEqual(route.cost);
      }
    }
  });
});

test('a tail leads only from within the face and from no farther than its reach', () => {
  const exit = {
    direction: 2 as const,
    low: [1, 0] as const,
    high: [2, 0] as const,
    layer: 4,
    turnLayers: 0,
    reach: Int32Array.of(3, -1),
    cost: 0,
  };
  expect(tailFrom(exit, [1, 1, 0])).toBe(3);
  expect(tailFrom(exit, [1, 0, 0])).toBe(-1);
  expect(tailFrom(exit, [2, 4, 0])).toBe(-1);
  expect(tailFrom(exit, [0, 4, 0])).toBe(-1);
});

test('a second route goes round the other end of a wall in the way, and shares less than 60 % with the first', () => {
  const size = [30, 20, 1] as const;
  const steps = new Uint8Array(600).fill(0b011);
  for (let y = 0; y < 20; y += 1) steps[29 + 30 * y] = 0b010;
  for (let x = 0; x < 30; x += 1) steps[x + 30 * 19] = (steps[x + 30 * 19] as number) & 0b101;
  // A wall across the way with a gap at either end of the room.
  for (let x = 4; x < 26; x += 1) steps[x + 30 * 9] = (steps[x + 30 * 9] as number) & 0b101;
  const grid: RouteGrid = {
    size,
    steps,
    stepCost: 2,
    turnCost: 10,
    run: 2,
    seeds: [{ cell: 14, direction: 2, cost: 0 }],
    exits: [
      {
        direction: 2,
        low: [14, 0],
        high: [15, 0],
        layer: 19,
        turnLayers: 1,
        reach: Int32Array.of(9, 9),
        cost: 0,
      },
    ],
    turnFree: () => true,
  };
  const search = searchSeveral(grid, 3, 4);
  let step = search.next();
  while (!step.done) step = search.next();
  const ways = step.value.routes.map((route) => cellsOf(grid, route));
  const [best = [], ...others] = ways;
  const west = (cells: readonly number[]) => cells.some((cell) => cell % 30 < 4);
  expect(others.some((cells) => west(cells) !== west(best))).toBe(true);
  for (const cells of others)
    expect(cells.filter((cell) => best.includes(cell)).length / cells.length).toBeLessThan(0.6);
});

test('the heap gives the least cost first, and of equal costs the deeper', () => {
  const random = seeded(7);
  const heap = new Heap();
  const rows = Array.from({ length: 3000 }, (_, item) => ({
    item,
    cost: whole(random, 0, 40),
    depth: whole(random, 0, 9),
  }));
  for (const { cost, depth, item } of rows) heap.push(cost, depth, item);
  const taken = rows.map(() => rows[heap.pop()]);
  const sorted = [...rows].sort((a, b) => a.cost - b.cost || b.depth - a.depth);
  expect(taken.map((row) => [row?.cost, row?.depth])).toEqual(sorted.map((row) => [row.cost, row.depth]));
  expect(heap.size).toBe(0);
});
