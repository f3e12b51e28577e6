import { readFileSync } from 'node:fs';
import { shareFragment } from '../../src/files/share.ts';
import type { Job } from '../../src/graph/document.ts';
import { type BoardPage, expect, test } from './support.ts';

const example = JSON.parse(readFileSync('fixtures/example.gentlebend.json', 'utf8')) as Job;
const all = { underlays: true };

/** A job of many schemes, long enough that no chat program would carry its link whole. */
function largeJob(): Job {
  const [scheme] = example.schemes;
  if (!scheme) throw new Error('the example has a scheme');
  const schemes = Array.from({ length: 60 }, (_, i) => ({
    ...scheme,
    id: `s${i}`,
    name: `Way out ${i}`,
    notes: `Measured on site: ${Array.from({ length: 9 }, (_, j) => Math.sin(9 * i + j)).join(', ')}`,
    nodes: scheme.nodes.map((node) => ({
      ...node,
      at: [
        node.at[0] + i * 0.001_37,
        node.at[1],
        node.at[2],
      ] as Job['schemes'][number]['nodes'][number]['at'],
    })),
  }));
  return { ...example, title: 'A large job', schemes };
}

const box = ({ page }: BoardPage) => page.getByRole('dialog', { name: 'Share link' });

test('a link is copied, and opens the same job in a browser that has never seen it', async ({
  board,
  browser,
}) => {
  await board.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await board.open('?example');
  await board.page.getByRole('textbox', { name: 'Job title' }).fill('Sent by link');
  await board.page.keyboard.press('Enter');
  const { job } = await board.seen();
  await board.ask('Copy share link');
  await box(board).getByRole('button', { name: 'Copy link' }).click();
  await expect(box(board)).toContainText('The link is copied.');
  const link = await board.page.evaluate(() => navigator.clipboard.readText());
  expect(link).toBe(await box(board).getByRole('textbox', { name: 'Link' }).inputValue());

  const elsewhere = await browser.newContext();
  const page = await elsewhere.newPage();
  await page.goto(link);
  await expect(page.getByRole('textbox', { name: 'Job title' })).toHaveValue('Sent by link');
  expect(await page.evaluate(() => globalThis.gentlebend.state().job)).toEqual(job);
  expect(page.url()).not.toContain('#');
  await elsewhere.close();
});

test('a large job goes through a link, whose length is told and warned of', async ({ board }) => {
  const job = largeJob();
  const fragment = shareFragment(job, all);
  expect(fragment.length).toBeGreaterThan(8_000);
  await board.open(fragment);
  await expect(board.page.getByRole('textbox', { name: 'Job title' })).toHaveValue('A large job');
  expect((await board.seen()).job).toEqual(job);
  await board.ask('Copy share link');
  await expect(box(board).locator('.caution')).toContainText(
    /\d{1,3},\d{3} characters: longer than the 8,000/,
  );
});

