import { readFileSync } from 'node:fs';
import type { Page } from 'playwright/test';
import { BoardPage, expect, test } from './support.ts';

const example = readFileSync('fixtures/example.gentlebend.json', 'utf8');

const titled = (title: string) => example.replace(/"title": "[^"]*"/, `"title": "${title}"`);

/** By the command box. */
async function ask(board: BoardPage, name: string): Promise<void> {
  await board.page.keyboard.press('Control+k');
  await expect(board.page.getByRole('menuitem').first()).toBeVisible();
  await board.page.keyboard.type(name);
  const first = board.page.getByRole('menuitem').first();
  await expect(first).toContainText(name);
  await expect(first).toHaveAttribute('data-focused', 'true');
  await board.page.keyboard.press('Enter');
}

async function rename(board: BoardPage, title: string): Promise<void> {
  await board.page.getByRole('textbox', { name: 'Job title' }).fill(title);
  await board.page.keyboard.press('Enter');
  await expect.poll(async () => (await board.seen()).job.title).toBe(title);
}

/** Opens the example as a job of its own, under a title. */
async function addJob(board: BoardPage, title: string): Promise<void> {
  await ask(board, 'Open the example');
  await rename(board, title);
}

/** What lies in the database of this browser, by the job's title. */
const keptTexts = (page: Page): Promise<Record<string, string>> =>
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

const beside = async (board: BoardPage): Promise<BoardPage> =>
  new BoardPage(await board.page.context().newPage());

const nudge = async (board: BoardPage) => {
  await board.page.locator('[data-sheet="floor"]').focus();
  await board.page.keyboard.press(']');
  await board.page.keyboard.press(']');
  await board.page.keyboard.press(']');
  await board.page.keyboard.press('ArrowRight');
  return (await board.seen()).job;
};

for (const end of ['closed', 'crashed'] as const)
  test(`a page that is ${end} in the middle of a gesture loses nothing that was done before it`, async ({
    board,
  }) => {
    await board.open('?example');
    await rename(board, 'Before the end');
    const done = await nudge(board);
    const turn = done.schemes[0]?.nodes.find(({ role }) => role === 'turn')?.at ?? [0, 0, 0];
    await board.pointAt('floor', turn);
    await board.page.mouse.down();
    await board.pointAt('floor', [turn[0] + 0.4, turn[1] + 0.4, turn[2]]);
    expect((await board.page.evaluate(() => globalThis.gentlebend.state())).live).not.toEqual(done);

    const next = await beside(board);
    if (end === 'closed') await board.page.close({ runBeforeUnload: false });
    else {
      const crashed = board.page.waitForEvent('crash');
      const session = await board.page.context().newCDPSession(board.page);
      void session.send('Page.crash').catch(() => {});
      await crashed;
    }
    await next.open();
    expect((await next.seen()).job).toEqual(done);
    await next.page.close();
  });

test('an edit is kept even where the page crashes at once', async ({ board }) => {
  await board.open('?example');
  await rename(board, 'First');
  await expect.poll(async () => Object.keys(await keptTexts(board.page))).toEqual(['First']);
  const next = await beside(board);
  const crashed = board.page.waitForEvent('crash');
  const session = await board.page.context().newCDPSession(board.page);
  const field = board.page.getByRole('textbox', { name: 'Job title' });
  await field.fill('Second');
  await field.press('Enter');
  void session.send('Page.crash').catch(() => {});
  await crashed;
  await next.open();
  expect((await next.seen()).job.title).toBe('Second');
});

