import { readFileSync } from 'node:fs';
import type { BoardPage } from './support.ts';
import { expect, test } from './support.ts';

const example = readFileSync('fixtures/example.gentlebend.json', 'utf8');

async function saveFile(board: BoardPage): Promise<{ name: string; text: string }> {
  const download = board.page.waitForEvent('download');
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: /^Save(?! as?\b)/ }).click();
  const file = await download;
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), 'utf8') };
}

test('a job that is saved and opened again is the same job', async ({ board }) => {
  await board.open('?example');
  await board.page.getByRole('textbox', { name: 'Job title' }).fill('Round trip');
  await board.page.keyboard.press('Enter');
  const { job } = await board.seen();
  expect(job.title).toBe('Round trip');
  const saved = await saveFile(board);
  expect(saved.name).toMatch(/\.gentlebend\.json$/);

  await board.open('?new');
  expect((await board.seen()).job).not.toEqual(job);
  await board.openFile(saved.text);
  await expect.poll(async () => (await board.seen()).job).toEqual(job);
});

test('saving from within a field takes what is typed there along', async ({ board }) => {
  await board.open('?example');
  const title = board.page.getByRole('textbox', { name: 'Job title' });
  await title.fill('Typed, and not left');
  const download = board.page.waitForEvent('download');
  await board.page.keyboard.press('Control+s');
  const saved = JSON.parse(readFileSync(await (await download).path(), 'utf8'));
  expect(saved.title).toBe('Typed, and not left');
  await expect(title).toBeFocused();
});

test('Escape drops what is typed into a field of a dialog, and then closes the dialog', async ({ board }) => {
  await board.open('?example');
  await board.ask('Parts and prices');
  const dialog = board.page.getByRole('dialog', { name: 'Parts and prices' });
  const field = dialog.getByRole('textbox').first();
  const before = await field.inputValue();
  await field.fill('12345');
  await board.page.keyboard.press('Escape');
  await expect(field).toHaveValue(before);
  await board.page.keyboard.press('Escape');
  await expect(dialog).toHaveCount(0);
});

test('a broken file is refused with a sentence that names the place, and the board is as it was', async ({
  board,
}) => {
  await board.open('?example');
  const before = await board.seen();
  await board.openFile(example.replace(/"cap": "[^"]+"/, '"cap": "unheard-of"'));
  const dialog = board.page.getByRole('alertdialog');
  await expect(dialog).toContainText(/schemes\[0\]\.nodes\[\d+\]\.cap/);
  await expect(dialog).toContainText('no cap "unheard-of"');
  await dialog.getByRole('button', { name: 'Close' }).click();
  expect((await board.seen()).job).toEqual(before.job);
});

test('a file that is not JSON is refused with its line and column', async ({ board }) => {
  await board.open('?example');
  await board.openFile(`${example.slice(0, 40)}\n}`);
  await expect(board.page.getByRole('alertdialog')).toContainText(/line \d+, column \d+/);
});

test('a file that can be repaired is opened, with a list of what was done', async ({ board }) => {
  await board.open('?new');
  const broken = example.replace('"title"', '"colour": "red",\n  "title"');
  await board.openFile(broken);
  await expect(board.page.getByRole('alertdialog')).toContainText(/colour.*not part of the format/);
  expect((await board.seen()).job.schemes).toHaveLength(2);
});
