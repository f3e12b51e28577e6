import type { Page } from 'playwright/test';
import { expect, test } from './support.ts';

const view = (page: Page) => page.getByRole('dialog', { name: 'Compare schemes' });

async function compare(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Compare schemes' }).click();
  await expect(view(page)).toBeVisible();
  await expect(view(page).getByText('would win with')).toBeVisible({ timeout: 120_000 });
}

test('schemes stand side by side, with the best of each row marked in words and the better one recommended', async ({
  board,
}) => {
  await board.open('?example');
  await compare(board.page);
  const table = view(board.page).getByRole('table');
  await expect(table.getByRole('columnheader')).toHaveText([
    /Out the north wall.*recommended/,
    'Up through the roof',
  ]);
  const boost = table.getByRole('row', { name: 'Air at boost' }).getByRole('cell');
  await expect(boost).toHaveText([/best: 496 cfm/, /^229 cfm/]);
  await expect(table.getByRole('img', { name: 'Up through the roof, floor' })).toBeVisible();
  await expect(
    view(board.page).getByRole('heading', { name: 'Recommended: Out the north wall' }),
  ).toBeVisible();
});

test('the numbers are those of the sheets', async ({ board }) => {
  await board.open('?example');
  await board.page.getByText('Up through the roof').click();
  const { flow } = await board.seen();
  await compare(board.page);
  const cell = view(board.page).getByRole('row', { name: 'Air at boost' }).getByRole('cell').nth(1);
  await expect(cell).toHaveText(new RegExp(`^${Math.round((flow ?? 0) / 0.000471947)} cfm`));
});

test('what would make the loser win is one step, and then it wins; closing leads back to the desk', async ({
  board,
}) => {
  await board.open('?example');
  const before = await board.seen();
  await compare(board.page);
  await view(board.page).getByRole('button', { name: 'Apply it to Up through the roof' }).click();
  await expect(
    view(board.page).getByRole('heading', { name: 'Recommended: Up through the roof' }),
  ).toBeVisible();
  await board.page.keyboard.press('Escape');
  await expect(view(board.page)).toBeHidden();
  await board.page.getByRole('button', { name: /^Undo/ }).click();
  expect((await board.seen()).job).toEqual(before.job);
});

for (const schemes of [2, 4])
  test(`${schemes} schemes print on exactly one page of A4 and of Letter`, async ({ board }) => {
    await board.open('?example');
    for (let i = 2; i < schemes; i += 1) {
      await board.page.getByText('Up through the roof').first().click();
      await board.page.getByRole('button', { name: 'Scheme actions' }).click();
      await board.page.getByRole('menuitem', { name: 'Duplicate scheme' }).click();
      await board.page
        .locator('[data-proposal=combination]:not([disabled])')
        .nth(i - 2)
        .click();
    }
    await board.page.getByRole('button', { name: 'Compare schemes' }).click();
    await expect(view(board.page).locator('.catching, .muted')).toHaveCount(schemes - 1);
    await expect(view(board.page).getByText('trying changes')).toHaveCount(0, { timeout: 120_000 });
    for (const format of ['A4', 'Letter']) {
      const pdf = (await board.page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b(?!s)/g), format).toHaveLength(1);
    }
  });

test('the comparison has no fault in either theme at either size', async ({ board }) => {
  await board.open('?example');
  await compare(board.page);
  expect(await board.faultsInEveryLook()).toEqual([]);
});

test('a price of one’s own changes the cost, is one step to undo, and an empty field goes back', async ({
  board,
}) => {
  await board.open('?example');
  await board.page.getByRole('button', { name: 'Scheme actions' }).click();
  await board.page.getByRole('menuitem', { name: 'Parts and prices' }).click();
  const dialog = board.page.getByRole('dialog', { name: 'Parts and prices' });
  const total = dialog.locator('tfoot td').nth(3);
  await expect(total).toHaveText('$289');
  const field = dialog.getByLabel(/each, 8" round wall cap with a flap/);
  await field.fill('140');
  await field.press('Enter');
  await expect(total).toHaveText('$389');
  await expect(dialog.getByText('yours')).toHaveCount(1);
  expect(await board.accessibilityFaults()).toEqual([]);
  await field.fill('');
  await field.press('Enter');
  await expect(total).toHaveText('$289');
  expect((await board.seen()).undoLabel).toBe('change price');
});

test('another goal ranks the proposals anew', async ({ board }) => {
  await board.open('?example');
  await board.page.getByText('Up through the roof').click();
  const list = board.page.getByRole('list', { name: 'One change at a time' });
  await expect(list.locator('[data-proposal]:not([disabled])').first()).toHaveAttribute(
    'data-proposal',
    'larger diameter',
  );
  await board.page.getByRole('button', { name: /Goal/ }).click();
  await board.page.getByRole('option', { name: 'Least opening-up' }).click();
  await expect(list.locator('[data-proposal]').first()).toHaveAttribute('data-proposal', 'better cap');
});
