import type { Locator } from 'playwright/test';
import { type BoardPage, expect, test } from './support.ts';

async function openPanel({ page }: BoardPage) {
  await page.getByRole('button', { name: 'Scheme actions' }).click();
  await page.getByRole('menuitem', { name: 'Find a fault' }).click();
  const panel = page.getByRole('complementary', { name: 'Find a fault' });
  await expect(panel).toBeVisible();
  return panel;
}

async function type(panel: Locator, label: string, text: string) {
  const field = panel.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

const find = async (panel: Locator) => {
  await panel.getByRole('button', { name: 'Find the cause' }).click();
  await expect(panel.getByRole('region', { name: 'Causes', exact: true })).toBeVisible({ timeout: 120_000 });
};

test('little air and little pressure at the collar is the fan’s side; a measurement that is asked for decides; the run as found becomes a scheme', async ({
  board,
}) => {
  await board.open('?example');
  const before = await board.seen();
  const panel = await openPanel(board);
  await expect(panel.getByText(/Ladders and roofs kill/)).toBeVisible();
  await expect(panel.getByRole('button', { name: 'Find the cause' })).toBeDisabled();
  await type(panel, 'Air at the hood', '390 cfm');
  await type(panel, 'Air at the cap', '390 cfm');
  await type(panel, 'Static at the collar', '0.29');
  await find(panel);
  await expect(panel.getByText('These measurements cannot tell the first causes apart.')).toBeVisible();
  const causes = panel.getByRole('list', { name: 'Causes by rank' }).getByRole('listitem');
  await expect(causes.first()).toContainText('Clogged grease filter');
  await expect(panel.getByText(/^Measure next:.*filters out/)).toBeVisible();

  const expected = panel.getByRole('table', { name: 'It would measure' });
  const row = expected.getByRole('row').filter({ hasText: 'Clogged grease filter' });
  await type(panel, 'It measures', (await row.getByRole('cell').textContent()) ?? '');
  await expect(panel.getByText('One cause explains the measurements clearly')).toBeVisible({
    timeout: 120_000,
  });
  await expect(causes.first()).toContainText('% of the opening closed');

  await causes.first().getByRole('button', { name: 'Show the place' }).click();
  expect((await board.seen()).selection.nodes).toEqual(['w1']);
  await causes.first().getByRole('button', { name: 'Make a scheme as found' }).click();
  const after = await board.seen();
  expect(after.job.schemes).toHaveLength(before.job.schemes.length + 1);
  expect(after.job.schemes.find(({ id }) => id === after.schemeId)?.name).toBe(
    'Out the north wall, as found',
  );
  expect(Math.abs((after.flow ?? 0) / 0.000471947443 - 390)).toBeLessThan(20);
  await board.page.getByRole('button', { name: /^Undo make a scheme as found/ }).click();
  expect((await board.seen()).job).toEqual(before.job);
});

test('much pressure left before the cap lays it on the cap, and only looking tells a flap from a nest', async ({
  board,
}) => {
  test.slow();
  await board.open('?example');
  const panel = await openPanel(board);
  await type(panel, 'Air at the hood', '330 cfm');
  await type(panel, 'Static at the collar', '0.86');
  await type(panel, 'Static before the cap', '0.75');
  await find(panel);
  const causes = panel.getByRole('list', { name: 'Causes by rank' }).getByRole('listitem');
  await expect(causes.first()).toContainText(/Blocked cap or screen|Flap that sticks/);
  await expect(causes.nth(1)).toContainText(/Blocked cap or screen|Flap that sticks/);
  for (const i of [0, 1]) {
    await causes.nth(i).getByRole('button', { name: 'Show the place' }).click();
    expect((await board.seen()).selection.nodes).toEqual(['w4']);
  }
});

test('a reading that is not clear is refused with a sentence, and one that was entered can be taken out', async ({
  board,
}) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await type(panel, 'Air at the hood', 'plenty');
  await expect(panel.locator('.field-error')).toBeVisible();
  await type(panel, 'Air at the hood', '400');
  const list = panel.getByRole('list', { name: 'Measurements' });
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await list.getByRole('button', { name: /^Take out air at the hood/ }).click();
  await expect(list).toBeHidden();
  await type(panel, 'Static before the cap', '0.2');
  await expect(list.getByRole('listitem')).toContainText('Static before the cap, boost');
  await type(panel, 'Static before the cap', '');
  await expect(list).toBeHidden();
});

test('at the smaller size what came of it is in sight at once, and stays so while the causes are read', async ({
  board,
}) => {
  await board.page.setViewportSize({ width: 1024, height: 768 });
  await board.open('?example');
  const panel = await openPanel(board);
  await type(panel, 'Air at the hood', '390 cfm');
  await find(panel);
  const verdict = panel.getByText(/, first among the causes\.$/);
  await expect(verdict).toBeInViewport({ ratio: 1 });
  await expect(panel.getByText('Measurements have changed since.')).toBeHidden();
  await panel
    .getByRole('list', { name: 'Causes by rank' })
    .getByRole('listitem')
    .last()
    .scrollIntoViewIfNeeded();
  await expect(verdict).toBeInViewport({ ratio: 1 });
});

test('what was measured stays with its scheme, and is gone with its job', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  const list = panel.getByRole('list', { name: 'Measurements' });
  await type(panel, 'Air at the hood', '400');
  await expect(list).toBeVisible();
  await board.page.getByText('Up through the roof').first().click();
  await expect(list).toBeHidden();
  await board.page.getByText('Out the north wall').first().click();
  await expect(list.getByRole('listitem')).toHaveCount(1);
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: /example/i }).click();
  await expect(panel).toBeHidden();
  await openPanel(board);
  await expect(list).toBeHidden();
});

test('with nothing drawn the panel says what comes first', async ({ board }) => {
  await board.open('?new');
  const panel = await openPanel(board);
  await expect(panel.getByText(/^Draw the route as far as it is known/)).toBeVisible();
});

test('the panel fits in both themes at both sizes, and axe finds no fault', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await type(panel, 'Air at the hood', '390 cfm');
  await type(panel, 'Static at the collar', '0.29');
  await find(panel);
  for (const name of ['What was measured', 'What the measurements say']) {
    await panel.getByRole('heading', { name }).scrollIntoViewIfNeeded();
    expect(await board.faultsInEveryLook(name)).toEqual([]);
  }
});
