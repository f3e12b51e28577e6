import { type BoardPage, expect, test } from './support.ts';

const help = ({ page }: BoardPage) => page.getByRole('dialog', { name: 'Help' });

test('F1 opens the help, a search finds its place in it, and Escape leads back to where one was', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  await page.locator('[data-sheet="floor"]').focus();
  await page.keyboard.press('F1');
  await expect(help(board).getByRole('heading', { name: 'Getting started' })).toBeVisible();

  await page.keyboard.type('carbon monoxide');
  await expect(help(board).getByRole('heading', { name: 'Before anything is built' })).toBeVisible();
  await expect(help(board).getByRole('heading', { name: 'Getting started' })).toBeHidden();
  await expect(help(board).getByText('back-draughting', { exact: true })).toBeVisible();

  await page.getByRole('searchbox').fill('zzzz');
  await expect(help(board)).toContainText('Nothing in the help has “zzzz”');
  await page.getByRole('searchbox').fill('');
  await expect(help(board).getByText('Ctrl+K').first()).toBeVisible();

  await page.keyboard.press('Escape');
  await expect(help(board)).toBeHidden();
  await expect(page.locator('[data-sheet="floor"]')).toBeFocused();
});

test('the contents lead to each section', async ({ board }) => {
  await board.open('?example');
  await board.page.keyboard.press('F1');
  const contents = help(board).getByRole('navigation', { name: 'Contents' });
  for (const link of await contents.getByRole('button').all()) {
    await link.click();
    const heading = help(board).getByRole('heading', {
      level: 2,
      name: (await link.textContent()) ?? '',
      exact: true,
    });
    await expect(heading).toBeInViewport();
    await expect(heading).toBeFocused();
  }
});

test('the help and the link box have no fault in either theme at either size', async ({ board }) => {
  await board.open('?example');
  await board.page.keyboard.press('F1');
  await expect(help(board)).toBeVisible();
  expect(await board.faultsInEveryLook('help')).toEqual([]);
  await board.page.keyboard.press('Escape');
  await expect(help(board)).toBeHidden();
  await board.ask('Copy share link');
  await expect(board.page.getByRole('dialog', { name: 'Share link' })).toBeVisible();
  // A link is far longer than its field, and is meant to be copied, not read.
  const faults = await board.faultsInEveryLook('the link box');
  expect(faults.filter((fault) => !fault.includes('#job='))).toEqual([]);
});

test('a word of the trade says what it means when pointed at, reached by a key, or tapped', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  await page.getByRole('tab', { name: 'Pressure' }).click();
  const word = page.getByRole('tabpanel').getByRole('button', { name: 'static' });
  const meaning = page.getByRole('tooltip');
  await page.mouse.move(300, 80);
  await word.hover();
  await expect(meaning).toContainText('as a gauge on its side reads it');
  // A tooltip stands in no landmark: it is read with the word that it belongs to.
  const faults = await board.accessibilityFaults();
  expect(faults.filter((fault) => !fault.startsWith('region:'))).toEqual([]);
  await meaning.hover();
  await expect(meaning).toBeVisible();
  await page.mouse.move(300, 80);
  await expect(meaning).toBeHidden();

  await page.keyboard.press('Tab');
  await word.focus();
  await expect(meaning).toBeVisible();
  await expect(word).toHaveAccessibleDescription(/Pressure of the air against the walls/);
  await page.keyboard.press('Escape');
  await expect(meaning).toBeHidden();
});

test.describe('with a finger', () => {
  test.use({ hasTouch: true });
  test('a tap tells what a word means, and a tap elsewhere takes it away', async ({ board }) => {
    const { page } = board;
    await board.open('?example');
    const word = page.locator('.speed-card [data-term="sone"]').first();
    await word.tap();
    const meaning = page.getByRole('tooltip');
    await expect(meaning).toContainText('Loudness on a scale that the ear agrees with');
    await page.touchscreen.tap(400, 85);
    await expect(meaning).toBeHidden();
  });
});

test('in a table of figures words and figures are one stop of the Tab key together', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  await page.getByRole('tab', { name: 'Selected' }).click();
  await page.locator('[data-sheet="floor"]').focus();
  await page.keyboard.press(']');
  await page.keyboard.press(']');
  const figures = page.getByRole('tabpanel').locator('dl.figures').first();
  const stops = await figures.locator('button').evaluateAll((all) => all.map(({ tabIndex }) => tabIndex));
  expect(stops.length).toBeGreaterThan(5);
  expect(stops.filter((stop) => stop === 0)).toHaveLength(1);
  await figures.locator('button').first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(figures.locator('button').nth(1)).toBeFocused();
});
