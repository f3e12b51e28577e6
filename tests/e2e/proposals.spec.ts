import { expect, test } from './support.ts';

test('a proposal shows on hover, is applied in one click, and is one step to undo', async ({ board }) => {
  await board.open('?example');
  await board.page.getByText('Up through the roof').click();
  const before = await board.seen();
  const proposals = board.page.locator('[data-proposal]:not([disabled])');
  await expect(board.page.locator('[data-proposal=combination]').first()).toBeVisible();
  await expect(proposals.first()).toBeVisible();

  const ghost = () =>
    board.page.evaluate(() => globalThis.gentlebend.state().ghost?.solution.schemeId ?? null);
  const promised = () =>
    board.page.evaluate(() => {
      const outcome = globalThis.gentlebend.state().ghost?.solution.speeds.at(-1)?.outcome;
      return outcome?.solved ? outcome.flow : null;
    });
  await proposals.first().hover();
  await expect.poll(ghost).toBe(before.schemeId);
  const flow = await promised();
  expect((await board.seen()).job).toEqual(before.job);

  await board.page.mouse.move(700, 400);
  await expect.poll(ghost).toBeNull();

  await proposals.first().click();
  const after = await board.seen();
  expect(after.flow).toBeCloseTo(flow ?? 0, 9);
  expect(after.flow ?? 0).toBeGreaterThan(before.flow ?? 0);

  await board.page.getByRole('button', { name: /^Undo/ }).click();
  const undone = await board.seen();
  expect([undone.job, undone.undoLabel]).toEqual([before.job, before.undoLabel]);
});

test('the proposals are ranked by the air that they gain', async ({ board }) => {
  await board.open('?example');
  await board.page.getByText('Up through the roof').click();
  await expect(board.page.locator('[data-proposal=combination]').first()).toBeVisible();
  const cards = board.page.locator('[data-proposal]:not([data-remedy]):not([data-proposal=combination])');
  const read = async (those: typeof cards) =>
    (await those.locator('.gain').allInnerTexts()).map((gain) => Number(gain.replace(/[^\d.]/g, '')));
  const fits = cards.filter({ hasText: 'fits the room as drawn' });
  const all = await read(cards);
  const fitting = await read(fits);
  expect(fitting.length).toBeGreaterThanOrEqual(4);
  expect(fitting).toEqual(fitting.toSorted((a, b) => b - a));
  expect(all.slice(0, fitting.length), 'what does not fit comes last').toEqual(fitting);
});
