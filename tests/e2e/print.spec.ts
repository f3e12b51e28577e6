import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { jobSheetOf } from '../../src/files/job-sheet/content.ts';
import type { JobSheet, SheetTable } from '../../src/files/job-sheet/types.ts';
import { writeJob } from '../../src/files/write.ts';
import { type Job, job as jobSchema } from '../../src/graph/document.ts';
import { plainChoice, styleOf } from '../../src/units/index.ts';
import { type PrintedPage, readPrinted } from '../support/printed.ts';
import { runThrough, withScheme } from '../support/route-job.ts';
import { type BoardPage, expect, test } from './support.ts';

const view = (page: Page) => page.getByRole('dialog', { name: 'Print job sheet' });

const CFM = 0.0283168466 / 60;

/** As the browser of the tests writes figures. */
const style = styleOf({ ...plainChoice, locale: 'en-US' });

/** Counts the times that the page asked for the printer, which stays away. */
async function watchPrinter(page: Page): Promise<() => Promise<number>> {
  await page.addInitScript(() => {
    const asked = { times: 0 };
    Object.assign(globalThis, { asked });
    globalThis.print = () => {
      asked.times += 1;
    };
  });
  return async () => page.evaluate(() => (globalThis as unknown as { asked: { times: number } }).asked.times);
}

async function openFile(board: BoardPage, job: Job): Promise<void> {
  await board.openFile(writeJob(job));
  await expect(board.page.getByRole('textbox', { name: 'Job title' })).toHaveValue(job.title);
}

async function openSheet(board: BoardPage): Promise<void> {
  await board.page.keyboard.press('Control+p');
  await expect(view(board.page).locator('.paper-formula').last()).toBeAttached();
  await board.page.evaluate(() => document.fonts.ready);
}

const printed = async (board: BoardPage, format: 'A4' | 'Letter'): Promise<PrintedPage[]> =>
  readPrinted(await board.page.pdf({ format, preferCSSPageSize: false }));

function exampleJob(): Job {
  return jobSchema.parse(JSON.parse(readFileSync('fixtures/example.gentlebend.json', 'utf8')));
}

function tableOf(sheet: JobSheet, id: string): SheetTable {
  const found = sheet.sections
    .flatMap(({ blocks }) => blocks)
    .find((block) => block.kind === 'table' && block.id === id);
  if (found?.kind !== 'table') throw new Error(`no table "${id}"`);
  return found;
}

/** What a row of a table reads like on paper. */
const rowText = (cells: SheetTable['rows'][number]['cells']) =>
  cells
    .map(({ text }) => text)
    .filter((text) => text !== '')
    .join(' ');

const bare = (text: string) => text.replace(/\s+/g, '');

test('Ctrl+P opens the sheet and asks for the printer once; Escape leads back to the desk', async ({
  board,
}) => {
  const asked = await watchPrinter(board.page);
  await board.open('?example');
  await openSheet(board);
  await expect.poll(asked).toBe(1);
  await view(board.page).getByRole('button', { name: 'Print', exact: true }).click();
  await expect.poll(asked).toBe(2);
  await board.page.keyboard.press('Escape');
  await expect(view(board.page)).toBeHidden();
  await expect(board.page.locator('[data-sheet] canvas').first()).toBeVisible();
});

test('what is printed on A4 and on Letter are the solver’s numbers, and nothing of the desk', async ({
  board,
}) => {
  await watchPrinter(board.page);
  await board.open('?example');
  await openSheet(board);
  const sheet = await jobSheetOf(exampleJob(), 'wall', { date: new Date(), style });
  for (const [format, size] of [
    ['A4', [210, 297]],
    ['Letter', [216, 279]],
  ] as const) {
    const pages = await printed(board, format);
    const whole = bare(pages.map(({ text }) => text).join(' '));
    for (const id of ['speeds', 'house', 'route', 'budget'])
      for (const { cells, id: row } of tableOf(sheet, id).rows)
        expect(whole, `${format}, ${id}, ${row}`).toContain(bare(rowText(cells)));
    expect(whole, format).toContain(sheet.title.fingerprint.full);
    for (const chrome of ['Back to the desk', 'Proposals', 'Scheme actions', 'leave “fit to page” off'])
      expect(whole, format).not.toContain(bare(chrome));
    const [first] = pages;
    expect([first?.width, first?.height].map((mm) => Math.round(mm ?? 0))).toEqual(size);
  }
});