test('a link leaves the work that is here as it is', async ({ board }) => {
  await board.open('?example');
  await board.page.getByRole('textbox', { name: 'Job title' }).fill('My own work');
  await board.page.keyboard.press('Enter');
  await expect(board.page.getByRole('textbox', { name: 'Job title' })).toHaveValue('My own work');
  const fragment = shareFragment({ ...example, title: 'Of somebody else' }, all);

  await board.page.evaluate((to) => {
    window.location.hash = to;
  }, fragment);
  await expect(board.page.getByRole('textbox', { name: 'Job title' })).toHaveValue('Of somebody else');
  await expect(board.page).not.toHaveURL(/#/);

  await board.ask('Jobs');
  await expect(board.page.getByText('My own work').first()).toBeVisible();
});

for (const [from, leave] of [
  ['another page of the same tab', 'about:blank'],
  ['a board that is open', null],
] as const) {
  test(`a job that came by link from ${from} is there after a reload, beside the work`, async ({ board }) => {
    await board.open('?example');
    await board.page.getByRole('textbox', { name: 'Job title' }).fill('My own work');
    await board.page.keyboard.press('Enter');
    await expect.poll(async () => (await board.seen()).job.title).toBe('My own work');
    if (leave) await board.page.goto(leave);
    await board.open(shareFragment({ ...example, title: 'Of somebody else' }, all));
    const title = board.page.getByRole('textbox', { name: 'Job title' });
    await expect(title).toHaveValue('Of somebody else');
    await board.reload();
    await expect(title).toHaveValue('Of somebody else');
    await expect(board.page).not.toHaveURL(/#/);
    await board.reload();
    await expect(title).toHaveValue('Of somebody else');
    await board.ask('Jobs');
    await expect(board.page.getByText('My own work').first()).toBeVisible();
    await expect(board.page.getByText('Of somebody else').first()).toBeVisible();
  });
}

test('a damaged link is refused with a sentence, and the board is as it was', async ({ board }) => {
  await board.open('?example');
  const { job } = await board.seen();
  const fragment = shareFragment(example, all);
  await board.page.evaluate(
    (to) => {
      window.location.hash = to;
    },
    `${fragment.slice(0, 300)}X${fragment.slice(301)}`,
  );
  const notice = board.page.getByRole('alertdialog');
  await expect(notice).toContainText('The shared link was not opened');
  await expect(notice).toContainText('a part of the link is missing or was changed on the way');
  await notice.getByRole('button', { name: 'Close' }).click();
  expect((await board.seen()).job).toEqual(job);
});

test('a page that is opened by a damaged link says so and shows what it has', async ({ board }) => {
  await board.open('#job=1.AAAA');
  await expect(board.page.getByRole('alertdialog')).toContainText('The shared link was not opened');
});

test('a link from elsewhere is pasted into a box', async ({ board }) => {
  await board.open('?example');
  await board.ask('Open a share link');
  const taking = board.page.getByRole('dialog', { name: 'Open a share link' });
  await taking.getByRole('textbox', { name: 'Link' }).fill('https://example.invalid/#job=1.zzz');
  await taking.getByRole('button', { name: 'Open' }).click();
  await expect(taking).toContainText('A part of the link is missing');
  const link = `https://example.invalid/${shareFragment({ ...example, title: 'Pasted' }, all)}`;
  await taking.getByRole('textbox', { name: 'Link' }).fill(link);
  await taking.getByRole('button', { name: 'Open' }).click();
  await expect(taking).toBeHidden();
  await expect(board.page.getByRole('textbox', { name: 'Job title' })).toHaveValue('Pasted');
});

test('pictures are left out of a link unless they are asked for', async ({ board }) => {
  const picture =
    'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
  const job: Job = {
    ...example,
    underlays: [
      { id: 'u1', sheet: 'floor', image: picture, size: [1, 1], at: [0, 0], scale: 0.5, opacity: 0.5 },
    ],
  };
  await board.open(shareFragment(job, all));
  await board.ask('Copy share link');
  await expect(box(board)).toContainText('The underlay is left out');
  const field = box(board).getByRole('textbox', { name: 'Link' });
  const without = (await field.inputValue()).length;
  await box(board).getByText('Include the underlay').click();
  await expect(box(board)).not.toContainText('The underlay is left out');
  expect((await field.inputValue()).length).toBeGreaterThan(without);
});

test('where the clipboard is refused the link is marked in its field', async ({ board }) => {
  await board.page.addInitScript(() => {
    Object.defineProperty(navigator, 'clipboard', { value: undefined });
  });
  await board.open('?example');
  await board.ask('Copy share link');
  await box(board).getByRole('button', { name: 'Copy link' }).click();
  await expect(box(board)).toContainText('This browser did not let the link be copied');
  const marked = await box(board)
    .getByRole('textbox', { name: 'Link' })
    .evaluate((field: HTMLInputElement) =>
      field.value.slice(field.selectionStart ?? 0, field.selectionEnd ?? 0),
    );
  expect(marked).toContain('#job=1.');
});