test('of two tabs on a job the second looks on, follows, and can take it over; nothing is lost', async ({
  board,
}) => {
  await board.open('?example');
  await rename(board, 'Shared');
  await expect.poll(async () => Object.keys(await keptTexts(board.page))).toEqual(['Shared']);

  const other = await beside(board);
  await other.open();
  const bar = (of: BoardPage) => of.page.getByRole('region', { name: 'About this job' });
  await expect(bar(other)).toContainText('This job is open in another tab.');
  await expect(bar(board)).toBeHidden();

  const before = (await other.seen()).job;
  await nudge(other);
  expect((await other.seen()).job).toEqual(before);
  await expect(other.page.getByRole('status')).toContainText('Nothing was changed');

  const moved = await nudge(board);
  await expect.poll(async () => (await other.seen()).job).toEqual(moved);

  const last = await nudge(board);
  await bar(other).getByRole('button', { name: 'Take over here' }).click();
  await expect(bar(other)).toBeHidden();
  expect((await other.seen()).job).toEqual(last);
  await expect(bar(board)).toContainText('taken over in another tab');
  const mine = await nudge(other);
  expect(mine).not.toEqual(last);
  await expect.poll(async () => (await board.seen()).job).toEqual(mine);

  await other.page.close();
  await expect(bar(board)).toBeHidden();
  expect(await nudge(board)).not.toEqual(mine);
});

test('the tab that looks on is free to go on with a copy, and to have the job when the other tab dies', async ({
  board,
}) => {
  await board.open('?example');
  await rename(board, 'Shared');
  await expect.poll(async () => Object.keys(await keptTexts(board.page))).toEqual(['Shared']);
  const [copying, waiting] = [await beside(board), await beside(board)];
  await copying.open();
  await copying.page.getByRole('button', { name: 'Work on a copy' }).click();
  await expect.poll(async () => (await copying.seen()).job.title).toBe('Shared (copy)');
  await nudge(copying);
  await expect
    .poll(async () => Object.keys(await keptTexts(copying.page)).sort())
    .toEqual(['Shared', 'Shared (copy)']);
  await copying.page.close();

  // The copy was changed last; the job itself is asked for.
  await waiting.open();
  await ask(waiting, 'Jobs');
  await waiting.page.getByRole('row', { name: 'Shared', exact: true }).click();
  await expect(waiting.page.getByRole('region', { name: 'About this job' })).toBeVisible();
  await board.page.close({ runBeforeUnload: false });
  await expect(waiting.page.getByRole('region', { name: 'About this job' })).toBeHidden();
  await rename(waiting, 'Mine now');
});

test('a full disk is said with what can be done; the work stays, and is kept once there is room', async ({
  board,
}) => {
  await board.page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...args) {
      if ('full' in globalThis) throw new DOMException('There is no room.', 'QuotaExceededError');
      return put.apply(this, args);
    };
  });
  await board.open('?example');
  await rename(board, 'Before it was full');
  await expect.poll(async () => Object.keys(await keptTexts(board.page))).toEqual(['Before it was full']);
  await board.page.evaluate(() => Object.assign(globalThis, { full: true }));
  const job = await nudge(board);
  const bar = board.page.getByRole('region', { name: 'About this job' });
  await expect(bar).toContainText('This browser has no room left');
  await expect(bar).toContainText('delete versions or jobs');
  await expect(bar.getByRole('button', { name: 'Make room' })).toBeVisible();
  expect((await board.seen()).job).toEqual(job);
  expect(await board.layoutFaults()).toEqual([]);

  // The last moment holds it: a reload, with the disk still full or not, brings it back.
  await board.reload();
  expect((await board.seen()).job).toEqual(job);

  await board.page.evaluate(() => Object.assign(globalThis, { full: true }));
  const later = await nudge(board);
  await expect(bar).toBeVisible();
  const download = board.page.waitForEvent('download');
  await bar.getByRole('button', { name: 'Save to a file' }).click();
  expect(JSON.parse(readFileSync(await (await download).path(), 'utf8'))).toEqual(later);
  await board.page.evaluate(() => Reflect.deleteProperty(globalThis, 'full'));
  await expect(bar).toBeHidden({ timeout: 15_000 });
  await expect
    .poll(async () => JSON.parse((await keptTexts(board.page))['Before it was full'] ?? 'null'))
    .toEqual(later);
});

