import { writeJob } from '../../src/files/write.ts';
import type { Job } from '../../src/graph/document.ts';
import { roomOf } from '../support/route-rooms.ts';
import { type BoardPage, expect, test } from './support.ts';

/** The panel, by the menu of the schemes. */
async function openPanel({ page }: BoardPage) {
  await page.getByRole('button', { name: 'Scheme actions' }).click();
  await page.getByRole('menuitem', { name: 'Find a route' }).click();
  const panel = page.getByRole('complementary', { name: 'Find a route' });
  await expect(panel).toBeVisible();
  return panel;
}

const ghostFlow = ({ page }: BoardPage) =>
  page.evaluate(() => {
    const outcome = globalThis.gentlebend.state().ghost?.solution.speeds.at(-1)?.outcome;
    return outcome?.solved ? outcome.flow : null;
  });

test('routes are found, shown as ghosts, made a scheme in one step and undone', async ({ board }) => {
  await board.open('?example');
  const before = await board.seen();
  const panel = await openPanel(board);
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  const routes = panel.getByRole('list', { name: 'Routes found' }).getByRole('listitem');
  await expect(routes.first()).toBeVisible();
  expect(await routes.count()).toBeGreaterThan(1);
  await expect(panel.getByText(/steps tried/)).toBeVisible();

  const best = await ghostFlow(board);
  expect(best).toBeGreaterThan(before.flow ?? Number.POSITIVE_INFINITY);
  await routes.nth(1).getByRole('button').first().hover();
  await expect.poll(() => ghostFlow(board)).not.toBe(best);
  expect(await ghostFlow(board)).toBeLessThan(best ?? 0);
  expect((await board.seen()).job).toEqual(before.job);

  await routes.first().getByRole('button').first().click();
  await routes.first().getByRole('button', { name: 'Make it a scheme' }).click();
  const after = await board.seen();
  expect(after.job.schemes).toHaveLength(before.job.schemes.length + 1);
  expect(after.schemeId).toBe(after.job.schemes.at(-1)?.id);
  expect(after.flow).toBeCloseTo(best ?? 0, 12);
  expect(after.findings.filter((rule) => rule.startsWith('fit-'))).toEqual([]);
  expect(await ghostFlow(board)).toBeNull();

  await board.page.getByRole('button', { name: /^Undo make a scheme/ }).click();
  expect((await board.seen()).job).toEqual(before.job);
  await expect(routes.first().getByRole('button', { name: 'Make it a scheme' })).toBeEnabled();
});

/** A large room whose north wall stands behind another: every place is tried before a search there gives up. */
function shutRoom(): string {
  const room = roomOf(1, [12, 10, 3], 30);
  const wall: Job['blocks'][number] = {
    id: 'shut',
    name: 'second wall',
    kind: 'wall',
    min: [-1, 9, 0],
    max: [13, 9.1, 4],
  };
  return writeJob({ ...room, blocks: [...room.blocks, wall] });
}

test('a search that takes long is called off while it runs, and the panel can search again', async ({
  board,
}) => {
  await board.open('?new');
  await board.openFile(shutRoom());
  await expect.poll(async () => (await board.seen()).job.blocks.length).toBe(31);

  const panel = await openPanel(board);
  for (const exit of ['east wall', 'roof']) await panel.getByText(exit, { exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  await expect(panel.getByText(/^[1-9][\d,]* steps tried/)).toBeVisible();
  await panel.getByRole('button', { name: 'Cancel' }).click();
  await expect(panel.getByText(/^Called off/)).toBeVisible();
  await expect(panel.getByRole('list', { name: 'Routes found' })).toBeHidden();
  expect((await board.seen()).undoLabel).toBeNull();

  await panel.getByText('roof', { exact: true }).click();
  await panel.getByText('north wall', { exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  await expect(panel.getByRole('list', { name: 'Routes found' })).toBeVisible();
});

test('only the chosen exits are used', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await panel.getByText('north wall', { exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  const routes = panel.getByRole('list', { name: 'Routes found' }).getByRole('listitem');
  await expect(routes.first()).toContainText('Roof');
  await expect(routes.filter({ hasText: 'North wall' })).toHaveCount(0);
  await panel.getByText('roof', { exact: true }).click();
  await expect(panel.getByRole('button', { name: 'Search', exact: true })).toBeDisabled();
});

test('an empty job says what a search needs', async ({ board }) => {
  await board.open('?new');
  const panel = await openPanel(board);
  await expect(panel.getByText('A search goes from a hood to an exit')).toBeVisible();
  await panel.getByRole('button', { name: 'Draw an exit face' }).click();
  expect(await board.page.evaluate(() => globalThis.gentlebend.state().tool)).toBe('exit');
  await panel.getByRole('button', { name: 'Close' }).click();
  await expect(board.page.getByRole('complementary', { name: 'Details' })).toBeVisible();
});

test('the panel has no fault in either theme at either size', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  await expect(panel.getByRole('list', { name: 'Routes found' })).toBeVisible();
  await board.page.mouse.move(400, 400);
  expect(await board.faultsInEveryLook()).toEqual([]);
});
