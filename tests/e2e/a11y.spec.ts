import { type BoardPage, expect, test } from './support.ts';

/** What a person may have before them: how they come there from the example, and how one sees that they did. */
interface Place {
  readonly name: string;
  readonly go: (board: BoardPage) => Promise<unknown>;
  readonly shows: string;
}

const press = async (board: BoardPage, ...keys: string[]) => {
  for (const key of keys) await board.page.keyboard.press(key);
};

const times = (count: number, key: string) => Array<string>(count).fill(key);

const focusSheet = (board: BoardPage) => board.page.locator('[data-sheet="floor"]').focus();

const openTable = async (board: BoardPage) => {
  await press(board, 't');
  await expect(board.page.locator('.route-table [data-at]')).toBeFocused();
};

const tabs: readonly Place[] = ['Proposals', 'Pressure', 'Selected', 'Findings', 'Kitchen'].map((name) => ({
  name,
  go: (board) => board.page.getByRole('tab', { name }).click(),
  shows: `[role="tab"][aria-selected="true"]:text("${name}")`,
}));

/** Selects what is so many steps on along the duct. */
const selected = (name: string, steps: number): Place => ({
  name,
  go: async (board) => {
    await board.page.getByRole('tab', { name: 'Selected' }).click();
    await focusSheet(board);
    await press(board, ...times(steps, ']'));
  },
  shows: `.tab-panel h2:text-matches("^${name}", "i")`,
});

const selections: readonly Place[] = [
  selected('Hood', 1),
  selected('Duct', 1),
  selected('Turn', 1),
  selected('Cap', 4),
  {
    name: 'everything',
    go: async (board) => {
      await focusSheet(board);
      await press(board, 'Control+a');
    },
    shows: '.actions button:text("Duplicate")',
  },
];

const button = (name: string | RegExp, shows: string): Place => ({
  name: String(name),
  go: (board) => board.page.getByRole('button', { name }).first().click(),
  shows,
});

/** From here on the browser keeps nothing more. */
const fillTheDisk = (board: BoardPage) =>
  board.page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('There is no room.', 'QuotaExceededError');
    };
  });

const openings: readonly Place[] = [
  button('File', '[role="menu"][aria-label="File"]'),
  button('Scheme actions', '[role="menu"][aria-label="Scheme actions"]'),
  button('Cautions', '[role="dialog"][aria-label="Cautions"]'),
  {
    name: 'the command box',
    go: (board) => press(board, 'Control+k'),
    shows: '.command-box [role="menuitem"]',
  },
  {
    name: 'the command box without a command',
    go: (board) => board.find('zzzzzz'),
    shows: '.command-box .empty',
  },
  { name: 'the shortcuts', go: (board) => press(board, '?'), shows: '.shortcut-list kbd' },
  {
    name: 'the list of edits',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', 'ArrowRight', 'ArrowRight', 'Control+z');
      await board.page.getByRole('button', { name: 'List of edits' }).click();
    },
    shows: '.steps [role="option"]',
  },
  {
    name: 'the menu of a duct',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', ']', 'Shift+F10');
    },
    shows: '[role="menuitem"]:has-text("Put a turn")',
  },
  {
    name: 'the menu of the sheet',
    go: async (board) => {
      await focusSheet(board);
      await press(board, 'Shift+F10');
    },
    shows: '[role="menuitem"]:has-text("Fit the drawing")',
  },
  { name: 'the route table', go: openTable, shows: '.route-table tbody tr' },
  {
    name: 'a cell of the route table with a wrong text',
    go: async (board) => {
      await openTable(board);
      await press(board, 'ArrowDown', 'ArrowRight', 'ArrowRight', 'x', 'Enter');
    },
    shows: '.cell-error',
  },
  {
    name: 'a list in a cell of the route table',
    go: async (board) => {
      await openTable(board);
      await press(board, 'ArrowDown', ...times(7, 'ArrowRight'), 'Enter');
    },
    shows: '.route-table td select',
  },
  {
    name: 'where a figure comes from',
    go: (board) => board.page.locator('[data-explain]').first().click(),
    shows: '[role="dialog"].explain-dialog',
  },
  {
    name: 'a question before work is lost',
    go: async (board) => {
      await fillTheDisk(board);
      await focusSheet(board);
      await press(board, ']', 'ArrowRight');
      await board.ask('New job');
    },
    shows: '[role="alertdialog"]',
  },
  {
    name: 'the line about a full disk',
    go: async (board) => {
      await fillTheDisk(board);
      await focusSheet(board);
      await press(board, ']', 'ArrowRight');
    },
    shows: '.job-bar[data-kind="danger"]',
  },
];

/** By the command box, as somebody would who knows what the thing is called. */
const command = (name: string, shows: string): Place => ({ name, go: (board) => board.ask(name), shows });

/** The jobs, templates and versions that the browser keeps. */
const kept: readonly Place[] = [
  {
    name: 'the jobs',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', 'ArrowRight');
      await board.ask('Jobs…');
      await expect(board.page.locator('.job-card')).toHaveCount(1);
    },
    shows: '[role="dialog"][aria-label="Jobs"] .jobs-none',
  },
  {
    name: 'a job that was deleted',
    go: async (board) => {
      await focusSheet(board);
      await press(board, ']', 'ArrowRight');
      await board.ask('Jobs…');
      await board.page.getByRole('button', { name: /^More for/ }).click();
      await board.page.getByRole('menuitem', { name: 'Delete' }).click();
      await expect(board.page.getByRole('button', { name: 'Undo' })).toBeFocused();
      await board.page.getByRole('tab', { name: 'Deleted' }).click();
    },
    shows: '[role="dialog"][aria-label="Jobs"] .job-card',
  },
  command('New from template…', '[role="dialog"] .sketch-walls'),
  command('Save as template…', '[role="dialog"] input'),
  {
    name: 'the versions of a job',
    go: async (board) => {
      await board.ask('Versions…');
      await board.page.getByLabel('Name for how it is now').fill('as quoted');
      await press(board, 'Enter');
    },
    shows: '[role="dialog"] .versions .version',
  },
];

