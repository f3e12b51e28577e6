import { drawRoute } from './route.ts';
import { BoardPage, expect, test } from './support.ts';

/** Presses Tab until what has the focus goes by this name. */
async function tabTo(board: BoardPage, name: RegExp, key = 'Tab'): Promise<void> {
  for (let i = 0; i < 60; i += 1) {
    const now = await board.page.evaluate(() => {
      const element = document.activeElement as (HTMLElement & { labels?: NodeListOf<HTMLElement> }) | null;
      const label = element?.labels?.[0]?.textContent ?? element?.getAttribute('aria-label');
      return `${label ?? element?.textContent ?? ''}`.trim();
    });
    if (name.test(now)) return;
    await board.page.keyboard.press(key);
  }
  throw new Error(`the Tab key never came to ${name}`);
}

const cellInHand = (board: BoardPage) => board.page.locator('.route-table [data-at]');

async function openTable(board: BoardPage): Promise<void> {
  await board.page.keyboard.press('t');
  await expect(cellInHand(board)).toBeFocused();
}

test('a person with a keyboard alone draws the same route as the mouse, with the same numbers', async ({
  board,
  context,
}) => {
  const drawn = await drawRoute(board);
  const byMouse = await board.seen();

  const other = new BoardPage(await context.newPage());
  await other.open('?new');
  const { keyboard } = other.page;
  await tabTo(other, /^Route table$/);
  await keyboard.press('Enter');
  await expect(other.page.getByRole('form', { name: 'Place the hood' })).toBeVisible();
  await tabTo(other, /^East$/);
  const inches = (metres: number) => `${Number((metres / 0.0254).toFixed(6))}"`;
  for (const place of drawn.collar) {
    await keyboard.press('Control+a');
    await keyboard.type(inches(place));
    await keyboard.press('Tab');
  }
  await keyboard.press('Enter');
  for (const [way, length] of [
    ['Up', 3],
    ['East', 6],
    ['North', 6],
    ['Up', 3],
  ] as const) {
    await tabTo(other, /^Direction/, 'Shift+Tab');
    await keyboard.type(way);
    await tabTo(other, /^Length$/);
    await keyboard.type(`${length}'`);
    await keyboard.press('Enter');
  }
  await tabTo(other, /^Open end|the open end/i);
  await keyboard.press('Shift+F10');
  await expect(other.page.getByRole('menuitem', { name: 'Put a cap on this end' })).toBeFocused();
  await keyboard.press('Enter');

  const byKeys = await other.seen();
  expect(byKeys.job.schemes[0]?.nodes).toEqual(byMouse.job.schemes[0]?.nodes);
  expect(byKeys.segments).toEqual(byMouse.segments);
  expect(byKeys.bends).toEqual(byMouse.bends);
  expect(byKeys.flow).toBeGreaterThan(0.05);
  expect(byKeys.flow).toBe(byMouse.flow);
  await other.page.close();
});

test('a length typed into the table is the length of the leg, and the focus stays in its cell', async ({
  board,
}) => {
  await board.open('?example');
  await openTable(board);
  const before = await board.seen();
  for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight']) await board.page.keyboard.press(key);
  await board.page.keyboard.type(`2' 6"`);
  await board.page.keyboard.press('Enter');
  const after = await board.seen();
  expect(after.segments[0]?.length).toBeCloseTo(2.5 * 0.3048, 9);
  expect(after.undoLabel).toBe('change length');
  expect(after.flow).not.toBe(before.flow);
  await expect(cellInHand(board)).toBeFocused();
  await expect(cellInHand(board)).toHaveText(`2'-6"`);
  await expect(board.page.getByRole('status')).toHaveText(/Boost: \d+ cfm, \d+ % of rated; /);
});

test('nonsense in the table is answered in words, and Escape gives back what was there', async ({
  board,
}) => {
  await board.open('?example');
  const { job } = await board.seen();
  await openTable(board);
  for (const key of ['ArrowDown', 'ArrowRight', 'ArrowRight', 'Enter']) await board.page.keyboard.press(key);
  await board.page.keyboard.type('long');
  await board.page.keyboard.press('Enter');
  await expect(board.page.getByRole('alert')).toHaveText(/\.$/);
  await expect(board.page.locator('.route-table input[aria-invalid="true"]')).toBeFocused();
  await board.page.keyboard.press('Escape');
  await expect(cellInHand(board)).toBeFocused();
  expect((await board.seen()).job).toEqual(job);
});

test('a bend, a material and a cap are chosen from lists without the mouse', async ({ board }) => {
  await board.open('?example');
  const { keyboard } = board.page;
  await openTable(board);
  const choose = async (row: RegExp, name: string) => {
    await board.page.locator('.route-table tr', { hasText: row }).first().locator('th').click();
    for (let i = 0; i < 7; i += 1) await keyboard.press('ArrowRight');
    await keyboard.press('Enter');
    await keyboard.type(name);
    await keyboard.press('Enter');
    await expect(cellInHand(board)).toBeFocused();
  };
  await choose(/^Turn 1/, 'Smooth');
  await choose(/^Hood to turn 1/, 'Stainless');
  await choose(/^Cap/, 'No cap');
  const { job, bends, segments } = await board.seen();
  expect(bends[0]?.kind).toBe('smooth');
  expect(segments[0]?.material).toBe('stainless');
  expect(job.schemes[0]?.nodes.map(({ role }) => role)).not.toContain('cap');
});

test('a row that is deleted heals the run and leaves the focus in the table', async ({ board }) => {
  await board.open('?example');
  const before = await board.seen();
  await openTable(board);
  await board.page.keyboard.press('ArrowDown');
  await board.page.keyboard.press('ArrowDown');
  await board.page.keyboard.press('Delete');
  const after = await board.seen();
  expect(after.segments.length).toBe(before.segments.length - 1);
  expect(after.findings).not.toContain('gap');
  await expect(cellInHand(board)).toBeFocused();
});

test('selecting on a sheet is selecting in the table, and the other way round', async ({ board }) => {
  await board.open('?example');
  const { bends } = await board.seen();
  const bend = bends.at(-1);
  const node = await board.page.evaluate(
    (id) => globalThis.gentlebend.state().solution.route.nodes.get(id)?.at,
    bend?.node ?? '',
  );
  if (!bend || !node) throw new Error('the example has a turn');
  await openTable(board);
  await board.click('floor', node);
  await expect(board.page.locator(`.route-table tr[data-id="${bend.node}"]`)).toHaveAttribute(
    'aria-selected',
    'true',
  );
  await board.page.locator('.route-table tbody th').nth(1).click();
  const { selection, segments } = await board.seen();
  expect(selection.segments).toEqual([segments[0]?.id]);
});

test('closing the table gives the focus to the sheets', async ({ board }) => {
  await board.open('?example');
  await openTable(board);
  await board.page.getByRole('button', { name: 'Close the route table' }).click();
  await expect(board.page.locator('[data-sheet="floor"]')).toBeFocused();
});

test('nothing is cut off with the table open in either theme at either size', async ({ board }) => {
  await board.open('?example');
  await openTable(board);
  expect(await board.faultsInEveryLook()).toEqual([]);
});
