import { type BoardPage, expect, test } from './support.ts';

const card = ({ page }: BoardPage) => page.getByRole('region', { name: 'Guided start' });
const step = (board: BoardPage, n: number) => expect(card(board)).toContainText(`Step ${n} of 7`);

/** The corner that the tour marks, in the middle of its frame. */
async function markedPlace(board: BoardPage): Promise<{ x: number; y: number }> {
  const { page } = board;
  await board.settled();
  const box = await page.locator('.guide-light').boundingBox();
  if (!box) throw new Error('nothing is marked');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

test('the first visit begins with the tour; each step is done by doing it', async ({ board }) => {
  const { page } = board;
  await board.open();
  await step(board, 1);
  await expect(card(board)).toBeFocused();
  await page.getByRole('region', { name: 'Results at low' }).getByRole('button', { name: 'low' }).click();

  await step(board, 2);
  const turn = await markedPlace(board);
  await page.mouse.click(turn.x, turn.y);

  await step(board, 3);
  const before = (await board.seen()).flow ?? 0;
  await page.locator('[data-sheet="floor"]').focus();
  await page.keyboard.press('r');
  await page.keyboard.type('2.5D');
  await page.keyboard.press('Enter');

  await step(board, 4);
  expect((await board.seen()).flow).toBeGreaterThan(before);
  await page.getByRole('button', { name: /^Undo/ }).click();

  await step(board, 5);
  await page.locator('[data-proposal]:not([disabled])').first().click();

  await step(board, 6);
  const figure = page.locator('.speed-card[data-chosen] [data-explain="flow"]');
  await figure.click();
  await expect(page.locator('.explain-dialog')).toBeVisible();
  await page.keyboard.press('Escape');

  await step(board, 7);
  await page.getByRole('radio', { name: /Up through the roof/ }).click();

  await expect(card(board)).toContainText('That is all it takes');
  await card(board).getByRole('button', { name: 'Done' }).click();
  await expect(card(board)).toBeHidden();

  await board.open();
  await expect(card(board)).toBeHidden();
});

test('Escape ends the tour at any step, and it does not come again by itself', async ({ board }) => {
  await board.open();
  await step(board, 1);
  await board.page.keyboard.press('Escape');
  await expect(card(board)).toBeHidden();
  await board.reload();
  await expect(card(board)).toBeHidden();
  expect((await board.seen()).undoLabel).toBeNull();
});

test('a step can be passed over, and the whole tour left by its button', async ({ board }) => {
  await board.open();
  await step(board, 1);
  await card(board).getByRole('button', { name: 'Next step' }).click();
  await step(board, 2);
  await card(board).getByRole('button', { name: 'End the tour' }).click();
  await expect(card(board)).toBeHidden();
});

test('somebody who asked for something is not guided, nor who has work here', async ({ board }) => {
  await board.open('?example');
  await expect(board.page.locator('[data-proposal]').first()).toBeVisible();
  await expect(card(board)).toBeHidden();
  await board.reload();
  await expect(card(board)).toBeHidden();
  await board.page.getByRole('textbox', { name: 'Job title' }).fill('My kitchen');
  await board.page.keyboard.press('Enter');
  await board.reload();
  expect((await board.seen()).job.title).toBe('My kitchen');
  await expect(card(board)).toBeHidden();
});

test('the tour is done with the keyboard alone, and never holds the focus', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  await page.keyboard.press('F1');
  await page.getByRole('button', { name: 'Start the guided tour' }).press('Enter');
  await step(board, 1);
  const stops = new Set<string>();
  for (let presses = 0; presses < 14; presses += 1) {
    await page.keyboard.press('Tab');
    stops.add(await page.evaluate(() => document.activeElement?.closest('[class]')?.className ?? ''));
  }
  expect(stops.size).toBeGreaterThan(5);

  await page.locator('.speed-card .speed-pick').first().focus();
  await page.keyboard.press('Space');
  await step(board, 2);
  await page.locator('[data-sheet="floor"]').focus();
  for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press(']');
  await step(board, 3);
  await page.keyboard.press('r');
  await page.keyboard.type('2.5D');
  await page.keyboard.press('Enter');
  await step(board, 4);
  await page.keyboard.press('Control+z');
  await step(board, 5);
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  await expect(card(board)).toBeHidden();
});

for (const size of [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]) {
  test(`every card stands in the window beside what it marks at ${size.width} by ${size.height}`, async ({
    board,
  }) => {
    await board.page.setViewportSize(size);
    await board.open();
    for (let n = 1; n <= 7; n += 1) {
      await step(board, n);
      await expect(board.page.locator('.guide-light')).toBeVisible();
      await expect
        .poll(async () => {
          const box = await card(board).boundingBox();
          const light = await board.page.locator('.guide-light').boundingBox();
          if (!box || !light) return 'nothing is marked';
          const across = Math.min(box.x + box.width, light.x + light.width) - Math.max(box.x, light.x);
          const down = Math.min(box.y + box.height, light.y + light.height) - Math.max(box.y, light.y);
          const inside =
            box.x >= 0 && box.y >= 0 && box.x + box.width <= size.width && box.y + box.height <= size.height;
          return `${across > 0 && down > 0 ? 'covers' : 'beside'}, ${inside ? 'inside' : 'outside'}`;
        })
        .toBe('beside, inside');
      expect(await board.accessibilityFaults()).toEqual([]);
      await card(board).getByRole('button', { name: 'Next step' }).click();
    }
    await expect(card(board)).toContainText('That is all it takes');
  });
}
