import { type BoardPage, expect, test } from './support.ts';

const CFM = 0.00047194745;
const INCH_OF_WATER = 249.0889;

const openCharts = async (board: BoardPage) => {
  await board.open('?example');
  await board.page.getByRole('tab', { name: 'Pressure' }).click();
  await board.page.getByRole('button', { name: 'Larger charts, with their tables' }).click();
  await expect(board.page.getByRole('region', { name: 'Charts', exact: true })).toBeVisible();
};

const hover = ({ page }: BoardPage) => page.evaluate(() => globalThis.gentlebend.state().hover);

test('pointing at the profile points at the sheets, and at the sheets at the profile', async ({ board }) => {
  await openCharts(board);
  const profile = board.page.locator('[aria-labelledby="chart-profile"]');
  await board.settled();
  const box = await profile.locator('svg').boundingBox();
  if (!box) throw new Error('the profile is drawn');
  await board.page.mouse.move(box.x + box.width * 0.75, box.y + box.height / 2);
  await expect.poll(async () => (await hover(board)).segments.length).toBe(1);
  await expect(profile.locator('.lit')).not.toHaveCount(0);
  await board.page.mouse.move(box.x + box.width / 2, box.y - 200);
  const { bends } = await board.seen();
  const turn = bends[1];
  const node = (await board.seen()).job.schemes[0]?.nodes.find(({ id }) => id === turn?.node);
  if (!node) throw new Error('the example has a second turn');
  await board.pointAt('floor', node.at);
  await expect.poll(async () => (await hover(board)).nodes).toContain(node.id);
  await expect(profile.locator('.lit')).not.toHaveCount(0);
  await expect(profile.locator('figcaption')).toContainText('Turn 2');
  await expect(board.page.locator('.budget-chart .part.lit text').first()).toHaveText('Bends');
});

test('a bar of the budget points at every place that it stands for', async ({ board }) => {
  await openCharts(board);
  await board.page.locator('.budget-chart .part', { hasText: 'Bends' }).hover();
  const { bends } = await board.seen();
  await expect.poll(async () => (await hover(board)).nodes).toEqual(bends.map(({ node }) => node));
});

test('the tables say what was solved', async ({ board }) => {
  await openCharts(board);
  const { page } = board;
  await page.getByRole('radio', { name: 'Tables' }).click();
  const solved = await page.evaluate(() =>
    globalThis.gentlebend
      .state()
      .solution.speeds.map(({ name, outcome }) =>
        outcome.solved
          ? { name, flow: outcome.flow, total: outcome.totalPressure, staticPressure: outcome.staticPressure }
          : null,
      ),
  );
  const working = page.getByRole('table', { name: 'Where each speed works' });
  for (const speed of solved) {
    if (!speed) throw new Error('the example is solved at every speed');
    const cells = await working.getByRole('row', { name: speed.name }).getByRole('cell').allInnerTexts();
    const [flow, total, staticPressure] = cells.map((text) => Number.parseFloat(text));
    expect(flow).toBe(Math.round(speed.flow / CFM));
    expect(total).toBeCloseTo(speed.total / INCH_OF_WATER, 1);
    expect(Math.abs((total ?? 0) - speed.total / INCH_OF_WATER)).toBeLessThan(0.006);
    expect(Math.abs((staticPressure ?? 0) - speed.staticPressure / INCH_OF_WATER)).toBeLessThan(0.006);
  }
  const budget = page.getByRole('table', { name: 'Pressure by part' });
  const parts = (await budget.locator('tbody tr:not(.sum) td:nth-of-type(1)').allInnerTexts()).map(
    Number.parseFloat,
  );
  const sum = Number.parseFloat((await budget.locator('.sum td').first().textContent()) ?? '');
  expect(Math.abs(parts.reduce((all, each) => all + each, 0) - sum)).toBeLessThan(0.02);
});

test('a row of the table points at its place by key', async ({ board }) => {
  await openCharts(board);
  await board.page.getByRole('radio', { name: 'Tables' }).click();
  const row = board.page
    .getByRole('table', { name: 'Pressure along the run' })
    .getByRole('button', { name: 'Turn 2', exact: true });
  await row.focus();
  const { bends } = await board.seen();
  await expect.poll(async () => (await hover(board)).nodes).toEqual([bends[1]?.node]);
});

test('neither charts nor tables have a fault in either theme at either size', async ({ board }) => {
  await openCharts(board);
  expect(await board.faultsInEveryLook('charts')).toEqual([]);
  await board.page.getByRole('radio', { name: 'Tables' }).click();
  expect(await board.faultsInEveryLook('tables')).toEqual([]);
});

test('with nothing drawn the charts say what they will tell, and begin with the hood', async ({ board }) => {
  await board.open('?new');
  await board.ask('Charts');
  const dock = board.page.getByRole('region', { name: 'Charts', exact: true });
  await expect(dock).toContainText('a long fall at one place is a place to change');
  expect(await board.layoutFaults()).toEqual([]);
  await dock.getByRole('button', { name: 'Place hood' }).click();
  await expect(board.page.getByRole('button', { name: 'Place hood' }).first()).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('the profile in the panel is drawn on the panel itself, with or without the dock', async ({ board }) => {
  await board.open('?example');
  await board.page.getByRole('tab', { name: 'Pressure' }).click();
  const pointing = board.page.locator('.tab-panel .chart .pointing');
  await expect(pointing).toHaveCSS('fill', 'rgba(0, 0, 0, 0)');
});

test('the price list of an empty job says what will stand there', async ({ board }) => {
  await board.open('?new');
  await board.page.getByRole('button', { name: 'Scheme actions' }).click();
  await board.page.getByRole('menuitem', { name: 'Parts and prices' }).click();
  const dialog = board.page.getByRole('dialog', { name: 'Parts and prices' });
  await expect(dialog.getByRole('heading', { name: 'Nothing to price yet' })).toBeVisible();
  await expect(dialog.getByRole('table')).toHaveCount(0);
  expect(await board.accessibilityFaults()).toEqual([]);
});
