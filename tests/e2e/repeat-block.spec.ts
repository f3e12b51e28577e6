import { expect, test } from './support.ts';

test('a joist is repeated by a button in the panel, without keys, as one edit', async ({ board }) => {
  await board.open('?example');
  const before = await board.seen();
  const joist = before.job.blocks.find(({ kind }) => kind === 'joist');
  if (!joist) throw new Error('the example has joists');
  await board.page.getByRole('tab', { name: 'Selected' }).click();
  await board.click('floor', [joist.min[0] + 0.3, (joist.min[1] + joist.max[1]) / 2, 0]);
  const panel = board.page.getByRole('tabpanel', { name: 'Selected' });
  await expect(panel.getByRole('heading', { name: joist.name })).toBeVisible();
  await panel.getByLabel('How many more').fill('3');
  await panel.getByLabel('From centre to centre').click();
  await panel.getByLabel('From centre to centre').fill('400 mm');
  await panel.getByRole('button', { name: /Towards/ }).click();
  await board.page.getByRole('option', { name: 'south' }).click();
  await panel.getByRole('button', { name: 'Add 3 more' }).click();
  const after = await board.seen();
  const made = after.job.blocks.slice(before.job.blocks.length);
  expect(made.map(({ kind, min }) => [kind, min[1]])).toEqual(
    [1, 2, 3].map((n) => ['joist', expect.closeTo(joist.min[1] - 0.4 * n, 6)]),
  );
  await board.page.keyboard.press('Control+z');
  expect((await board.seen()).job).toEqual(before.job);
});
