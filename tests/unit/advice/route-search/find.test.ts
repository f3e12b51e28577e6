import { produce } from 'immer';
import { describe, expect, test } from 'vitest';
import { findRoutes, type RouteSearch } from '../../../../src/advice/route-search/find.ts';
import {
  missingFor,
  type RouteQuestion,
  usualQuestion,
} from '../../../../src/advice/route-search/question.ts';
import { drawRoute } from '../../../../src/advice/route-search/scheme.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { fitFindings } from '../../../../src/graph/fit.ts';
import { inferRoute } from '../../../../src/graph/infer.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { unsound } from '../../../support/drawn.ts';
import { exampleJob } from '../../../support/route-job.ts';
import { roomOf } from '../../../support/route-rooms.ts';

function asked(
  job: Job,
  change: Partial<RouteQuestion> = {},
  schemeId = job.schemes[0]?.id ?? '',
): RouteQuestion {
  const question = usualQuestion(job, schemeId);
  if (!question) throw new Error('the job has no hood or no exit');
  return { ...question, ...change };
}

const bend = { kind: 'five-piece', radiusRatio: 1 };

describe('a search in the example', () => {
  const job = exampleJob();

  test('goes straight up and straight out of the north wall where nothing is in the way', async () => {
    const { routes } = await findRoutes(job, asked(job, { bend, exits: ['north-wall'] }));
    expect(routes[0]?.turns).toBe(1);
    expect(routes[0]?.points.map((at) => at.map((value) => Math.round(value * 1000) / 1000))).toEqual([
      [1.216, 0.25, 1.85],
      [1.216, 0.25, 2.256],
      [1.216, 3.8, 2.256],
    ]);
  });

  test('keeps to the height that is asked for', async () => {
    const { routes } = await findRoutes(
      job,
      asked(job, { bend, exits: ['north-wall'], space: { kind: 'level', height: 2.29 } }),
    );
    expect(routes.length).toBeGreaterThan(0);
    for (const { points } of routes) for (const at of points.slice(1)) expect(at[2]).toBe(2.29);
  });

  test('leaves by the exits that are chosen and by no other', async () => {
    for (const exit of ['north-wall', 'roof']) {
      const { routes } = await findRoutes(job, asked(job, { bend, exits: [exit] }));
      expect(new Set(routes.map((route) => route.exit))).toEqual(new Set([exit]));
    }
  });

  test('ranks by the air delivered, which is what the drawn scheme delivers', async () => {
    const question = asked(job, { bend });
    const { routes } = await findRoutes(job, question);
    const flows = routes.map(({ air }) => air.at(-1)?.flow ?? 0);
    expect(flows).toEqual([...flows].sort((a, b) => b - a));
    for (const route of routes) {
      let id = '';
      const drawn = produce(job, (draft) => {
        id = drawRoute(draft, question, route);
      });
      expect(unsound(drawn)).toEqual([]);
      const delivered = solveScheme(drawn, id).speeds.map(({ outcome }) =>
        outcome.solved ? outcome.flow : 0,
      );
      expect(route.air.map(({ flow }) => flow)).toEqual(delivered);
    }
  });

  test('delivers more than the example’s own route to the same wall', async () => {
    const own = solveScheme(job, 'wall').speeds.at(-1)?.outcome;
    const { routes } = await findRoutes(job, asked(job, { exits: ['north-wall'], bend }));
    expect(routes[0]?.air.at(-1)?.flow).toBeGreaterThan(own?.solved ? own.flow : Number.POSITIVE_INFINITY);
  });

  test('takes the damper at the collar over into the drawn scheme', async () => {
    const question = asked(job, { bend });
    const [route] = (await findRoutes(job, question)).routes;
    if (!route) throw new Error('there is a route');
    let id = '';
    const drawn = produce(job, (draft) => {
      id = drawRoute(draft, question, route);
    });
    const scheme = drawn.schemes.find((each) => each.id === id);
    expect(scheme?.segments[0]?.fittings).toEqual([{ kind: 'backdraught-damper', at: 0.08 }]);
    expect(scheme?.nodes.at(-1)).toMatchObject({ role: 'cap', cap: 'wall-flap' });
    expect(scheme?.defaults).toMatchObject({ duct: question.duct, bend });
  });

  test('says why when a bend finds no room behind the collar', async () => {
    const wide = { kind: 'smooth', radiusRatio: 10 };
    const search = await findRoutes(job, asked(job, { bend: wide, exits: ['north-wall'] }));
    expect(search.routes).toEqual([]);
    expect(search.reason).toMatch(/first bend/);
  });

  test('refuses a step so small that the grid would fill the memory', async () => {
    expect((await findRoutes(job, asked(job, { step: 0.01 }))).reason).toMatch(/larger step/);
  });

  test('stops when it is called off', async () => {
    const cancel = new AbortController();
    const big = roomOf(3, [12, 10, 3], 60, 5);
    const search = findRoutes(big, asked(big, { step: 0.08 }), {
      signal: cancel.signal,
      onProgress: () => cancel.abort(),
    });
    await expect(search).rejects.toThrow(/abort/i);
  });
});