/** What weighs and compares; each is opened by its name. */
const advice: readonly Place[] = [
  {
    name: 'Compare schemes',
    go: async (board) => {
      await board.ask('Compare schemes');
      await expect(board.page.getByText('would win with')).toBeVisible();
    },
    shows: '[role="dialog"][aria-label="Compare schemes"] table',
  },
  command('Parts and prices', '[role="dialog"] tfoot'),
  command('Parts list and cutting plan', '.parts-dock .stock-length'),
  command('Save a drawing', '[role="dialog"] .drawing-preview canvas'),
  command('Print job sheet', '.paper .paper-formula table'),
  command('Job sheet (PDF)', '[role="dialog"] .sheet-choices [type="date"]'),
  command('Rules and limits', '[role="dialog"] .rule-list input'),
  command('Settings', '[role="dialog"].settings [role="radiogroup"]'),
  command('Help', '[role="dialog"] .help-page h2'),
  command('Words of the trade', '[role="dialog"] .glossary dt'),
  command('Copy share link', '[role="dialog"] input[readonly]'),
  command('Open a share link', '[role="dialog"] input[placeholder^="…"]'),
  command('Guided start', '.guide-card h2'),
  {
    name: 'the ways of writing numbers',
    go: async (board) => {
      await board.ask('Settings');
      await board.page.getByRole('button', { name: /Numbers and dates/ }).click();
    },
    shows: '[role="option"]:has-text("German (Germany)")',
  },
  command('Check codes and practice', '.finding.code'),
  command('Find a fault', '.fault-panel .field-grid'),
  {
    name: 'a fault that was looked for',
    go: async (board) => {
      await board.ask('Find a fault');
      const panel = board.page.getByRole('complementary', { name: 'Find a fault' });
      await panel.getByLabel('Air at the hood', { exact: true }).fill('390 cfm');
      await press(board, 'Enter');
      await panel.getByRole('button', { name: 'Find the cause' }).click();
      await expect(panel.getByRole('list', { name: 'Causes by rank' })).toBeVisible();
    },
    shows: '.suspects .suspect',
  },
  command('Find a route', '.route-search button'),
  {
    name: 'routes that were found',
    go: async (board) => {
      await board.ask('Find a route');
      await board.page.getByRole('button', { name: 'Search', exact: true }).click();
      await expect(board.page.getByRole('list', { name: 'Routes found' })).toBeVisible();
    },
    shows: '[aria-label="Routes found"] li',
  },
  command('Charts', '.charts-dock svg'),
  {
    name: 'the tables behind the charts',
    go: async (board) => {
      await board.ask('Charts');
      await board.page.getByRole('radio', { name: 'Tables' }).click();
    },
    shows: '.charts-dock table',
  },
  ...['One turn', 'All kinds', 'Two 45s', 'A run of bends', 'Lessons'].map(
    (name): Place => ({
      name: `the bend lab: ${name}`,
      go: async (board) => {
        await board.ask('Bend lab');
        await board.page.getByRole('tab', { name }).click();
      },
      shows: `[role="dialog"] [role="tab"][aria-selected="true"]:text("${name}")`,
    }),
  ),
];

/** Goes to place after place without loading the page again. */
const walks: readonly { readonly name: string; readonly places: readonly Place[] }[] = [
  { name: 'every panel', places: tabs },
  { name: 'whatever can be selected on a route', places: selections },
  ...[...openings, ...kept, ...advice].map((place) => ({ name: place.name, places: [place] })),
];

/** Choices of views on the desk. */
const views = 3;

/** What axe finds in the light and then in the dark, with the theme that it is found in. */
async function faultsInBothThemes(board: BoardPage): Promise<string[]> {
  const faults: string[] = [];
  for (const theme of ['light', 'dark'] as const) {
    await board.theme(theme);
    faults.push(...(await board.accessibilityFaults()).map((fault) => `in ${theme}: ${fault}`));
  }
  return faults;
}

test.describe('in both themes', () => {
  test.use({ reducedMotion: 'reduce' });

  for (const { name, places } of walks)
    test(`${name} has no fault that axe finds`, async ({ board }) => {
      await board.open('?example');
      for (const place of places) {
        await place.go(board);
        await expect(board.page.locator(place.shows).first(), place.name).toBeVisible();
        expect(await faultsInBothThemes(board), place.name).toEqual([]);
      }
    });

  test('every choice of views has no fault that axe finds', async ({ board }) => {
    await board.open('?example');
    const group = board.page.getByRole('radiogroup', { name: 'Views' });
    await expect(group.getByRole('radio')).toHaveCount(views);
    for (let i = 0; i < views; i += 1) {
      await group.getByRole('radio').nth(i).click();
      expect(await faultsInBothThemes(board)).toEqual([]);
    }
  });

  test('the empty job with the route table has no fault that axe finds', async ({ board }) => {
    await board.open('?new');
    await press(board, 't');
    await expect(board.page.getByRole('form', { name: 'Place the hood' })).toBeVisible();
    expect(await faultsInBothThemes(board)).toEqual([]);
  });

  test('the charts of the empty job have no fault that axe finds', async ({ board }) => {
    await board.open('?new');
    await board.ask('Charts');
    await expect(board.page.getByRole('region', { name: 'Charts' })).toContainText('They need a run');
    expect(await faultsInBothThemes(board)).toEqual([]);
  });
});