test('leaving the page is questioned only where work would be lost with it', async ({ board }) => {
  const questions: string[] = [];
  board.page.on('dialog', (dialog) => {
    questions.push(dialog.type());
    void dialog.accept();
  });
  await board.open('?example');
  await nudge(board);
  await board.reload();
  expect(questions).toEqual([]);

  await board.page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('There is no room.', 'QuotaExceededError');
    };
    Storage.prototype.setItem = () => {
      throw new DOMException('There is no room.', 'QuotaExceededError');
    };
  });
  await nudge(board);
  await expect(board.page.getByRole('region', { name: 'About this job' })).toBeVisible();
  await board.reload();
  expect(questions).toEqual(['beforeunload']);
});

test('jobs are found, renamed, duplicated, deleted and brought back by keys alone', async ({ board }) => {
  await board.open('?example');
  await addJob(board, 'Bakery');
  await addJob(board, 'Miller Road');
  await ask(board, 'Jobs');
  const view = board.page.getByRole('dialog', { name: 'Jobs' });
  const row = (title: string) => view.getByRole('row', { name: title, exact: true });
  await expect(view.getByRole('button', { name: 'Back to the desk' })).toBeFocused();
  await expect(view.getByRole('row')).toHaveCount(2);
  await expect(row('Miller Road')).toContainText('on the board');
  await expect(row('Miller Road')).toContainText('3 legs');

  const keys = async (...list: string[]) => {
    for (const key of list) await board.page.keyboard.press(key);
  };
  const menu = async (title: string, item: string) => {
    await row(title).focus();
    await keys('Tab');
    await expect(view.getByRole('button', { name: `More for ${title}`, exact: true })).toBeFocused();
    await keys('Enter');
    await expect(board.page.getByRole('menu')).toBeVisible();
    await board.page.keyboard.type(item);
    await keys('Enter');
  };
  await menu('Bakery', 'Rename');
  await expect(board.page.getByRole('textbox', { name: 'Name of the job' })).toBeFocused();
  await board.page.keyboard.type('Bakery, ground floor');
  await keys('Enter');
  await expect(row('Bakery, ground floor')).toBeVisible();

  await menu('Bakery, ground floor', 'Duplicate');
  await expect(row('Bakery, ground floor (copy)')).toBeVisible();
  await view.getByRole('searchbox').fill('bakery copy');
  await expect(view.getByRole('row')).toHaveCount(1);
  await view.getByRole('searchbox').fill('');

  await menu('Bakery, ground floor', 'Delete');
  await expect(row('Bakery, ground floor')).toBeHidden();
  await expect(view.getByRole('button', { name: 'Undo' })).toBeFocused();
  await keys('Enter');
  await expect(row('Bakery, ground floor')).toBeVisible();

  await row('Bakery, ground floor').focus();
  await keys('Enter');
  await expect(view).toBeHidden();
  expect((await board.seen()).job.title).toBe('Bakery, ground floor');
});

test('a recent job is in the File menu', async ({ board }) => {
  await board.open('?example');
  await addJob(board, 'Bakery');
  const first = (await board.seen()).job;
  await addJob(board, 'Miller Road');
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: 'Bakery' }).click();
  await expect.poll(async () => (await board.seen()).job).toEqual(first);
  expect(await board.page.title()).toContain('Bakery');
});

