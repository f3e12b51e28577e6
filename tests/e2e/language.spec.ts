import { locales } from '../../src/units/index.ts';
import { catalogueTexts, leftBehind, textsIn } from '../support/bracketed.ts';
import { type BoardPage, expect, test } from './support.ts';

/** The language that nobody speaks: every text of the program stands in brackets. */
const pseudo = 'en-XA';

const catalogue = catalogueTexts();

/** Where a job holds what a person has written. */
const ownKeys = new Set(['title', 'name', 'text', 'notes', 'combustion']);

/** What the library of controls and the browser's own names of languages say. */
const languageNames = new Intl.DisplayNames([pseudo], { type: 'language' });
const ofLibrary = [
  'Dismiss',
  'Suggestions',
  'options available',
  ...locales.map((tag) => languageNames.of(tag) ?? tag),
];

/** Commands that hand over to the browser or the system, where nothing of the program shows. */
const elsewhere = ['file.open', 'file.print', 'file.save', 'file.saveAs'];

/** What the jobs hold that were looked at. */
const written = new Set<string>();

declare global {
  /** Every text that the page has shown or drawn since it was last asked, with where. */
  var shownTexts: Map<string, string>;
}

test.beforeEach(async ({ board }) => {
  await board.page.addInitScript((language) => {
    localStorage.setItem('gentlebend.language', language);
    globalThis.shownTexts = new Map();
    const note = (text: string | null, where: string) => {
      if (text && /\p{L}/u.test(text)) globalThis.shownTexts.set(text.trim(), where);
    };
    for (const pen of [CanvasRenderingContext2D.prototype, OffscreenCanvasRenderingContext2D.prototype]) {
      const { fillText } = pen;
      pen.fillText = function draw(this: never, text: string, ...at: [number, number]) {
        note(text, 'canvas');
        return Reflect.apply(fillText, this, [text, ...at]);
      };
    }
    const told = [
      'aria-label',
      'aria-description',
      'aria-roledescription',
      'aria-valuetext',
      'title',
      'placeholder',
      'alt',
    ];
    /** Formulas, rows of the catalogue by their ids, and keys are written alike in every language. */
    const alike = 'style, script, code, kbd, var, .explain-formula';
    const look = (node: Node) => {
      const element = node instanceof Element ? node : node.parentElement;
      if (!element || element.closest(alike)) return;
      if (node instanceof Text) note(node.data, element.className || element.tagName);
      if (!(node instanceof Element)) return;
      for (const name of told) note(node.getAttribute(name), `${name} of ${node.className || node.tagName}`);
      for (const child of node.childNodes) look(child);
    };
    new MutationObserver((changes) => {
      for (const { target, addedNodes } of changes) for (const node of [target, ...addedNodes]) look(node);
    }).observe(document, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
      attributeFilter: told,
    });
  }, pseudo);
});

/** What was shown since the last look and is not of the words. */
async function left(board: BoardPage): Promise<string[]> {
  await board.frame();
  const [shown, job] = await board.page.evaluate(() => {
    const texts = [...globalThis.shownTexts];
    globalThis.shownTexts.clear();
    return [texts, globalThis.gentlebend.state().job] as const;
  });
  for (const text of textsIn(job, (key) => ownKeys.has(key))) written.add(text);
  const own = [...written, ...catalogue, ...ofLibrary]
    .filter((text) => text.length > 2)
    .sort((a, b) => b.length - a.length);
  return shown.flatMap(([text, where]) => {
    const rest = leftBehind(text, own);
    return rest === '' ? [] : [`${rest} (in "${text}", ${where})`];
  });
}

test('the page says which language it is in', async ({ board }) => {
  await board.open('?example');
  await expect(board.page.locator('html')).toHaveAttribute('lang', pseudo);
});

test('a text that is not of the words is found', async ({ board }) => {
  await board.open('?example');
  await left(board);
  await board.page.evaluate(() => document.querySelector('header')?.setAttribute('title', 'Left behind'));
  expect(await left(board)).toContainEqual(
    expect.stringContaining('Left behind (in "Left behind", title of'),
  );
});

