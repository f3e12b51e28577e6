import { type BoardPage, expect, test } from './support.ts';

async function choose(board: BoardPage, ...choices: readonly (readonly [label: string, choice: string])[]) {
  const { page } = board;
  await page.getByRole('button', { name: 'Settings…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Settings' });
  await expect(dialog).toBeVisible();
  for (const [label, choice] of choices) {
    await dialog.getByRole('button', { name: new RegExp(label) }).click();
    await page.getByRole('option', { name: choice, exact: true }).click();
    await expect(page.getByRole('listbox')).toHaveCount(0);
  }
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
}

const strip = (board: BoardPage) => board.page.getByRole('region', { name: 'Results at each fan speed' });
const height = (board: BoardPage) => board.page.getByRole('textbox', { name: 'Working height' });

/** Types over a field of the sheets' frame, and leaves it. */
async function type(board: BoardPage, text: string) {
  await height(board).fill(text);
  await height(board).press('Enter');
}

test('another locale shows and takes its decimal sign at once, and is remembered', async ({ board }) => {
  await board.open('?example');
  await expect(strip(board)).toContainText('0.12 in w.g.');
  await choose(board, ['Numbers and dates', 'German (Germany)']);
  await expect(strip(board)).toContainText('0,12 in w.g.');
  await expect(strip(board)).not.toContainText('0.12');
  await expect(board.page.locator('.side-panel, [role="tabpanel"]').first()).toContainText(
    /\d,\d+ in w\.g\./,
  );

  await type(board, '2,5 m');
  await expect(height(board)).toHaveValue('8\'-2 3/8"');
  await type(board, '1.200 m');
  await expect(board.page.getByText('can be read as 1200 or as 1,2')).toBeVisible();
  await height(board).press('Escape');

  await board.open('?example');
  await expect(strip(board)).toContainText('0,12 in w.g.');
});

test('lengths follow the precision that is chosen, on the sheets and in the table', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  await expect(height(board)).toHaveValue('7\'-6 1/2"');
  await page.keyboard.press('t');
  const table = page.locator('.route-table');
  await expect(table).toContainText('11\'-7 3/4"');
  await choose(board, ['Feet and inches', 'To the nearest 1/16 in']);
  await expect(height(board)).toHaveValue('7\'-6 9/16"');
  await choose(board, ['Feet and inches', 'Inches with decimals']);
  await expect(height(board)).toHaveValue('90.55"');
  await expect(table).toContainText('139.76"');
  await expect(table).not.toContainText('11\'-7 3/4"');
});

test('every field takes the other system, and a bare number in what is shown', async ({ board }) => {
  await board.open('?example');
  await type(board, '2300 mm');
  await expect(height(board)).toHaveValue('7\'-6 1/2"');
  await board.page.getByRole('radio', { name: 'mm', exact: true }).click();
  await expect(height(board)).toHaveValue('2300 mm');
  await type(board, '8\' 0 1/2"');
  await expect(height(board)).toHaveValue('2451 mm');
  await type(board, '7′ 6½″');
  await expect(height(board)).toHaveValue('2299 mm');
  await choose(board, ['Metric lengths', 'Metres']);
  await expect(height(board)).toHaveValue('2.299 m');
  await type(board, '2.4');
  await expect(height(board)).toHaveValue('2.400 m');
});

test('a change of style is no edit: nothing to undo, nothing unsaved, the same numbers', async ({
  board,
}) => {
  await board.open('?example');
  const before = await board.seen();
  await choose(board, ['Numbers and dates', 'French (France)'], ['Feet and inches', 'Feet with decimals']);
  const after = await board.seen();
  expect(after.job).toEqual(before.job);
  expect(after.flow).toBe(before.flow);
  expect(after.undoLabel).toBeNull();
  await expect(board.page.getByRole('button', { name: 'Settings…' })).toBeFocused();
});
