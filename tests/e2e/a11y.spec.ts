import { drawRoute } from './route.ts';
import { type BoardPage, expect, test } from './support.ts';

/** Opens something and comes to rest, from the example as it opens. */
interface Place {
  readonly name: string;
  readonly go: (board: BoardPage) => Promise<void>;
}

const press = (board: BoardPage, ...keys: string[]) =>
  keys.reduce((before, key) => before.then(() => board.page.keyboard.press(key)), Promise.resolve());

const focusSheet = (board: BoardPage) => board.page.locator('[data-sheet="floor"]').focus();

const tab = (name: string): Place => ({
  name: `the panel ${name}`,
  go: async (board) => {
    await board.page.getByRole('tab', { name }).click();
  },
});

/** Selects what is so many steps along the duct from the hood. */
const selected = (name: string, steps: number): Place => ({
  name: `${name} selected`,
  go: async (board) => {
    await focusSheet(board);
    await press(board, ...Array<string>(steps).fill(']'));
    await board.page.getByRole('tab', { name: 'Selected' }).click();
  },
});

const button = (name: string | RegExp, what: string): Place => ({
  name: what,
  go: async (board) => {
    await board.page.getByRole('button', { name }).first().click();
  },
});

const places: readonly Place[] = [
  ...['Proposals', 'Pressure', 'Selected', 'Findings', 'Kitchen'].map(tab),
  selected('the hood', 1),
  selected('a duct', 2),
  selected('a turn', 3),
  selected('the cap', 7),
  {
    name: 'everything selected',
    go: async (board) => {
      await focusSheet(board);
      await press(board, 'Control+a');
      await board.page.getByRole('tab', { name: 'Selected' }).click();
    },
  },
  button('File', 'the file menu'),
  button('Scheme actions', 'the menu of schemes'),
  button('Cautions', 'the cautions'),
  { name: 'the command box', go: (board) => press(board, 'Control+k') },
  {
    name: 'the command box without a command',
    go: async (board) => {
      await press(board, 'Control+k');
      await board.page.keyboard.type('zzzzzz');
    },
  },
  { name: 'the shortcuts', go: (board) => press(board, '?') },
  {
    name: 'the list of edits',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', 'ArrowRight', 'ArrowRight', 'Control+z');
      await board.page.getByRole('button', { name: 'List of edits' }).click();
    },
  },
  {
    name: 'the menu of a duct',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', ']', 'Shift+F10');
    },
  },
  {
    name: 'the menu of the sheet',
    go: async (board) => {
      await focusSheet(board);
      await press(board, 'Shift+F10');
    },
  },
  { name: 'the route table', go: (board) => press(board, 't') },
  {
    name: 'a cell of the route table with a wrong text',
    go: async (board) => {
      await press(board, 't');
      await expect(board.page.locator('.route-table [data-at]')).toBeFocused();
      await press(board, 'ArrowDown', 'ArrowRight', 'ArrowRight', 'x', 'Enter');
    },
  },
  {
    name: 'a list in a cell of the route table',
    go: async (board) => {
      await press(board, 't');
      await expect(board.page.locator('.route-table [data-at]')).toBeFocused();
      await press(board, 'ArrowDown', ...Array<string>(7).fill('ArrowRight'), 'Enter');
    },
  },
  {
    name: 'where a figure comes from',
    go: async (board) => {
      await board.page.locator('[data-explain]').first().click();
    },
  },
  {
    name: 'a question before work is lost',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', 'ArrowRight');
      await press(board, 'Control+k');
      await board.page.keyboard.type('new job');
      await press(board, 'ArrowDown', 'Enter');
    },
  },
];

/** The places that have a screen of their own, and each choice of views. */
const views = ['two', 'three', 'four'];

for (const colorScheme of ['light', 'dark'] as const)
  test.describe(`in ${colorScheme}`, () => {
    test.use({ colorScheme, reducedMotion: 'reduce' });

    for (const { name, go } of places)
      test(`${name} has no fault that axe finds`, async ({ board }) => {
        await board.open('?example');
        await go(board);
        await board.page.waitForTimeout(250);
        expect(await board.accessibilityFaults()).toEqual([]);
      });

    test('every choice of views has no fault that axe finds', async ({ board }) => {
      await board.open('?example');
      const group = board.page.getByRole('radiogroup', { name: 'Views' });
      await expect(group.getByRole('radio')).toHaveCount(views.length);
      for (let i = 0; i < views.length; i += 1) {
        await group.getByRole('radio').nth(i).click();
        await board.frame();
        expect(await board.accessibilityFaults()).toEqual([]);
      }
    });

    test('the empty job with the route table has no fault that axe finds', async ({ board }) => {
      await board.open('?new');
      await press(board, 't');
      await expect(board.page.getByRole('form', { name: 'Place the hood' })).toBeVisible();
      expect(await board.accessibilityFaults()).toEqual([]);
    });
  });

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
  const seen = new Set<string>();
  for (let i = 0; i < 90; i += 1) {
    await press(board, 'Tab');
    const stop = await board.page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement) || element === document.body) return null;
      const box = element.getBoundingClientRect();
      const ring = (of: Element, pseudo?: string) => getComputedStyle(of, pseudo).outlineStyle !== 'none';
      const marked =
        ring(element) || ring(element, '::after') || getComputedStyle(element).boxShadow !== 'none';
      const within = box.bottom > 0 && box.right > 0 && box.left < innerWidth && box.top < innerHeight;
      return { name: element.ariaLabel ?? element.textContent ?? element.tagName, marked, within };
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
