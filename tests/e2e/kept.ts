import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { type BoardPage, expect } from './support.ts';

const example = readFileSync('fixtures/example.gentlebend.json', 'utf8');

export const titled = (title: string) => example.replace(/"title": "[^"]*"/, `"title": "${title}"`);

/** By the command box. */
export async function ask(board: BoardPage, name: string): Promise<void> {
  await board.page.keyboard.press('Control+k');
  await expect(board.page.getByRole('menuitem').first()).toBeVisible();
  await board.page.keyboard.type(name);
  const first = board.page.getByRole('menuitem').first();
  await expect(first).toContainText(name);
  await expect(first).toHaveAttribute('data-focused', 'true');
  await board.page.keyboard.press('Enter');
}

export async function rename(board: BoardPage, title: string): Promise<void> {
  await board.page.getByRole('textbox', { name: 'Job title' }).fill(title);
  await board.page.keyboard.press('Enter');
  await expect.poll(async () => (await board.seen()).job.title).toBe(title);
}

/** Opens the example as a job of its own, under a title. */
export async function addJob(board: BoardPage, title: string): Promise<void> {
  await ask(board, 'Open the example');
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