test('what a browser kept before it kept several jobs is among them', async ({ board }) => {
  await board.open('?new');
  await board.page.evaluate(
    (text) =>
      new Promise<void>((resolve, reject) => {
        const asked = indexedDB.open('gentlebend', 1);
        asked.onupgradeneeded = () => asked.result.createObjectStore('work');
        asked.onerror = () => reject(asked.error);
        asked.onsuccess = () => {
          const change = asked.result.transaction('work', 'readwrite');
          change.objectStore('work').put({ text, fileName: null, savedAt: Date.now() }, 'a-tab');
          change.oncomplete = () => {
            asked.result.close();
            resolve();
          };
        };
      }),
    titled('From before'),
  );
  await board.reload();
  expect((await board.seen()).job.title).toBe('From before');
  await expect
    .poll(() => board.page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
    .toEqual(['gentlebend.jobs']);
});

test('a version is kept by name and restored as one edit', async ({ board }) => {
  await board.open('?example');
  await rename(board, 'With versions');
  const quoted = (await board.seen()).job;
  await ask(board, 'Versions');
  const box = board.page.getByRole('dialog');
  await box.getByLabel('Name for how it is now').fill('as quoted');
  await board.page.keyboard.press('Enter');
  await expect(box.getByRole('listitem')).toContainText('as quoted');
  await board.page.keyboard.press('Escape');

  await board.page.locator('[data-sheet="floor"]').focus();
  await board.page.keyboard.press('Control+a');
  await board.page.keyboard.press('Delete');
  const emptied = (await board.seen()).job;
  expect(emptied.schemes[0]?.segments).toEqual([]);

  await ask(board, 'Versions');
  const version = box.getByRole('listitem').filter({ hasText: 'as quoted' });
  await expect(version).toContainText(/9 legs in 2 schemes, \d+ cfm/);
  await expect(version).toContainText('3 legs more than now');
  await version.getByRole('button', { name: 'Restore' }).click();
  await expect.poll(async () => (await board.seen()).job).toEqual(quoted);
  await board.page.keyboard.press('Control+z');
  await expect.poll(async () => (await board.seen()).job).toEqual(emptied);
  await ask(board, 'Versions');
  await expect(box.getByRole('listitem').filter({ hasText: 'another version was restored' })).toBeVisible();
});

test('a template keeps the hood and leaves the route', async ({ board }) => {
  await board.open('?example');
  const { job } = await board.seen();
  await ask(board, 'Save as template');
  await board.page.getByRole('textbox', { name: 'Name of the template' }).fill('My usual');
  await board.page.keyboard.press('Enter');
  await ask(board, 'New from template');
  await board.page.getByRole('button', { name: 'Begin with it: My usual' }).click();
  await expect.poll(async () => (await board.seen()).job.title).toBe('My usual');
  const begun = (await board.seen()).job;
  expect([begun.hoods, begun.house]).toEqual([job.hoods, job.house]);
  expect(begun.schemes.map(({ nodes }) => nodes)).toEqual([[]]);
});

test('everything goes into one file and comes out of it in another browser', async ({ board, browser }) => {
  await board.open('?example');
  await addJob(board, 'Bakery');
  const job = await nudge(board);
  await ask(board, 'Versions');
  await board.page.getByLabel('Name for how it is now').fill('as quoted');
  await board.page.keyboard.press('Enter');
  await expect(board.page.getByRole('dialog').getByRole('listitem')).toContainText('as quoted');
  await board.page.keyboard.press('Escape');
  await ask(board, 'Jobs');
  const download = board.page.waitForEvent('download');
  await board.page.getByRole('button', { name: 'Export everything…' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^gentlebend-.*\.zip$/);

  const elsewhere = await browser.newContext();
  const other = new BoardPage(await elsewhere.newPage());
  await other.page.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'));
  await other.page.goto(board.page.url());
  await other.ready();
  const chooser = other.page.waitForEvent('filechooser');
  await ask(other, 'Import…');
  await (await chooser).setFiles(await file.path());
  const notice = other.page.getByRole('alertdialog');
  await expect(notice).toContainText('1 job added');
  await expect(notice).toContainText('1 version added');
  await notice.getByRole('button', { name: 'Close' }).click();
  await ask(other, 'Jobs');
  await other.page.getByRole('row', { name: 'Bakery', exact: true }).click();
  await expect.poll(async () => (await other.seen()).job).toEqual(job);
  await elsewhere.close();
});

/** Holds files over a place of the page, and lets them fall there. */
async function drop(board: BoardPage, where: string, files: readonly { name: string; text: string }[]) {
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

test('a job file that is dropped on the window is opened, and the work before it is kept', async ({
  board,
}) => {
  await board.open('?example');
  await rename(board, 'Before');
  const before = await nudge(board);
  const hint = await drop(board, '.top-bar', [{ name: 'bakery.gentlebend.json', text: titled('Bakery') }]);
  expect(hint).toContain('Open this job');
  await expect.poll(async () => (await board.seen()).job.title).toBe('Bakery');
  await board.page.getByRole('button', { name: 'File' }).click();
  await expect(board.page.getByRole('menu')).toContainText('bakery.gentlebend.json');
  await board.page.getByRole('menuitem', { name: 'Before' }).click();
  await expect.poll(async () => (await board.seen()).job).toEqual(before);
});

test('several files come to the jobs, the first onto the board', async ({ board }) => {
  await board.open('?example');
  const files = ['One', 'Two', 'Three'].map((title) => ({ name: `${title}.json`, text: titled(title) }));
  expect(await drop(board, '[data-sheet="floor"]', files)).toContain('Open 3 files');
  await expect.poll(async () => (await board.seen()).job.title).toBe('One');
  await expect
    .poll(async () => Object.keys(await keptTexts(board.page)).sort())
    .toEqual(['One', 'Three', 'Two']);
});

test('a wrong file that is dropped gets a sentence, and changes nothing', async ({ board }) => {
  await board.open('?example');
  const { job } = await board.seen();
  const notice = board.page.getByRole('alertdialog');
  await drop(board, '[data-sheet="floor"]', [{ name: 'song.mp3', text: 'la la' }]);
  await expect(notice).toContainText('song.mp3 was not opened');
  await notice.getByRole('button', { name: 'Close' }).click();
  await drop(board, '.top-bar', [{ name: 'other.json', text: '{"format": "something else"}' }]);
  await expect(notice).toContainText('not a Gentlebend job');
  await notice.getByRole('button', { name: 'Close' }).click();
  await drop(board, '.top-bar', [{ name: 'plan.png', text: '' }]);
  await expect(notice).toContainText('drop it on the sheet that it belongs to');
  expect((await board.seen()).job).toEqual(job);
});

test('a file that the browser lends is saved in place, and its absence is said', async ({ board }) => {
  await board.page.addInitScript((text) => {
    const written: string[] = [text];
    let gone = false;
    // The files of the browser's own, private to the page, stand in for those of the disk.
    const handle = async () => {
      const root = await navigator.storage.getDirectory();
      const file = await root.getFileHandle('lent.gentlebend.json', { create: true });
      const stream = await file.createWritable();
      await stream.write(written.at(-1) ?? '');
      await stream.close();
      return file;
    };
    Object.assign(window, {
      showOpenFilePicker: async () => [await handle()],
      lent: {
        text: async () => {
          const root = await navigator.storage.getDirectory();
          return (await (await root.getFileHandle('lent.gentlebend.json')).getFile()).text();
        },
        remove: async () => {
          gone = true;
          const root = await navigator.storage.getDirectory();
          await root.removeEntry('lent.gentlebend.json');
          return gone;
        },
      },
    });
  }, titled('Lent'));
  await board.open('?example');
  await board.page.keyboard.press('Control+o');
  await expect.poll(async () => (await board.seen()).job.title).toBe('Lent');
  const job = await nudge(board);
  await expect.poll(() => board.page.title()).toMatch(/^• /);
  await board.page.keyboard.press('Control+s');
  await expect.poll(() => board.page.title()).not.toMatch(/^• /);
  const lent = () =>
    board.page.evaluate(() => (window as unknown as { lent: { text(): Promise<string> } }).lent.text());
  expect(JSON.parse(await lent())).toEqual(job);

  await board.page.evaluate(() => (window as unknown as { lent: { remove(): Promise<void> } }).lent.remove());
  const later = await nudge(board);
  await board.page.keyboard.press('Control+s');
  const notice = board.page.getByRole('alertdialog');
  await expect(notice).toContainText('lent.gentlebend.json is no longer where it was');
  expect((await board.seen()).job).toEqual(later);
});
