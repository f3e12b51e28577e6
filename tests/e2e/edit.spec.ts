import type { Vec3 } from '../../src/graph/document.ts';
import { drawRoute } from './route.ts';
import { type BoardPage, expect, test } from './support.ts';

const middle = (a: Vec3, b: Vec3): Vec3 => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2];

async function choose(board: BoardPage, name: string): Promise<void> {
  await board.page.getByRole('menuitem', { name }).click();
}

const focusSheet = (board: BoardPage) => board.page.locator('[data-sheet="floor"]').focus();

test('a route goes to another scheme by copy and paste, through the clipboard of the system', async ({
  board,
}) => {
  await drawRoute(board);
  const first = await board.seen();
  await focusSheet(board);
  await board.page.keyboard.press('Control+a');
  await board.page.keyboard.press('Control+c');
  await board.ask('new scheme', 'New scheme');
  await focusSheet(board);
  await board.page.keyboard.press('Control+v');
  const second = await board.seen();
  expect(second.schemeId).not.toBe(first.schemeId);
  expect(second.job.schemes[1]?.nodes.map(({ at, role }) => ({ at, role }))).toEqual(
    first.job.schemes[0]?.nodes.map(({ at, role }) => ({ at, role })),
  );
  expect(second.flow).toBe(first.flow);
  expect(second.undoLabel).toBe('paste');
});

