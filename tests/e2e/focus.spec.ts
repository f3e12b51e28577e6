import { drawRoute } from './route.ts';
import { type BoardPage, expect, test } from './support.ts';

const press = async (board: BoardPage, ...keys: string[]) => {
  for (const key of keys) await board.page.keyboard.press(key);
};

const focusSheet = (board: BoardPage) => board.page.locator('[data-sheet="floor"]').focus();

/** What opens over the desk, how, and who has the focus once it is closed. */
const dialogs = [
  { name: 'the command box', keys: ['Control+k'] },
  { name: 'the shortcuts', keys: ['?'] },
  { name: 'the menu of the sheet', keys: ['Shift+F10'] },
] as const;

for (const { name, keys } of dialogs)
  test(`closing ${name} by Escape gives the focus back to the sheet`, async ({ board }) => {
    await board.open('?example');
    await focusSheet(board);
    await press(board, ...keys);
    await expect(board.page.getByRole('dialog').or(board.page.getByRole('menu')).first()).toBeVisible();
    await expect(board.page.locator('[data-sheet="floor"]')).not.toBeFocused();
    await press(board, 'Escape');
    await expect(board.page.locator('[data-sheet="floor"]')).toBeFocused();
  });

for (const [name, role] of [
  ['File', 'menu'],
  ['Scheme actions', 'menu'],
  ['Cautions', 'dialog'],
] as const)
  test(`closing what ${name} opens gives the focus back to it`, async ({ board }) => {
    await board.open('?example');
    const opener = board.page.getByRole('button', { name }).first();
    await opener.focus();
    await press(board, 'Enter');
    await expect(board.page.getByRole(role).first()).toBeVisible();
    await press(board, 'Escape');
    await expect(opener).toBeFocused();
  });

for (const [name, role, close] of [
  ['Compare schemes', 'dialog', null],
  ['Parts and prices', 'dialog', null],
  ['Rules and limits', 'dialog', null],
  ['Job sheet (PDF)', 'dialog', null],
  ['Open a share link', 'dialog', null],
  ['Bend lab', 'dialog', null],
  ['Jobs', 'dialog', null],
  ['Find a fault', 'complementary', 'Close'],
  ['Find a route', 'complementary', 'Close'],
  ['Charts', 'region', 'Close the charts'],
  ['Parts list and cutting plan', 'region', 'Close the parts list'],
] as const)
  test(`${name} takes the focus by keys alone, and gives it back to the sheet`, async ({ board }) => {
    await board.open('?example');
    await focusSheet(board);
    await board.ask(name);
    const box = board.page.getByRole(role, { name });
    await expect(box).toBeVisible();
    const inside = () => box.evaluate((element) => element.contains(document.activeElement));
    await expect.poll(inside).toBe(true);
    if (close === null) await press(board, 'Escape');
    else {
      const button = box.getByRole('button', { name: close, exact: true });
      for (let i = 0; i < 12 && !(await button.evaluate((one) => one === document.activeElement)); i += 1)
        await press(board, 'Tab');
      await expect(button).toBeFocused();
      await press(board, 'Enter');
    }
    await expect(box).toBeHidden();
    await expect(board.page.locator('[data-sheet="floor"]')).toBeFocused();
  });

for (const name of ['Find a fault', 'Find a route'])
  test(`closing ${name} gives the focus back to the button that its menu hangs on`, async ({ board }) => {
    await board.open('?example');
    await board.page.getByRole('button', { name: 'Scheme actions' }).focus();
    await press(board, 'Enter');
    await board.page.getByRole('menuitem', { name }).click();
    const panel = board.page.getByRole('complementary', { name });
    await expect(panel).toBeFocused();
    await panel.getByRole('button', { name: 'Close', exact: true }).press('Enter');
    await expect(board.page.getByRole('button', { name: 'Scheme actions' })).toBeFocused();
  });

test('the first stop of the Tab key leads past the bar to the sheets', async ({ board }) => {
  await board.open('?example');
  await press(board, 'Tab');
  const skip = board.page.getByRole('button', { name: 'Skip to the sheets' });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport({ ratio: 1 });
  await press(board, 'Enter');
  await expect(board.page.locator('[data-sheet="floor"]')).toBeFocused();
});

test('whatever the Tab key comes to can be seen, and shows that it has the focus', async ({ board }) => {
  await drawRoute(board);
  await expect(board.page.locator('[data-proposal]:not([disabled])').first()).toBeVisible();
  const seen = new Set<string>();
  for (let i = 0; i < 90; i += 1) {
    await press(board, 'Tab');
    const stop = await board.page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement) || element === document.body) return null;
      const box = element.getBoundingClientRect();
      const ring = (of: Element, pseudo?: string) => {
        const { outlineStyle, content, borderStyle } = getComputedStyle(of, pseudo);
        return outlineStyle !== 'none' || (pseudo && content !== 'none' && borderStyle === 'solid');
      };
      const marked =
        ring(element) || ring(element, '::after') || getComputedStyle(element).boxShadow !== 'none';
      const within = box.bottom > 0 && box.right > 0 && box.left < innerWidth && box.top < innerHeight;
      return {
        name: element.ariaLabel ?? element.textContent ?? element.tagName,
        marked: Boolean(marked),
        within,
      };
    });
    if (!stop) break;
    expect.soft(stop, stop.name).toEqual({ name: stop.name, marked: true, within: true });
    seen.add(stop.name);
  }
  expect(seen.size).toBeGreaterThan(25);
});

test('with forced colours the chosen tool, tab and row can still be told from the others', async ({
  board,
}) => {
  await board.page.emulateMedia({ forcedColors: 'active' });
  await board.open('?example');
  const looks = await board.page.evaluate(() =>
    ['.tool-rail [aria-pressed]', '.tab-list [role="tab"]', '.scheme-tab'].map((selector) => {
      const all = [...document.querySelectorAll(selector)];
      const look = (element: Element) => {
        const { backgroundColor, outlineStyle, borderStyle, textDecorationLine } = getComputedStyle(element);
        return [backgroundColor, outlineStyle, borderStyle, textDecorationLine].join(' ');
      };
      const chosen = all.filter((element) =>
        ['aria-pressed', 'aria-selected', 'aria-checked'].some(
          (name) => element.getAttribute(name) === 'true',
        ),
      );
      const others = all.filter((element) => !chosen.includes(element));
      return {
        selector,
        chosen: chosen.length,
        differ: chosen.every((one) => others.every((other) => look(one) !== look(other))),
      };
    }),
  );
  for (const { selector, chosen, differ } of looks)
    expect([selector, chosen, differ]).toEqual([selector, 1, true]);
});
