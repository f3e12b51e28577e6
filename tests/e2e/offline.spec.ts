import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildApp } from '../../scripts/build.mjs';
import { writeWorker } from '../../scripts/offline.mjs';
import { serve } from '../../scripts/serve.mjs';
import { type BoardPage, test as base, expect } from './support.ts';

/** A copy of the built program with a server of its own, which a test may stop, start and change. */
interface Site {
  readonly url: string;
  readonly folder: string;
  stop(): void;
  /** Puts a newer version in the place of the one that is served. */
  renew(mark: string): void;
}

const test = base.extend<{ site: Site }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads the names of what a fixture needs
  site: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'gentlebend-site-'));
    cpSync(await buildApp(), folder, { recursive: true });
    const server = await serve(folder, { port: 0 });
    await use({
      url: server.url,
      folder,
      stop: () => server.close(),
      renew(mark) {
        const page = join(folder, 'index.html');
        const html = readFileSync(page, 'utf8');
        writeFileSync(page, html.replace('<head>', `<head><meta name="mark" content="${mark}">`));
        writeWorker(folder);
      },
    });
    server.close();
    rmSync(folder, { recursive: true, force: true });
  },
  baseURL: async ({ site }, use) => {
    await use(site.url);
  },
});
test.use({ serviceWorkers: 'allow' });

/** Waits until the browser holds the program, and a worker answers for this page that waits for nothing else. */
async function kept(board: BoardPage): Promise<void> {
  await board.page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller)
      await new Promise((done) =>
        navigator.serviceWorker.addEventListener('controllerchange', done, { once: true }),
      );
  });
  // What was asked for before the worker came is still under way to the server.
  await board.arrived();
}

/** What tells a newer version of the page from the first. */
const mark = ({ page }: BoardPage) => page.locator('meta[name="mark"]');

const news = ({ page }: BoardPage) => page.getByRole('region', { name: 'New version' });

async function rename({ page }: BoardPage, title: string): Promise<void> {
  await page.getByRole('textbox', { name: 'Job title' }).fill(title);
  await page.keyboard.press('Enter');
}

/** Asks for a newer version now, as the page does each hour and when it is looked at again. */
const askForNews = ({ page }: BoardPage) =>
  page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));

test('after one visit the program opens without a network or a server, with what loads late', async ({
  board,
  site,
}) => {
  await board.open('?example');
  await kept(board);
  await rename(board, 'Kept at home');

  await board.page.context().setOffline(true);
  site.stop();
  await board.reload();
  expect((await board.seen()).job.title).toBe('Kept at home');

  await board.page.keyboard.press('?');
  await expect(board.page.getByRole('dialog', { name: 'Shortcuts' })).toBeVisible();
  await board.page.keyboard.press('Escape');

  await board.open('?example');
  expect((await board.seen()).flow).toBeGreaterThan(0.05);
});

test('a search in a worker of its own runs without a network too', async ({ board, site }) => {
  await board.open('?example');
  await kept(board);
  await board.page.context().setOffline(true);
  site.stop();
  await board.reload();
  await board.page.getByRole('button', { name: 'Scheme actions' }).click();
  await board.page.getByRole('menuitem', { name: 'Find a route' }).click();
  const panel = board.page.getByRole('complementary', { name: 'Find a route' });
  await panel.getByRole('button', { name: 'Search', exact: true }).click();
  const routes = panel.getByRole('list', { name: 'Routes found' }).getByRole('listitem');
  await expect(routes.first()).toBeVisible();
});

test('every file of the program is kept, those that load late as well', async ({ board, site }) => {
  await board.open('?example');
  await kept(board);
  const listed = JSON.parse(
    /const files = (\[.*\]);/.exec(readFileSync(join(site.folder, 'worker.js'), 'utf8'))?.[1] ?? '[]',
  );
  const held = await board.page.evaluate(async () => {
    const urls: string[] = [];
    for (const name of await caches.keys())
      for (const request of await (await caches.open(name)).keys()) urls.push(request.url);
    return urls;
  });
  expect(listed).toContain('');
  expect(listed.some((file: string) => /pdf\.worker/.test(file))).toBe(true);
  expect(new Set(held)).toEqual(new Set(listed.map((file: string) => new URL(file, site.url).href)));
});

test('a new version waits, says so, and takes over with the work as it was', async ({ board, site }) => {
  await board.open('?example');
  await kept(board);
  await expect(news(board)).toBeHidden();
  site.renew('B');
  await askForNews(board);
  await expect(news(board)).toContainText('A new version is ready.');

  await rename(board, 'Edited before the change');
  await board.reload();
  await expect(mark(board)).toHaveCount(0);
  await expect(news(board)).toBeVisible();

  await rename(board, 'Edited at the last moment');
  await news(board).getByRole('button', { name: 'Reload' }).click();
  await expect(mark(board)).toHaveAttribute('content', 'B');
  await board.ready();
  expect((await board.seen()).job.title).toBe('Edited at the last moment');
  await expect(news(board)).toBeHidden();
});

test('a new version that is put off stays away until the next visit, and hides nothing', async ({
  board,
  site,
}) => {
  await board.open('?example');
  await kept(board);
  site.renew('B');
  await askForNews(board);
  await expect(news(board)).toBeVisible();
  expect(await board.layoutFaults()).toEqual([]);
  expect(await board.accessibilityFaults()).toEqual([]);
  await news(board).getByRole('button', { name: 'Later' }).click();
  await expect(news(board)).toBeHidden();
  await expect(mark(board)).toHaveCount(0);
});

test('a tab of the old version is told when another tab takes the new one, and still gets its late parts', async ({
  board,
  site,
}) => {
  await board.open('?example');
  await kept(board);
  const other = await board.page.context().newPage();
  await other.goto(`${site.url}?example`);
  site.renew('B');
  await askForNews(board);
  await news(board).getByRole('button', { name: 'Reload' }).click();
  await expect(mark(board)).toHaveAttribute('content', 'B');
  await expect(other.getByRole('region', { name: 'New version' })).toContainText('in another tab');
  await other.keyboard.press('?');
  await expect(other.getByRole('dialog', { name: 'Shortcuts' })).toBeVisible();
});

test('the program can be installed: its manifest names it, and its pictures are there', async ({
  board,
  site,
}) => {
  await board.open('?example');
  const href = await board.page.locator('link[rel="manifest"]').getAttribute('href');
  const manifest = await (await fetch(new URL(href ?? '', site.url))).json();
  expect(manifest).toMatchObject({ name: 'Gentlebend', display: 'standalone', start_url: './' });
  const sizes: string[] = [];
  for (const icon of manifest.icons) {
    const response = await fetch(new URL(icon.src, site.url));
    expect([response.status, response.headers.get('content-type')]).toEqual([200, icon.type]);
    if (icon.type !== 'image/png') continue;
    const png = Buffer.from(await response.arrayBuffer());
    expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(icon.sizes);
    sizes.push(`${icon.sizes} ${icon.purpose ?? 'any'}`);
  }
  expect(sizes).toEqual(['192x192 any', '512x512 any', '512x512 maskable']);
});
