import { readFileSync } from 'node:fs';
import { parse } from 'csv-parse/sync';
import { totalsOf } from '../../src/advice/parts/totals.ts';
import { partWords } from '../../src/advice/parts.ts';
import { drawRoute } from './route.ts';
import { type BoardPage, expect, test } from './support.ts';

const dock = (board: BoardPage) => board.page.getByRole('region', { name: 'Parts list and cutting plan' });

async function openDock(board: BoardPage, search = '?example'): Promise<void> {
  await board.open(search);
  await board.page.getByRole('button', { name: 'Scheme actions' }).click();
  await board.page.getByRole('menuitem', { name: 'Parts list and cutting plan' }).click();
  await expect(dock(board)).toBeVisible();
}

/** Saves a table by its name in the menu of the parts list, and reads it as a spreadsheet would. */
async function saved(board: BoardPage, name: string, delimiter = ',') {
  const download = board.page.waitForEvent('download');
  await board.page.getByRole('button', { name: 'Save as a table' }).click();
  await board.page.getByRole('menuitem', { name }).click();
  const file = await download;
  const text = readFileSync(await file.path(), 'utf8');
  const rows = parse(text, { bom: true, columns: true, delimiter }) as Record<string, string>[];
  return { name: file.suggestedFilename(), text, rows };
}

test('the parts list has no fault in either theme at either size', async ({ board }) => {
  await openDock(board);
  await board.page.getByText('Up through the roof').click();
  await expect(dock(board).getByRole('heading', { name: /Up through the roof/ })).toBeVisible();
  const faults = await board.faultsInEveryLook();
  expect(faults.filter((fault) => !fault.includes('Job title'))).toEqual([]);
});

test('the list has every part of the scheme with its amount, and follows the drawing', async ({ board }) => {
  await openDock(board);
  const { job } = await board.seen();
  for (const { part } of totalsOf(job, 'wall').cost.lines)
    await expect(dock(board).getByRole('row', { name: partWords(part, 'imperial') })).toBeVisible();
  await board.page.getByText('mm', { exact: true }).click();
  await expect(dock(board).getByRole('row', { name: '203 mm round galvanized steel duct' })).toBeVisible();
});

test('a line and a piece select their places on the sheets, by mouse and by keys', async ({ board }) => {
  await openDock(board);
  await dock(board)
    .getByRole('button', { name: /five-piece bend/ })
    .click();
  const { bends } = await board.seen();
  expect((await board.seen()).selection.nodes).toEqual(bends.map(({ node }) => node));

  const pieces = dock(board).locator('[data-piece]');
  await pieces.first().focus();
  await board.page.keyboard.press('End');
  await expect(pieces.last()).toBeFocused();
  await board.page.keyboard.press('Enter');
  const { selection } = await board.seen();
  expect([selection.nodes, selection.segments.length]).toEqual([[], 1]);
  await expect(pieces.last()).toHaveAttribute('aria-label', /, the leg from /);
});

test('the stock length of one’s own changes the plan, is one step to undo, and an empty field goes back', async ({
  board,
}) => {
  await openDock(board);
  await expect(dock(board)).toContainText('4 × 5\'-0"');
  await dock(board).getByRole('button', { name: 'Prices and lengths…' }).click();
  const field = board.page.getByRole('dialog').getByLabel(/Stock length, 8" round/);
  await field.fill("10'");
  await field.press('Enter');
  await board.page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(dock(board)).toContainText('2 × 10\'-0"');
  expect((await board.seen()).undoLabel).toBe('change stock length');
  await dock(board).getByRole('button', { name: 'Prices and lengths…' }).click();
  await field.fill('');
  await field.press('Enter');
  await board.page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await expect(dock(board)).toContainText('4 × 5\'-0"');
  expect((await board.seen()).job.stock).toBeUndefined();
});

test('the saved tables are read back with the numbers of the job', async ({ board }) => {
  await openDock(board);
  const { job, segments } = await board.seen();
  const { cost, plans } = totalsOf(job, 'wall');

  const parts = await saved(board, 'Parts list');
  expect(parts.name).toBe('invented-example-kitchen-parts.csv');
  expect(parts.text.startsWith('\uFEFF')).toBe(true);
  expect(parts.rows.map(({ Key }) => Key)).toEqual(cost.lines.map(({ part }) => part.key));
  const total = parts.rows.reduce((sum, row) => sum + Number(row['Amount ($)']), 0);
  expect(total).toBeCloseTo(cost.total, 2);

  const cutting = await saved(board, 'Cutting plan');
  const cuts = plans.flatMap(({ bars }) => bars.flatMap((bar) => bar.cuts));
  expect(cutting.rows.map((row) => Number(row['Cut (in)']))).toEqual(
    cuts.map(({ length }) => expect.closeTo(length / 0.0254, 2)),
  );

  const route = await saved(board, 'Route');
  expect(route.rows.map((row) => Number(row['Length (ft)']))).toEqual(
    segments.map(({ length }) => expect.closeTo(length / 0.3048, 3)),
  );
  expect((await saved(board, 'Results of all schemes')).rows).toHaveLength(8);
});

test('the tables are saved with a decimal comma and semicolons when so chosen', async ({ board }) => {
  await openDock(board);
  const point = await saved(board, 'Route');
  await board.page.getByRole('button', { name: 'Save as a table' }).click();
  await board.page.getByRole('menuitemradio', { name: /1,5/ }).click();
  await board.page.keyboard.press('Escape');
  const comma = await saved(board, 'Route', ';');
  expect(comma.rows.map((row) => row['Length (ft)']?.replace(',', '.'))).toEqual(
    point.rows.map((row) => row['Length (ft)']),
  );
});

test('with nothing drawn it says how to begin, and fills with the first duct', async ({ board }) => {
  await openDock(board, '?new');
  await expect(dock(board)).toContainText('Nothing to buy yet');
  expect(await board.accessibilityFaults()).toEqual([]);
  expect(await board.layoutFaults()).toEqual([]);
  await drawRoute(board);
  await board.page.getByRole('button', { name: 'Scheme actions' }).click();
  await board.page.getByRole('menuitem', { name: 'Parts list and cutting plan' }).click();
  await expect(dock(board).locator('[data-piece]').first()).toBeVisible();
});
