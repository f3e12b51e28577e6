import { parseLength } from '../../src/units/index.ts';
import { type BoardPage, expect, test } from './support.ts';

async function openCodes(board: BoardPage) {
  const { page } = board;
  await board.ask('Check codes');
  const panel = page.getByRole('tabpanel', { name: /^Findings/ });
  await expect(panel.getByText(/not met, .* open, .* met/)).toBeVisible();
  return panel;
}

const openRules = async ({ page }: BoardPage) => {
  await page.getByRole('button', { name: 'Rules and limits…' }).click();
  const dialog = page.getByRole('dialog', { name: 'Rules and limits of this job' });
  await expect(dialog).toBeVisible();
  return dialog;
};

test('what does not meet a rule says its limit and its source, and leads to its place', async ({ board }) => {
  await board.open('?example');
  await board.page
    .getByRole('radio', { name: /Up through the roof/ })
    .or(board.page.getByRole('button', { name: /Up through the roof/ }))
    .first()
    .click();
  const panel = await openCodes(board);
  const row = panel.getByRole('button', { name: /^Not smaller than the collar/ });
  await expect(row).toContainText('collar');
  await expect(row).toContainText('common practice');
  await row.click();
  const { selection } = await board.seen();
  expect(selection.segments).toEqual(expect.arrayContaining(['rd2', 'rd3']));
});

test('distances typed for the cap close what could not be told, as edits that are undone', async ({
  board,
}) => {
  await board.open('?example');
  const panel = await openCodes(board);
  const open = panel.getByRole('region', { name: 'Cannot be told yet' });
  await expect(open.getByRole('button', { name: /^Cap to windows and doors/ })).toBeVisible();
  const field = panel.getByLabel('To a window or door');
  await field.fill("2'");
  await field.press('Enter');
  const broken = panel.getByRole('region', { name: 'Does not meet' });
  await expect(broken.getByRole('button', { name: /^Cap to windows and doors.*2'-0".*3'-0"/ })).toBeVisible();
  await board.page.getByRole('button', { name: /^Undo enter a distance/ }).click();
  await expect(open.getByRole('button', { name: /^Cap to windows and doors/ })).toBeVisible();
});

test('a distance of the cap that is blanked is not known again', async ({ board }) => {
  await board.open('?example');
  const panel = await openCodes(board);
  const before = await board.seen();
  const open = panel.getByRole('region', { name: 'Cannot be told yet' });
  const field = panel.getByLabel('To a window or door');
  await field.fill("2'");
  await field.press('Enter');
  await expect(open.getByRole('button', { name: /^Cap to windows and doors/ })).toBeHidden();
  await field.fill('');
  await field.press('Enter');
  await expect(open.getByRole('button', { name: /^Cap to windows and doors/ })).toBeVisible();
  const after = await board.seen();
  expect(after.job).toEqual(before.job);
  expect(after.undoLabel).toBe('take out a distance of the cap');
});

/** Takes the tool of blocks, and goes on by Tab to a kind. */
async function takeBlock({ page }: BoardPage, kind: string) {
  await page.locator('[data-sheet="floor"]').focus();
  await page.keyboard.press('b');
  const inHand = () => page.evaluate(() => globalThis.gentlebend.state().kinds.block);
  for (let i = 0; i < 12 && (await inHand()) !== kind; i += 1) await page.keyboard.press('Tab');
  expect(await inHand()).toBe(kind);
}

for (const { kind, label } of [
  { kind: 'window', label: 'To a window or door' },
  { kind: 'intake', label: 'To an air intake' },
  { kind: 'lot line', label: 'To the property line' },
])
  test(`${label.slice(3)} drawn with the mouse is read by the check of the cap`, async ({ board }) => {
    await board.open('?example');
    const { job } = await board.seen();
    const cap = job.schemes[0]?.nodes.find(({ role }) => role === 'cap');
    if (!cap) throw new Error('the example has a cap');
    const [x, y] = cap.at;
    await takeBlock(board, kind);
    await board.drag('floor', [x - 1.2, y + 0.2, 0], [x - 0.6, y + 0.35, 0]);
    const after = await board.seen();
    expect(after.job.blocks).toHaveLength(job.blocks.length + 1);

    const panel = await openCodes(board);
    const said = await panel.getByLabel(label, { exact: true }).getAttribute('aria-describedby');
    const words = (await board.page.locator(`[id="${said?.split(' ')[0]}"]`).textContent()) ?? '';
    const shown = parseLength(/^Drawn: (.*?),/.exec(words)?.[1] ?? '', 'imperial');
    const drawn = after.job.blocks.at(-1);
    if (!drawn || !shown.ok) throw new Error(`nothing was read: ${words}`);
    const gaps = cap.at.map((at, i) => Math.max((drawn.min[i] ?? 0) - at, at - (drawn.max[i] ?? 0), 0));
    // The rim of the 8 in duct is nearer than its middle by 4 in.
    expect(shown.value).toBeCloseTo(Math.hypot(...gaps) - 4 * 0.0254, 2);
    await expect(panel.getByRole('button', { name: /as drawn/ }).first()).toBeVisible();
  });

test('a limit of the job is shown as such, and the finding on the sheet goes by it', async ({ board }) => {
  await board.open('?example');
  expect((await board.seen()).findings).toContain('make-up-air');
  const panel = await openCodes(board);
  const dialog = await openRules(board);
  const limit = dialog.getByLabel('Limit of make-up air');
  await limit.fill('900 cfm');
  await limit.press('Enter');
  await expect(dialog.getByText('Set in this job; the source says 400 cfm.')).toBeVisible();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await expect(
    panel.getByRole('button', { name: /^Make-up air\..*900 cfm \(set in this job\)/ }),
  ).toBeVisible();
  expect((await board.seen()).findings).not.toContain('make-up-air');

  const again = await openRules(board);
  await again.getByRole('checkbox', { name: 'Make-up air' }).press('Space');
  await again.getByRole('button', { name: 'Close' }).click();
  await expect(panel.getByText(/1 switched off/)).toBeVisible();
});

test('codes and rules fit in both themes at both sizes, and axe finds no fault', async ({ board }) => {
  await board.open('?example');
  await openCodes(board);
  expect(await board.faultsInEveryLook('codes')).toEqual([]);
  await openRules(board);
  const faults = await board.faultsInEveryLook('rules');
  expect(faults.filter((fault) => !fault.includes(': overlap'))).toEqual([]);
});
