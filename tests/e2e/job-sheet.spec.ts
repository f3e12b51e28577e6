import { readFileSync } from 'node:fs';
import type { Download } from 'playwright/test';
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
  await board.page.keyboard.press('Control+k');
  await board.page.keyboard.type('job sheet');
  await board.page.keyboard.press('Enter');
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

test('without a scheme the job sheet cannot be made, and says why', async ({ board }) => {
  await board.open('?example');
  await openDialog(board);
  await board.page.getByRole('checkbox', { name: 'Out the north wall' }).click({ force: true });
  await expect(board.page.getByText('Choose at least one scheme.')).toBeVisible();
  await expect(board.page.getByRole('button', { name: 'Save the PDF' })).toBeDisabled();
});

test.describe('where the letters cannot be loaded', () => {
  test('the job sheet says what to do', async ({ page, baseURL }) => {
    await page.addInitScript(() => {
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
      Reflect.deleteProperty(navigator, 'serviceWorker');
    });
    await page.route('**/*.ttf', (route) => route.fulfill({ status: 404, body: '' }));
    await page.goto(`${baseURL}?example`);
    await page.getByRole('button', { name: 'File' }).click();
    await page.getByRole('menuitem', { name: 'Job sheet (PDF)…' }).click();
    await page.getByRole('button', { name: 'Save the PDF' }).click();
    const notice = page.getByRole('alertdialog', { name: 'The job sheet was not made' });
    await expect(notice).toContainText('Try again');
    await expect(notice).toContainText('404');
  });
});