test('every page says which job it is of, by its fingerprint, and how many pages there are', async ({
  board,
}) => {
  await watchPrinter(board.page);
  await board.open('?example');
  await openSheet(board);
  const pages = await printed(board, 'A4');
  const sheet = await jobSheetOf(exampleJob(), 'wall', { date: new Date(), style });
  pages.forEach(({ text }, i) => {
    expect(bare(text)).toContain(bare(sheet.title.footer));
    expect(bare(text)).toContain(`${i + 1}/${pages.length}`);
  });
});

/** A leg of 3 m to the east, measured by a dimension on the floor sheet, with more duct after it. */
function measuredJob(): Job {
  const job = runThrough([
    [0, 0, 1.8],
    [0, 0, 2.4],
    [3, 0, 2.4],
    [3, 1, 2.4],
    [5.5, 1, 2.4],
  ]);
  const withDimension = withScheme(job, (scheme) => ({
    ...scheme,
    dimensions: [
      { id: 'm1', sheet: 'floor', along: 'u', from: { node: 'n1' }, to: { node: 'n2' }, offset: -0.5 },
    ],
  }));
  return { ...withDimension, title: 'Measured kitchen', units: 'metric' };
}

test('a leg of 3 m at 1:50 is 60 mm on paper', async ({ board }) => {
  await watchPrinter(board.page);
  await board.open('?new');
  await openFile(board, measuredJob());
  await openSheet(board);
  const floor = view(board.page).locator('[data-drawing="floor"]');
  await expect(floor.getByText('1 : 50', { exact: false }).first()).toBeVisible();
  const pages = await printed(board, 'A4');
  const page = pages.find(({ text }) => bare(text).includes('Floor,lookingdown'));
  expect(page).toBeDefined();
  const level = (page?.lines ?? []).filter(({ from, to }) => Math.abs(from[1] - to[1]) < 0.05);
  const lengths = level.map(({ from, to }) => Math.abs(to[0] - from[0]));
  const nearest = lengths.reduce((best, mm) => (Math.abs(mm - 60) < Math.abs(best - 60) ? mm : best), 0);
  expect(nearest).toBeCloseTo(60, 1);
});

test('the head of a table stands again on the page that it goes on to', async ({ board }) => {
  await watchPrinter(board.page);
  await board.open('?new');
  const points = Array.from({ length: 40 }, (_, i): [number, number, number] => [
    Math.ceil(i / 2) * 1.2,
    Math.floor(i / 2) * 1.2,
    2.2,
  ]);
  await openFile(board, { ...runThrough(points), title: 'Long run' });
  await openSheet(board);
  const pages = await printed(board, 'A4');
  const from = pages.findIndex(({ text }) => bare(text).includes('Routeschedule'));
  expect(from).toBeGreaterThan(0);
  const texts = pages.slice(from).map(({ text }) => bare(text));
  const last = texts.findIndex((text) => text.includes('Wholepathoftheair'));
  expect(last).toBeGreaterThan(0);
  for (const text of texts.slice(0, last + 1)) expect(text).toContain('Truelength');
  expect(texts[last]).toMatch(/Legtothecap.*Wholepathoftheair/);
});

test('in the comparison Ctrl+P prints the comparison', async ({ board }) => {
  const asked = await watchPrinter(board.page);
  await board.open('?example');
  await board.page.getByRole('button', { name: 'Compare schemes' }).click();
  await expect(board.page.getByRole('dialog', { name: 'Compare schemes' })).toBeVisible();
  await board.page.keyboard.press('Control+p');
  await expect.poll(asked).toBe(1);
  await expect(view(board.page)).toBeHidden();
});

