import { drawRoute, foot, from } from './route.ts';
import { BoardPage, expect, test } from './support.ts';

test('a complete route drawn with the mouse on both sheets has the angles and lengths that were drawn', async ({
  board,
}) => {
  const drawn = await drawRoute(board);
  const { job, bends, segments, flow } = await board.seen();
  const nodes = job.schemes[0]?.nodes ?? [];

  expect(drawn.collar.slice(0, 2)).toEqual([expect.closeTo(2 * foot, 9), expect.closeTo(2 * foot, 9)]);
  expect(nodes.map((node) => node.role)).toEqual(['hood', 'turn', 'turn', 'turn', 'cap']);
  const places = [drawn.collar, drawn.turn1, drawn.turn2, drawn.turn3, drawn.end];
  expect(nodes.map((node) => node.at)).toEqual(places.map((at) => at.map((n) => expect.closeTo(n, 9))));

  expect(bends.map((bend) => bend.angle)).toEqual([90, 90, 90].map((angle) => expect.closeTo(angle, 9)));
  const lengths = [3, 6, 6, 3].map((length) => expect.closeTo(length * foot, 9));
  expect(segments.map((segment) => segment.length)).toEqual(lengths);
  expect(segments.map((segment) => segment.vertical)).toEqual([true, false, false, true]);
  expect(flow).toBeGreaterThan(0.05);
});

test('dragging a turn changes the air delivered, and undo brings back the exact document', async ({
  board,
}) => {
  const { collar, turn2 } = await drawRoute(board);
  const before = await board.seen();

  await board.drag('floor', turn2, from(collar, 11, 0, 3));
  const after = await board.seen();
  expect(after.undoLabel).toMatch(/move/i);
  const moved = after.segments.map((segment) => segment.length);
  expect(moved[1]).toBeCloseTo(11 * foot, 9);
  expect(moved[2]).toBeCloseTo(Math.hypot(5, 6) * foot, 9);
  expect(Math.abs((after.flow ?? 0) - (before.flow ?? 0))).toBeGreaterThan(0.0005);

  await board.page.getByRole('button', { name: /^Undo/ }).click();
  const undone = await board.seen();
  expect(undone.job).toEqual(before.job);
  expect(undone.flow).toBe(before.flow);
});

test('Escape in the middle of a drag leaves the document as it was, with no step to undo', async ({
  board,
}) => {
  const { collar, turn2 } = await drawRoute(board);
  const before = await board.seen();
  await board.pointAt('floor', turn2);
  await board.page.mouse.down();
  await board.pointAt('floor', from(collar, 10, 1, 3));
  await board.page.keyboard.press('Escape');
  await board.page.mouse.up();
  const after = await board.seen();
  expect([after.job, after.undoLabel, after.flow]).toEqual([before.job, before.undoLabel, before.flow]);
});

test('the route is still there after a reload right after the last edit', async ({ board }) => {
  await drawRoute(board);
  const before = await board.seen();
  await board.reload();
  const after = await board.seen();
  expect(after.job).toEqual(before.job);
  expect(after.flow).toBe(before.flow);
});

test('a page that never said goodbye has kept its route', async ({ board, context }) => {
  await drawRoute(board);
  const { job } = await board.seen();
  const other = new BoardPage(await context.newPage());
  await other.open();
  expect((await other.seen()).job).toEqual(job);
});

test('a typed length is the length of the leg, wherever the pointer is', async ({ board }) => {
  await board.open('?new');
  await board.tool('Place hood');
  await board.click('floor', [2 * foot, 2 * foot, 0]);
  const [hood] = (await board.seen()).job.schemes[0]?.nodes ?? [];
  if (!hood) throw new Error('no hood was placed');
  await board.tool('Draw duct');
  await board.click('section-x', hood.at);
  await board.pointAt('section-x', from(hood.at, 0, 0, 2));
  await board.page.keyboard.type(`3' 4 1/2"`);
  await board.page.keyboard.press('Enter');
  await board.page.keyboard.press('Escape');
  const { segments } = await board.seen();
  expect(segments.map((segment) => segment.length)).toEqual([expect.closeTo(40.5 * 0.0254, 9)]);
});

test('every frame of a drag on the example job is solved once and coloured anew, and the drag is one step', async ({
  board,
}) => {
  await board.open('?example');
  const { bends, job } = await board.seen();
  const node = job.schemes[0]?.nodes.find(({ id }) => id === bends.at(-1)?.node);
  if (!node) throw new Error('the example has a turn');
  const start = await board.screenOf('floor', node.at);
  const stats = () => board.page.evaluate(() => globalThis.gentlebend.stats());
  const flow = () =>
    board.page.evaluate(() => {
      const outcome = globalThis.gentlebend.state().solution.speeds.at(-1)?.outcome;
      return outcome?.solved ? outcome.flow : null;
    });

  await board.page.mouse.move(start.x, start.y);
  await board.page.mouse.down();
  await board.page.mouse.move(start.x + 20, start.y);
  await board.frame();
  const before = await stats();
  const flows = new Set<number | null>();
  const frames = 8;
  for (let i = 1; i <= frames; i += 1) {
    await board.page.mouse.move(start.x + 20 + 25 * i, start.y);
    await board.frame();
    flows.add(await flow());
  }
  const during = await stats();
  await board.page.mouse.up();
  const after = await stats();
  expect(during.solves - before.solves).toBe(frames);
  expect(flows.size).toBeGreaterThan(frames / 2);
  expect([during.commits - before.commits, after.commits - before.commits]).toEqual([0, 1]);
});
