import { readFileSync } from 'node:fs';
import { pngBytes } from '../support/pictures.ts';
import { drop, keptTexts, nudge, rename, titled } from './kept.ts';
import { BoardPage, expect, test } from './support.ts';

const beside = async (board: BoardPage): Promise<BoardPage> =>
  new BoardPage(await board.page.context().newPage());

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

/** The example over a picture of noise, which no packing makes small. */
function largeJob(): string {
  const noise = pngBytes(400, 400, (x, y) => Math.abs(Math.sin(x * 12.9898 + y * 78.233) * 43758.5453) % 256);
  const image = `data:image/png;base64,${noise.toString('base64')}`;
  const underlay = { id: 'plan', sheet: 'floor', image, at: [0, 0], scale: 0.01, opacity: 0.5 };
  return JSON.stringify({ ...JSON.parse(titled('First')), underlays: [underlay] });
}

for (const [name, text] of [
  ['a job', titled('First')],
  ['a job with a picture of more than 100,000 characters', largeJob()],
] as const)
  test(`an edit of ${name} is kept even where the page crashes at once`, async ({ board }) => {
    await board.open('?new');
    await drop(board, '.top-bar', [{ name: 'first.json', text }]);
    await expect.poll(async () => Object.keys(await keptTexts(board.page))).toEqual(['First']);
    const { job } = await board.seen();
    const next = await beside(board);
    const crashed = board.page.waitForEvent('crash');
    const session = await board.page.context().newCDPSession(board.page);
    // However long the crash takes to come, what waits a moment before it is written is not written any more.
    await board.page.evaluate(() => {
      window.setTimeout = (() => 0) as unknown as typeof setTimeout;
    });
    const field = board.page.getByRole('textbox', { name: 'Job title' });
    await field.fill('Second');
    await field.press('Enter');
    void session.send('Page.crash').catch(() => {});
    await crashed;
    await next.open();
    expect((await next.seen()).job).toEqual({ ...job, title: 'Second' });
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
  await expect.poll(async () => (await other.seen()).job).toEqual(last);
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
  await waiting.ask('Jobs');
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
  await expect(bar).toBeHidden();
  await expect
    .poll(async () => JSON.parse((await keptTexts(board.page))['Before it was full'] ?? 'null'))
    .toEqual(later);
});

test('a quota of the browser that is really met is said in the same words, and the work is kept once it is lifted', async ({
  board,
  baseURL,
}) => {
  const session = await board.page.context().newCDPSession(board.page);
  const { origin } = new URL(baseURL ?? '');
  // Before the browser has looked, because it goes by what it found for some seconds.
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await board.open('?example');
  await rename(board, 'No room for it');
  const job = await nudge(board);
  const bar = board.page.getByRole('region', { name: 'About this job' });
  await expect(bar).toContainText('This browser has no room left');
  await expect(bar).toContainText('delete versions or jobs');
  await expect(bar.getByRole('button', { name: 'Make room' })).toBeVisible();
  expect((await board.seen()).job).toEqual(job);
  const kept = async () => JSON.parse((await keptTexts(board.page))['No room for it'] ?? 'null');
  expect(await kept()).not.toEqual(job);

  await session.send('Storage.overrideQuotaForOrigin', { origin });
  await expect(bar).toBeHidden();
  await expect.poll(kept).toEqual(job);
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