/** Prints as the browser's own menu does, again until the sheet's code is there. */
async function fromMenu(board: BoardPage, format: 'A4' | 'Letter'): Promise<PrintedPage[]> {
  let pages: PrintedPage[] = [];
  await expect(async () => {
    pages = await printed(board, format);
    expect(pages[0]?.text).not.toContain('This is not the job sheet');
  }).toPass({ timeout: 120_000 });
  return pages;
}

test('the browser’s own print gives the same pages as the command, and leaves the desk as it was', async ({
  board,
}) => {
  await watchPrinter(board.page);
  // Two whole sheets are printed.
  test.slow();
  await board.open('?example');
  const body = () => board.page.evaluate(() => document.body.childElementCount);
  const before = await body();
  const pages = await fromMenu(board, 'A4');
  expect(await body()).toBe(before);
  await expect(board.page.locator('.paper')).toHaveCount(0);
  await expect(board.page.locator('[data-sheet] canvas').first()).toBeVisible();
  const { flow } = await board.seen();
  const whole = pages.map(({ text }) => text).join(' ');
  expect(whole).toContain(` ${Math.round((flow ?? 0) / CFM)} `);
  await openSheet(board);
  expect(pages.map(({ text }) => text)).toEqual((await printed(board, 'A4')).map(({ text }) => text));
});

test('the browser’s own print gives the job sheet though a box is open over the desk', async ({ board }) => {
  test.slow();
  await board.open('?example');
  await board.page.keyboard.press('Control+,');
  await expect(board.page.getByRole('dialog')).toBeVisible();
  const [first] = await fromMenu(board, 'Letter');
  expect(bare(first?.text ?? '')).toMatch(/Jobsheet.*Beforeanythingisbuilt/);
  await expect(board.page.getByRole('dialog')).toBeVisible();
});

test('the browser’s own print gives the comparison where that is open', async ({ board }) => {
  await board.open('?example');
  await board.page.getByRole('button', { name: 'Compare schemes' }).click();
  await expect(board.page.getByRole('dialog', { name: 'Compare schemes' })).toBeVisible();
  const pages = await printed(board, 'A4');
  expect(pages).toHaveLength(1);
  expect(bare(pages[0]?.text ?? '')).toContain('Outthenorthwallrecommended');
});

test('where the sheet’s code cannot be had, the browser’s own print says what to do', async ({ board }) => {
  await board.page.route('**/paper-now*.js', (route) =>
    route.fulfill({ status: 200, body: 'throw 0', contentType: 'text/javascript' }),
  );
  await board.open('?example');
  const pages = await printed(board, 'A4');
  expect(pages).toHaveLength(1);
  expect(pages[0]?.text).toContain('This is not the job sheet');
  expect(bare(pages[0]?.text ?? '')).toContain('pressCtrl+P');
  expect(pages[0]?.text).not.toContain('Proposals');
});

test('where the route is too long for it, the browser’s own print says what to do', async ({ board }) => {
  await board.open('?new');
  const points = Array.from({ length: 620 }, (_, i): [number, number, number] => [i * 0.5, 0, 2.2]);
  await openFile(board, { ...runThrough(points), title: 'Very long run' });
  await expect(async () => {
    const pages = await printed(board, 'A4');
    expect(pages).toHaveLength(1);
    expect(pages[0]?.text).toContain('too long');
  }).toPass({ timeout: 120_000 });
});

test('the desk is printed where that is asked for', async ({ board }) => {
  await watchPrinter(board.page);
  test.slow();
  await board.open('?example');
  await board.ask('print the desk', 'Print what the desk shows');
  const [first] = await printed(board, 'A4');
  expect(first?.text).not.toContain('Job sheet');
  expect(first?.text).not.toContain('This is not the job sheet');
  const again = await fromMenu(board, 'A4');
  expect(again[0]?.text).toContain('Job sheet');
});

test('the sheet before print has no fault in either theme at either size', async ({ board }) => {
  await watchPrinter(board.page);
  await board.open('?example');
  await openSheet(board);
  expect(await board.faultsInEveryLook()).toEqual([]);
});