describe('what is found in rooms with blocks strewn about', () => {
  const rooms = Array.from({ length: 12 }, (_, i) => roomOf(i + 1, [4, 3.5, 2.6], 14));

  test('passes the fit check once drawn, every time', async () => {
    let routes = 0;
    for (const job of rooms) {
      const question = asked(job, { bend, step: 0.1 });
      const search = await findRoutes(job, question);
      expect(search.unfit).toBe(0);
      for (const route of search.routes) {
        let id = '';
        const drawn = produce(job, (draft) => {
          id = drawRoute(draft, question, route);
        });
        // Where the hood itself stands is the room's.
        const duct = fitFindings(drawn, inferRoute(drawn, id)).filter(
          ({ nodes }) => !nodes.includes(question.hood),
        );
        expect(duct).toEqual([]);
        routes += 1;
      }
    }
    expect(routes).toBeGreaterThan(12);
  });

  test('costs no less in a room with a block more', async () => {
    for (const job of rooms) {
      const freer = { ...job, blocks: job.blocks.slice(0, 7) };
      const one: Partial<RouteQuestion> = { bend, routes: 1, exits: ['north'] };
      const [more] = (await findRoutes(job, asked(job, one))).routes;
      const [less] = (await findRoutes(freer, asked(freer, one))).routes;
      if (more) expect(more.loss).toBeGreaterThanOrEqual(less?.loss ?? Number.POSITIVE_INFINITY);
    }
  });
});

test('a 12 x 10 x 3 m space with 60 blocks at 0.1 m is searched without going over most of its states', async () => {
  const job = roomOf(1, [12, 10, 3], 60, 5);
  const search: RouteSearch = await findRoutes(job, asked(job, { bend, routes: 1, exits: ['north'] }));
  expect(search.routes).toHaveLength(1);
  expect(search.unfit).toBe(0);
  expect(search.cells).toBeGreaterThan(150_000);
  expect(search.examined).toBeLessThan(0.5 * 6 * search.cells);
});

test.each([
  ['just wide enough for the duct and its clearance', 0, 1],
  ['a millimetre narrower', -0.001, 0],
])('a slot that is %s lets through as many routes as it should', async (_, change, count) => {
  const room = roomOf(1, [4, 3.5, 2.6], 0);
  const question = asked(room, { bend, exits: ['north'], routes: 1, clearance: 0.02 });
  const half = question.duct.diameter / 2 + 0.0006 + question.clearance + change / 2;
  const side = (id: string, from: number, to: number): Job['blocks'][number] => ({
    id,
    name: id,
    kind: 'beam',
    min: [from, 1.6, 0],
    max: [to, 1.8, 4],
  });
  const slotted = { ...room, blocks: [side('west', -1, 2 - half), side('east', 2 + half, 5)] };
  expect((await findRoutes(slotted, question)).routes).toHaveLength(count);
});

test('a route starts from the hood that is chosen', () => {
  const job = produce(roomOf(1, [4, 3.5, 2.6], 0), (draft) => {
    draft.schemes[0]?.nodes.push({ id: 'second', at: [1, 1, 1.2], role: 'hood', hood: 'hood-1' });
  });
  expect(usualQuestion(job, 'scheme-1', 'second')?.hood).toBe('second');
  expect(usualQuestion(job, 'scheme-1', 'gone')?.hood).toBe(usualQuestion(job, 'scheme-1')?.hood);
});

test('duct goes through a block where a chase leads through it, and not beside the chase', async () => {
  const room = roomOf(1, [4, 3.5, 2.6], 0);
  const wall = {
    id: 'w',
    name: 'partition',
    kind: 'wall' as const,
    min: [-1, 2, 0] as const,
    max: [5, 2.1, 3] as const,
  };
  const chase = {
    id: 'c',
    name: 'chase',
    kind: 'chase' as const,
    min: [3, 1.9, 1.8] as const,
    max: [3.5, 2.2, 2.3] as const,
  };
  const withBlocks = (...blocks: readonly (typeof wall | typeof chase)[]): Job => ({
    ...room,
    blocks: blocks.map((block) => ({ ...block, min: [...block.min], max: [...block.max] })),
  });
  const question = asked(room, { bend, exits: ['north'], routes: 1 });
  expect((await findRoutes(withBlocks(wall), question)).routes).toEqual([]);
  const [through] = (await findRoutes(withBlocks(wall, chase), question)).routes;
  const crossing = through?.points.at(-1);
  expect(crossing?.[0]).toBeGreaterThan(3.1);
  expect(crossing?.[0]).toBeLessThan(3.4);
});

test('a search asks for a hood and an exit face first', () => {
  const empty = emptyJob('metric');
  expect(missingFor(empty, 'scheme-1')).toEqual(['hood', 'exit']);
  expect(usualQuestion(empty, 'scheme-1')).toBeNull();
  expect(missingFor(roomOf(1, [4, 3, 2.6], 0), 'scheme-1')).toEqual([]);
});
