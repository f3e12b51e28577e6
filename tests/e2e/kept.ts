import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { type BoardPage, expect } from './support.ts';

const example = readFileSync('fixtures/example.gentlebend.json', 'utf8');

export const titled = (title: string) => example.replace(/"title": "[^"]*"/, `"title": "${title}"`);

export async function rename(board: BoardPage, title: string): Promise<void> {
  await board.page.getByRole('textbox', { name: 'Job title' }).fill(title);
  await board.page.keyboard.press('Enter');
  await expect.poll(async () => (await board.seen()).job.title).toBe(title);
}

/** Opens the example as a job of its own, under a title. */
export async function addJob(board: BoardPage, title: string): Promise<void> {
  await board.ask('Open the example');
  await rename(board, title);
}

/** What lies in the database of this browser, by the job's title. */
export const keptTexts = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const asked = indexedDB.open('gentlebend.jobs');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const all = asked.result.transaction('jobTexts').objectStore('jobTexts').getAll();
          all.onsuccess = () => {
            const texts = all.result as { text: string }[];
            asked.result.close();
            resolve(Object.fromEntries(texts.map(({ text }) => [JSON.parse(text).title, text])));
          };
        };
      }),
  );

/** Moves the first turn a little, by keys; what the job is then. */
export const nudge = async (board: BoardPage) => {
  await board.page.locator('[data-sheet="floor"]').focus();
  await board.page.keyboard.press(']');
  await board.page.keyboard.press(']');
  await board.page.keyboard.press(']');
  await board.page.keyboard.press('ArrowRight');
  return (await board.seen()).job;
};

/** Holds files over a place of the page, and lets them fall there. */
export async function drop(
  board: BoardPage,
  where: string,
  files: readonly { name: string; text: string }[],
) {
  const data = await board.page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const { name, text } of list)
      transfer.items.add(new File([text], name, { type: name.endsWith('.json') ? 'application/json' : '' }));
    return transfer;
  }, files);
  await board.page.locator(where).first().dispatchEvent('dragover', { dataTransfer: data });
  const hint = await board.page.locator('.drop-hint').textContent();
  await board.page.locator(where).first().dispatchEvent('drop', { dataTransfer: data });
  await expect(board.page.locator('.drop-hint')).toBeHidden();
  return hint;
}
