import { addJob, drop, keptTexts, nudge, rename, titled } from './kept.ts';
import { BoardPage, expect, test } from './support.ts';

test('jobs are found, renamed, duplicated, deleted and brought back by keys alone', async ({ board }) => {
  await board.open('?example');
  await addJob(board, 'Bakery');
  await addJob(board, 'Miller Road');
  await board.ask('Jobs');
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
  await board.ask('Versions');
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

  await board.ask('Versions');
  const version = box.getByRole('listitem').filter({ hasText: 'as quoted' });
  await expect(version).toContainText(/9 legs in 2 schemes, \d+ cfm/);
  await expect(version).toContainText('3 legs more than now');
  await version.getByRole('button', { name: 'Restore' }).click();
  await expect.poll(async () => (await board.seen()).job).toEqual(quoted);
  await board.page.keyboard.press('Control+z');
  await expect.poll(async () => (await board.seen()).job).toEqual(emptied);
  await board.ask('Versions');
  await expect(box.getByRole('listitem').filter({ hasText: 'another version was restored' })).toBeVisible();
});

test('a template keeps the hood and leaves the route', async ({ board }) => {
  await board.open('?example');
  const { job } = await board.seen();
  await board.ask('Save as template');
  await board.page.getByRole('textbox', { name: 'Name of the template' }).fill('My usual');
  await board.page.keyboard.press('Enter');
  await board.ask('New from template');
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
  await board.ask('Versions');
  await board.page.getByLabel('Name for how it is now').fill('as quoted');
  await board.page.keyboard.press('Enter');
  await expect(board.page.getByRole('dialog').getByRole('listitem')).toContainText('as quoted');
  await board.page.keyboard.press('Escape');
  await board.ask('Jobs');
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
  await other.ask('Import…');
  await (await chooser).setFiles(await file.path());
  const notice = other.page.getByRole('alertdialog');
  await expect(notice).toContainText('1 job added');
  await expect(notice).toContainText('1 version added');
  await notice.getByRole('button', { name: 'Close' }).click();
  await other.ask('Jobs');
  await other.page.getByRole('row', { name: 'Bakery', exact: true }).click();
  await expect.poll(async () => (await other.seen()).job).toEqual(job);
  await elsewhere.close();
});

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