test('the empty job and every panel of the example speak the chosen language', async ({ board }) => {
  const faults = new Set<string>();
  const look = async () => {
    for (const fault of await left(board)) faults.add(fault);
  };
  await board.open('?new');
  await look();
  await board.open('?example');
  await expect(board.page.locator('[data-proposal]:not([disabled])').first()).toBeVisible();
  await look();
  for (const tab of await board.page.locator('.side-panel [role="tab"]').all()) {
    await tab.click();
    await look();
    await board.page
      .locator('.side-panel [aria-expanded="false"]:not([aria-haspopup])')
      .evaluateAll((all) => {
        for (const one of all) if (one instanceof HTMLElement) one.click();
      });
    await look();
    const lists = board.page.locator('.side-panel button[aria-haspopup="listbox"]');
    for (let i = 0; i < (await lists.count()); i += 1) {
      // A list closes when what is behind it is scrolled.
      await lists.nth(i).scrollIntoViewIfNeeded();
      await board.settled();
      await lists.nth(i).click();
      await expect(board.page.getByRole('listbox')).toBeVisible();
      await board.page.keyboard.press('Escape');
      await expect(board.page.getByRole('listbox')).toHaveCount(0);
    }
    await look();
  }
  expect([...faults]).toEqual([]);
});

test('words a third longer are nowhere cut off on the desk, and nothing lies over anything else', async ({
  board,
}) => {
  await board.open('?example');
  await expect(board.page.locator('[data-proposal]:not([disabled])').first()).toBeVisible();
  for (const tab of await board.page.locator('.side-panel [role="tab"]').all()) {
    await tab.click();
    await board.frame();
    // Where the fastest air is may end in an ellipsis: the place stands in the panels in full.
    const faults = (await board.layoutFaults()).filter((fault) => !fault.startsWith('cut off: span.fastest'));
    expect(faults, (await tab.getAttribute('data-key')) ?? '').toEqual([]);
  }
});

test('whatever is selected, drawn and pointed at speaks the chosen language', async ({ board }) => {
  const faults = new Set<string>();
  const look = async () => {
    for (const fault of await left(board)) faults.add(fault);
  };
  await board.open('?example');
  await board.page.locator('[role="tab"][data-key="selected"]').click();
  await board.page.locator('[data-sheet="floor"]').focus();
  for (let i = 0; i < 8; i += 1) {
    await board.page.keyboard.press(']');
    await look();
  }
  await board.page.keyboard.press('Control+a');
  await look();
  for (const key of 'dhcnpisjbxlwqgk') {
    await board.page.keyboard.press('v');
    await board.page.keyboard.press(key);
    await look();
    const box = await board.page.locator('[data-sheet="floor"]').boundingBox();
    if (!box) throw new Error('the floor is on the screen');
    for (const [x, y] of [
      [0.35, 0.4],
      [0.6, 0.55],
    ] as const) {
      await board.page.mouse.move(box.x + x * box.width, box.y + y * box.height, { steps: 6 });
      await board.frame();
      await board.page.mouse.down();
      await board.page.mouse.up();
      await look();
    }
    for (const typed of ['3', 'Tab', 'x', 'Enter', 'Escape', 'Escape'])
      await board.page.keyboard.press(typed);
    await look();
  }
  expect([...faults]).toEqual([]);
});

/** The commands are shared out, so that they are tried side by side. */
const shares = 3;

for (let share = 0; share < shares; share += 1)
  test(`what commands open speaks the chosen language, ${share + 1} of ${shares}`, async ({ board }) => {
    const { page } = board;
    /** Each with the first command that showed it. */
    const faults = new Map<string, string>();
    const begin = async () => {
      await board.open('?example');
      await page.locator('[data-sheet="floor"]').focus();
    };
    await begin();
    await page.keyboard.press('Control+k');
    const items = page.locator('.command-box [role="menuitem"]');
    await expect(items.first()).toBeVisible();
    const ids = await items.evaluateAll((all) => all.map((item) => item.getAttribute('data-key') ?? ''));
    expect(ids.length).toBeGreaterThan(40);
    await page.keyboard.press('Escape');
    for (const id of ids.filter((one, i) => i % shares === share && !elsewhere.includes(one))) {
      for (let i = 0; i < 3; i += 1) await page.keyboard.press(']');
      await page.keyboard.press('Control+k');
      const item = page.locator(`.command-box [data-key="${id}"]`);
      await expect(item).toBeVisible();
      if ((await item.getAttribute('aria-disabled')) === 'true') {
        await page.keyboard.press('Escape');
        continue;
      }
      await item.click();
      await board.arrived();
      for (const tab of await page
        .locator('[role="dialog"] [role="tab"], .charts-dock [role="radio"]')
        .all()) {
        await tab.click();
        await board.frame();
      }
      for (const fault of await left(board)) if (!faults.has(fault)) faults.set(fault, id);
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
      await board.settled();
      const { job } = await board.seen();
      const open = await page.getByRole('dialog').or(page.getByRole('alertdialog')).count();
      if (open > 0 || job.schemes.every(({ nodes }) => nodes.length === 0)) await begin();
      else await page.locator('[data-sheet="floor"]').focus();
    }
    expect([...faults].map(([fault, id]) => `${id}: ${fault}`)).toEqual([]);
  });