test('text that is no copy of ours, pasted on a sheet, changes nothing', async ({ board, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await drawRoute(board);
  const { job } = await board.seen();
  await board.page.evaluate(() => navigator.clipboard.writeText('{"format":"gentlebend-clip","version":1}'));
  await focusSheet(board);
  await board.page.keyboard.press('Control+v');
  expect((await board.seen()).job).toEqual(job);
});

test('mirroring twice gives back the places and the air, and each is one step', async ({ board }) => {
  await drawRoute(board);
  const before = await board.seen();
  await focusSheet(board);
  await board.page.keyboard.press('Control+a');
  await board.ask('mirror left', 'Mirror left and right');
  const mirrored = await board.seen();
  expect(mirrored.undoLabel).toBe('mirror left and right');
  expect(mirrored.job).not.toEqual(before.job);
  expect(mirrored.flow).toBeCloseTo(before.flow ?? 0, 9);
  await board.ask('mirror left', 'Mirror left and right');
  expect((await board.seen()).job).toEqual(before.job);
});

test('the list of edits goes to a step by a click, and keeps those after it', async ({ board }) => {
  await drawRoute(board);
  const last = await board.seen();
  await board.page.getByRole('button', { name: 'List of edits' }).click();
  const list = board.page.getByRole('listbox');
  await list.getByRole('option', { name: 'As it was opened' }).click();
  expect((await board.seen()).job.schemes[0]?.nodes).toEqual([]);
  await expect(list.getByRole('option')).not.toHaveCount(1);
  await list.getByRole('option').first().click();
  expect((await board.seen()).job).toEqual(last.job);
  await board.page.keyboard.press('Escape');
  await expect(board.page.getByRole('button', { name: 'List of edits' })).toBeFocused();
});

test('the command box finds a command from a word with a wrong letter in it', async ({ board }) => {
  await board.open('?example');
  await board.ask('shrotcuts', 'List of shortcuts');
  await expect(board.page.getByRole('heading', { name: 'Shortcuts' })).toBeVisible();
  const list = board.page.getByRole('region', { name: 'All shortcuts' });
  await list.getByText('Aim down the sheet', { exact: true }).scrollIntoViewIfNeeded();
  await expect(list.getByText('Aim down the sheet', { exact: true })).toBeInViewport();
  expect(await list.evaluate((element) => element.scrollWidth - element.clientWidth)).toBe(0);
});

test('a size chosen for the whole run goes to every leg of it, as one step', async ({ board }) => {
  const { turn1, turn2 } = await drawRoute(board);
  await board.click('section-x', middle(turn1, turn2));
  await board.page.getByRole('tab', { name: 'Selected' }).click();
  await board.page.getByRole('radio', { name: 'whole run' }).click();
  await board.page.getByRole('combobox', { name: 'Size' }).fill('10 in');
  await board.page.keyboard.press('Enter');
  const { segments, undoLabel } = await board.seen();
  const diameters = segments.map(({ section }) => (section.shape === 'round' ? section.diameter : 0));
  expect(diameters).toEqual([0.254, 0.254, 0.254, 0.254]);
  await board.page.keyboard.press('Escape');
  await board.page.getByRole('button', { name: /^Undo/ }).click();
  expect(undoLabel).toBe('change duct size');
  const undone = (await board.seen()).segments;
  expect(undone.map(({ section }) => section.shape === 'round' && section.diameter)).not.toContain(0.254);
});

test('a right click on a duct opens its menu, and Escape gives the focus back to the sheet', async ({
  board,
}) => {
  const { turn1, turn2 } = await drawRoute(board);
  const { x, y } = await board.screenOf('section-x', middle(turn1, turn2));
  await board.page.mouse.click(x, y, { button: 'right' });
  const { selection, segments } = await board.seen();
  expect(selection.segments).toEqual([segments[1]?.id]);
  await expect(board.page.getByRole('menuitem', { name: 'Put a turn in the middle' })).toBeVisible();
  await board.page.keyboard.press('Escape');
  await expect(board.page.getByRole('menu')).toHaveCount(0);
  await expect(board.page.locator('[data-sheet]:focus')).toHaveCount(1);
});

test('the menu puts a turn into a duct', async ({ board }) => {
  const { turn1, turn2 } = await drawRoute(board);
  const { x, y } = await board.screenOf('section-x', middle(turn1, turn2));
  await board.page.mouse.click(x, y, { button: 'right' });
  await choose(board, 'Put a turn in the middle');
  const { segments, undoLabel } = await board.seen();
  expect([segments.length, undoLabel]).toEqual([5, 'insert node']);
});

test('Shift and F10 opens the menu of what is selected without the mouse', async ({ board }) => {
  await drawRoute(board);
  await focusSheet(board);
  await board.page.keyboard.press(']');
  await board.page.keyboard.press('Shift+F10');
  await expect(board.page.getByRole('menu')).toContainText(/turn|hood|duct/i);
  await expect(board.page.getByRole('menuitem').first()).toBeFocused();
});

test('going along the duct by keys visits everything in the direction of the air, and says it', async ({
  board,
}) => {
  await drawRoute(board);
  await board.page.keyboard.press('Escape');
  await focusSheet(board);
  await board.page.keyboard.press('Escape');
  const { segments, job } = await board.seen();
  const met: string[] = [];
  for (let i = 0; i < 9; i += 1) {
    await board.page.keyboard.press(i % 2 === 0 ? ']' : 'Control+ArrowRight');
    const { selection } = await board.seen();
    met.push(...selection.nodes, ...selection.segments);
  }
  const legs = segments.flatMap((leg, i) => (i === 0 ? [leg.from, leg.id, leg.to] : [leg.id, leg.to]));
  expect(met).toEqual(legs);
  await expect(board.page.getByRole('status')).toContainText(/cap/i);
  await board.page.keyboard.press('[');
  expect((await board.seen()).selection.segments).toEqual([segments.at(-1)?.id]);
  expect((await board.seen()).job).toEqual(job);
});

test('undoing back to what is in the file takes the mark of unsaved work away', async ({ board }) => {
  await board.open('?example');
  const mark = board.page.locator('.unsaved-mark');
  await expect(mark).toHaveCount(0);
  await focusSheet(board);
  await board.page.keyboard.press(']');
  await board.page.keyboard.press('ArrowRight');
  await expect(mark).toHaveCount(1);
  await board.page.keyboard.press('Control+z');
  await expect(mark).toHaveCount(0);
});

test.describe('printing from the dark', () => {
  test.use({ colorScheme: 'dark' });

  test('is ink on white in the very moment that the browser prints, and dark again after', async ({
    board,
  }) => {
    await board.open('?example');
    await board.page.evaluate(() => {
      const seen: string[] = [];
      Object.assign(globalThis, { seen });
      const corner = () => {
        const canvas = document.querySelector<HTMLCanvasElement>('[data-sheet="floor"] canvas');
        const pixel = canvas?.getContext('2d')?.getImageData(canvas.width - 3, canvas.height - 3, 1, 1).data;
        seen.push([...(pixel ?? [])].slice(0, 3).join(' '));
      };
      window.addEventListener('beforeprint', corner);
      window.addEventListener('afterprint', corner);
    });
    await board.page.pdf({ format: 'A4', landscape: true });
    const seen = await board.page.evaluate(() => (globalThis as unknown as { seen: string[] }).seen);
    const light = (pixel = '') => pixel.split(' ').every((value) => Number(value) > 200);
    expect(seen.map(light)).toEqual([true, false]);
    expect(await board.page.evaluate(() => document.documentElement.dataset.theme)).toBe('dark');
  });

  test('shows the sheets whole on the page', async ({ board }, info) => {
    await board.open('?example');
    await board.page.setViewportSize({ width: 1050, height: 740 });
    await board.page.emulateMedia({ media: 'print' });
    await board.frame();
    const faults = await board.page.evaluate(() =>
      [...document.querySelectorAll('[data-sheet]')].flatMap((sheet) => {
        const box = sheet.getBoundingClientRect();
        const frame = sheet.parentElement?.getBoundingClientRect();
        const fits = frame && box.width <= frame.width + 1 && box.height <= frame.height + 1;
        return fits && box.height > 200 ? [] : [`${box.width} by ${box.height}`];
      }),
    );
    expect(faults).toEqual([]);
    await board.page.screenshot({ path: info.outputPath('print.png') });
  });
});

test.describe('in a browser that speaks another language', () => {
  test.use({ locale: 'de-DE' });

  test('menus, lists and the command box open as they do in English', async ({ board }) => {
    await board.open('?example');
    await board.page.getByRole('button', { name: 'File' }).click();
    await expect(board.page.getByRole('menuitem', { name: 'Save', exact: false }).first()).toBeVisible();
    await board.page.keyboard.press('Escape');
    await focusSheet(board);
    await board.page.keyboard.press(']');
    await board.page.keyboard.press(']');
    await board.page.getByRole('tab', { name: 'Selected' }).click();
    await board.page.getByRole('button', { name: 'Sizes' }).click();
    await expect(board.page.getByRole('option').first()).toBeVisible();
    await board.page.keyboard.press('Escape');
    await board.page.keyboard.press('Control+k');
    await expect(board.page.getByRole('menuitem').first()).toBeVisible();
  });
});
