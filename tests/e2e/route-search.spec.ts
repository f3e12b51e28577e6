import { type BoardPage, expect, test } from './support.ts';

/** The panel, by the menu of the schemes. */
async function openPanel({ page }: BoardPage) {
  await page.getByRole('button', { name: 'Scheme actions' }).click();
  await page.getByRole('menuitem', { name: 'Find a route' }).click();
  const panel = page.getByRole('complementary', { name: 'Find a route' });
  await expect(panel).toBeVisible();
  return panel;
}

const ghostFlow = ({ page }: BoardPage) =>
  page.evaluate(() => {
    const outcome = globalThis.gentlebend.state().ghost?.solution.speeds.at(-1)?.outcome;
    return outcome?.solved ? outcome.flow : null;
  });

test('routes are found, shown as ghosts, made a scheme in one step and undone', async ({ board }) => {
  await board.open('?example');
  const before = await board.seen();
  const panel = await openPanel(board);
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  const routes = panel.getByRole('list', { name: 'Routes found' }).getByRole('listitem');
  await expect(routes.first()).toBeVisible();
  expect(await routes.count()).toBeGreaterThan(1);
  await expect(panel.getByText(/states examined/)).toBeVisible();

  const best = await ghostFlow(board);
  expect(best).toBeGreaterThan(before.flow ?? Number.POSITIVE_INFINITY);
  await routes.nth(1).getByRole('button').first().hover();
  await expect.poll(() => ghostFlow(board)).not.toBe(best);
  expect(await ghostFlow(board)).toBeLessThan(best ?? 0);
  expect((await board.seen()).job).toEqual(before.job);

  await routes.first().getByRole('button').first().click();
  await routes.first().getByRole('button', { name: 'Make it a scheme' }).click();
  const after = await board.seen();
  expect(after.job.schemes).toHaveLength(before.job.schemes.length + 1);
  expect(after.schemeId).toBe(after.job.schemes.at(-1)?.id);
  expect(after.flow).toBeCloseTo(best ?? 0, 12);
  expect(after.findings.filter((rule) => rule.startsWith('fit-'))).toEqual([]);
  expect(await ghostFlow(board)).toBeNull();

  await board.page.getByRole('button', { name: /^Undo make a scheme/ }).click();
  expect((await board.seen()).job).toEqual(before.job);
  await expect(routes.first().getByRole('button', { name: 'Make it a scheme' })).toBeEnabled();
});

test('a search that takes long is called off, and the panel can search again', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await panel.getByRole('button', { name: 'Turns every' }).click();
  await board.page.getByRole('option', { name: '2"', exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  await panel.getByRole('button', { name: 'Cancel' }).click();
  await expect(panel.getByText(/^Called off/)).toBeVisible();
  await expect(panel.getByRole('list', { name: 'Routes found' })).toBeHidden();
  expect((await board.seen()).undoLabel).toBeNull();

  await panel.getByRole('button', { name: 'Turns every' }).click();
  await board.page.getByRole('option', { name: '6"', exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  await expect(panel.getByRole('list', { name: 'Routes found' })).toBeVisible();
});

test('only the chosen exits are used', async ({ board }) => {
  await board.open('?example');
  const panel = await openPanel(board);
  await panel.getByText('north wall', { exact: true }).click();
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  const routes = panel.getByRole('list', { name: 'Routes found' }).getByRole('listitem');
  await expect(routes.first()).toContainText('Roof');
  await expect(routes.filter({ hasText: 'North wall' })).toHaveCount(0);
  await panel.getByText('roof', { exact: true }).click();
  await expect(panel.getByRole('button', { name: 'Search', exact: true })).toBeDisabled();
});

test('an empty job says what a search needs', async ({ board }) => {
  await board.open('?new');
  const panel = await openPanel(board);
  await expect(panel.getByText('A search goes from a hood to an exit')).toBeVisible();
  await panel.getByRole('button', { name: 'Draw an exit face' }).click();
  expect(await board.page.evaluate(() => globalThis.gentlebend.state().tool)).toBe('exit');
  await panel.getByRole('button', { name: 'Close' }).click();
  await expect(board.page.getByRole('complementary', { name: 'Details' })).toBeVisible();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`in ${colorScheme}`, () => {
    test.use({ colorScheme });
    for (const size of [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
    ]) {
      test(`the panel has no fault at ${size.width} by ${size.height}`, async ({ board }, info) => {
        await board.page.setViewportSize(size);
        await board.open('?example');
        const panel = await openPanel(board);
        await panel.getByRole('button', { name: 'Search', exact: true }).click();
        await expect(panel.getByRole('list', { name: 'Routes found' })).toBeVisible();
        await board.page.mouse.move(400, 400);
        await board.frame();
        const name = `routes-${colorScheme}-${size.width}.png`;
        await info.attach(name, {
          body: await board.page.screenshot({ path: info.outputPath(name) }),
          contentType: 'image/png',
        });
        expect(await board.layoutFaults()).toEqual([]);
        expect(await board.accessibilityFaults()).toEqual([]);
      });
    }
  });
}
