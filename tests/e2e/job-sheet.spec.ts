import { readFileSync } from 'node:fs';
import type { Download, Page, Route } from 'playwright/test';
import { readPdf } from '../support/pdf.ts';
import { type BoardPage, expect, test } from './support.ts';

const CFM = 0.0283168466 / 60;

async function openDialog(board: BoardPage): Promise<void> {
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: 'Job sheet (PDF)…' }).click();
  await expect(board.page.getByRole('dialog', { name: 'Job sheet (PDF)' })).toBeVisible();
}

async function save(board: BoardPage): Promise<Download> {
  const download = board.page.waitForEvent('download');
  await board.page.getByRole('button', { name: 'Save the PDF' }).click();
  return await download;
}

const pagesOf = async (file: Download) => (await readPdf(readFileSync(await file.path()))).pages;

test('the job sheet is made in the browser and says what the board solved', async ({ board }) => {
  await board.open('?example');
  const { flow, job } = await board.seen();
  await openDialog(board);
  const file = await save(board);
  expect(file.suggestedFilename()).toBe('invented-example-kitchen-job-sheet.pdf');
  const pages = await pagesOf(file);
  const texts = pages.flatMap((page) => page.texts.map(({ text }) => text));
  expect(texts).toContain(job.title);
  expect(texts).toContain(String(Math.round((flow ?? 0) / CFM)));
  expect(texts).toContain(`1 of ${pages.length}`);
  await expect(board.page.getByRole('dialog')).toBeHidden();
});

test('paper, day, schemes and parts of the job sheet are chosen by keys alone', async ({ board }) => {
  await board.open('?example');
  await board.ask('Job sheet (PDF)');
  const dialog = board.page.getByRole('dialog', { name: 'Job sheet (PDF)' });
  await expect(dialog.getByRole('button', { name: 'Save the PDF' })).toBeFocused();
  await dialog.getByRole('radio', { name: 'Letter' }).focus();
  await board.page.keyboard.press('ArrowLeft');
  await expect(dialog.getByRole('radio', { name: 'A4' })).toBeChecked();
  await dialog.getByLabel('Date on the sheet').fill('2026-03-02');
  await dialog.getByRole('checkbox', { name: 'Up through the roof' }).focus();
  await board.page.keyboard.press('Space');
  for (const part of ['Charts', 'Calculation appendix']) {
    await dialog.getByRole('checkbox', { name: part }).focus();
    await board.page.keyboard.press('Space');
  }
  await expect(dialog.getByRole('checkbox', { name: 'Cautions' })).toBeDisabled();
  const pages = await pagesOf(await save(board));
  const texts = pages.flatMap((page) => page.texts.map(({ text }) => text));
  expect(Math.min(pages[0]?.width ?? 0, pages[0]?.height ?? 0)).toBeCloseTo(210, 1);
  expect(texts.filter((text) => text.includes('Out the north wall')).length).toBeGreaterThan(0);
  expect(texts.filter((text) => text.includes('Up through the roof')).length).toBeGreaterThan(0);
  expect(texts.some((text) => text.includes('2026') && text.includes('2'))).toBe(true);
  expect(texts.some((text) => text.startsWith('Appendix'))).toBe(false);
});

test('the box of the job sheet fits a small window', async ({ board }) => {
  await board.page.setViewportSize({ width: 1024, height: 768 });
  await board.open('?example');
  await openDialog(board);
  const title = 'Job title';
  expect((await board.layoutFaults()).filter((fault) => !fault.includes(title))).toEqual([]);
});

test('the box of the job sheet names the letters that it cannot print', async ({ board }) => {
  await board.open('?example');
  const title = board.page.getByRole('textbox', { name: 'Job title' });
  await title.fill('厨房 Kitchen');
  await title.press('Enter');
  await openDialog(board);
  await expect(board.page.getByText('will be printed as □: 厨 房')).toBeVisible();
});

test('without a scheme the job sheet cannot be made, and says why', async ({ board }) => {
  await board.open('?example');
  await openDialog(board);
  await board.page.getByRole('checkbox', { name: 'Out the north wall' }).click({ force: true });
  await expect(board.page.getByText('Choose at least one scheme.')).toBeVisible();
  await expect(board.page.getByRole('button', { name: 'Save the PDF' })).toBeDisabled();
});

/** A page that lends no system dialogs, and where the sheet's letters come as a test wants them to. */
async function openWith(page: Page, baseURL: string | undefined, letters: (route: Route) => Promise<void>) {
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
  });
  await page.route('**/*.ttf', letters);
  await page.goto(`${baseURL}?example`);
  await page.getByRole('button', { name: 'File' }).click();
  await page.getByRole('menuitem', { name: 'Job sheet (PDF)…' }).click();
  await page.getByRole('button', { name: 'Save the PDF' }).click();
}

test('where its letters cannot be loaded the job sheet says what to do', async ({ page, baseURL }) => {
  await openWith(page, baseURL, (route) => route.fulfill({ status: 404, body: '' }));
  const notice = page.getByRole('alertdialog', { name: 'The job sheet was not made' });
  await expect(notice).toContainText('Try again');
  await expect(notice).toContainText('404');
});

test('a job sheet that is called off leaves no file and no complaint', async ({ page, baseURL }) => {
  let files = 0;
  page.on('download', () => {
    files += 1;
  });
  await openWith(page, baseURL, async () => {});
  const dialog = page.getByRole('dialog', { name: 'Job sheet (PDF)' });
  await dialog.getByRole('button', { name: 'Cancel' }).click();
  await expect(dialog.getByRole('button', { name: 'Save the PDF' })).toBeEnabled();
  await expect(page.getByRole('alertdialog')).toBeHidden();
  expect(files).toBe(0);
});
