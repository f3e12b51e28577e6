import { readFileSync } from 'node:fs';
import { test as base, expect, type Locator, type Page } from 'playwright/test';
import type { BoardState } from '../../src/canvas/board.ts';
import type { Viewport } from '../../src/drawing/viewport.ts';
import type { Job, Node, Vec3 } from '../../src/graph/document.ts';
import type { RouteBend, RouteSegment } from '../../src/graph/route.ts';
import { project, type SheetId, type SheetPoint } from '../../src/graph/sheet.ts';

/** What the runner writes to the console where it keeps service workers away. */
const workerBlocked = 'Service Worker registration blocked by Playwright';

const axe = readFileSync('node_modules/axe-core/axe.min.js', 'utf8');

/** How many times slower than it is the processor shall seem to the page; a trial of the tests themselves. */
const slowness = Number(process.env.GENTLEBEND_SLOW ?? 1);

/** What every view must hold in: both themes, in both sizes of window. */
const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
] as const;
const themes = ['light', 'dark'] as const;

/** A page that fails its test on any word in the console, any exception and any request to elsewhere. */
export const test = base.extend<{ board: BoardPage }>({
  board: async ({ page, baseURL }, use) => {
    const complaints: string[] = [];
    page.on('console', (message) => {
      if (message.text() !== workerBlocked) complaints.push(`${message.type()}: ${message.text()}`);
    });
    page.on('pageerror', (error) => complaints.push(`exception: ${error.message}`));
    page.on('requestfailed', (request) => {
      // What a page was still loading when it was left is not its fault.
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') complaints.push(`failed: ${request.url()}`);
    });
    page.on('request', (request) => {
      const { protocol, origin } = new URL(request.url());
      const local = protocol === 'data:' || protocol === 'blob:' || origin === new URL(baseURL ?? '').origin;
      if (!local) complaints.push(`left the machine: ${request.url()}`);
    });
    await page.addInitScript(() => {
      // Dialogs of the system cannot be answered from here; without them files come and go as in browsers that lack them.
      Reflect.deleteProperty(window, 'showOpenFilePicker');
      Reflect.deleteProperty(window, 'showSaveFilePicker');
      window.print = () => {};
    });
    if (slowness > 1) {
      const session = await page.context().newCDPSession(page);
      await session.send('Emulation.setCPUThrottlingRate', { rate: slowness });
    }
    await use(new BoardPage(page));
    expect(complaints).toEqual([]);
  },
});

export { expect };

/** What a test reads of the board, as plain data. */
export interface Seen {
  readonly job: Job;
  readonly schemeId: string;
  readonly undoLabel: string | null;
  readonly selection: BoardState['selection'];
  /** Delivered at the fastest speed, m3/s; null where nothing was solved. */
  readonly flow: number | null;
  readonly bends: readonly (RouteBend & { readonly node: string })[];
  readonly segments: readonly RouteSegment[];
  readonly findings: readonly string[];
}

/** The program in a browser, spoken to as a person would: by what is on the screen and by pointing. */
export class BoardPage {
  /** Requests that have no answer yet. */
  private asked = 0;

  constructor(readonly page: Page) {
    page.on('request', () => {
      this.asked += 1;
    });
    for (const end of ['requestfinished', 'requestfailed'] as const)
      page.on(end as 'requestfinished', () => {
        this.asked -= 1;
      });
  }

  async open(search = ''): Promise<void> {
    await this.page.goto(`./${search}`);
    await this.ready();
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.ready();
  }

  /** Waits until both sheets are drawn and the numbers are there. */
  async ready(): Promise<void> {
    await expect(this.page.locator('[data-sheet] canvas').first()).toBeVisible();
    await this.page.evaluate(() => document.fonts.ready);
    await this.frame();
  }

  /** Waits until nothing on the page moves or changes colour any more, and that is drawn. */
  async settled(): Promise<void> {
    await this.frame();
    await this.page.evaluate(async () => {
      const moving = () =>
        document
          .getAnimations()
          .filter(
            ({ effect, playState }) =>
              playState === 'running' && Number.isFinite(effect?.getComputedTiming().endTime),
          );
      for (let all = moving(); all.length > 0; all = moving())
        await Promise.allSettled(all.map(({ finished }) => finished));
    });
    await this.frame();
  }

  /** Waits until all that was asked of the server has come, and is on the page. */
  async arrived(): Promise<void> {
    for (let quiet = 0; quiet < 2; quiet = this.asked <= 0 ? quiet + 1 : 0) await this.settled();
  }

  /** Lets what was asked for be drawn. */
  async frame(): Promise<void> {
    await this.page.evaluate(
      () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
    );
  }

  async seen(): Promise<Seen> {
    return await this.page.evaluate(() => {
      const { job, schemeId, undoLabel, selection, solution } = globalThis.gentlebend.state();
      const outcome = solution.speeds.at(-1)?.outcome;
      return {
        job,
        schemeId,
        undoLabel,
        selection,
        flow: outcome?.solved ? outcome.flow : null,
        bends: [...solution.route.nodes.values()].flatMap(({ id, bend }) =>
          bend ? [{ node: id, ...bend }] : [],
        ),
        segments: [...solution.route.segments.values()],
        findings: solution.findings.map(({ rule }) => rule),
      };
    });
  }

  /** The scheme's node at a place in space, to the millimetre. */
  async nodeAt(at: Vec3): Promise<Node> {
    const { job, schemeId } = await this.seen();
    const scheme = job.schemes.find(({ id }) => id === schemeId);
    const near = (node: Node) => node.at.every((value, i) => Math.abs(value - (at[i] ?? 0)) < 1e-3);
    const node = scheme?.nodes.find(near);
    if (!node) throw new Error(`no node at ${at.join(', ')}; there are ${JSON.stringify(scheme?.nodes)}`);
    return node;
  }

  /** Where a place in space is on the screen. */
  async screenOf(sheet: SheetId, at: Vec3): Promise<{ x: number; y: number }> {
    const { left, top, view } = await this.view(sheet);
    const { u, v }: SheetPoint = project(at, sheet);
    return { x: left + view.panX + u * view.scale, y: top + view.panY - v * view.scale };
  }

  private async view(sheet: SheetId): Promise<{ left: number; top: number; view: Viewport }> {
    return await this.page.locator(`[data-sheet="${sheet}"]`).evaluate((element, id) => {
      const view = globalThis.gentlebend.views()[id];
      if (!view) throw new Error(`the sheet ${id} is not on the screen`);
      const box = element.getBoundingClientRect();
      return { left: box.left + element.clientLeft, top: box.top + element.clientTop, view };
    }, sheet);
  }

  async pointAt(sheet: SheetId, at: Vec3): Promise<void> {
    const { x, y } = await this.screenOf(sheet, at);
    await this.page.mouse.move(x, y, { steps: 4 });
    await this.frame();
  }

  async click(sheet: SheetId, at: Vec3): Promise<void> {
    await this.pointAt(sheet, at);
    await this.page.mouse.down();
    await this.page.mouse.up();
    await this.frame();
  }

  async drag(sheet: SheetId, from: Vec3, to: Vec3): Promise<void> {
    await this.pointAt(sheet, from);
    await this.page.mouse.down();
    await this.pointAt(sheet, to);
    await this.page.mouse.up();
    await this.frame();
  }

  async tool(name: string): Promise<void> {
    await this.page.getByRole('button', { name, exact: true }).click();
  }

  /** Opens a job file as a browser without file handles does. */
  async openFile(text: string, name = 'kitchen.gentlebend.json'): Promise<void> {
    const chooser = this.page.waitForEvent('filechooser');
    await this.page.getByRole('button', { name: 'File', exact: true }).click();
    await this.page.getByRole('menuitem', { name: 'Open…' }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  }

  /** Runs the first command that the command box finds by a text, which must be in its title, by keys alone. */
  async ask(text: string, title = text): Promise<void> {
    const first = await this.find(text);
    await expect(first).toContainText(title);
    await expect(first).toHaveAttribute('data-focused', 'true');
    await this.page.keyboard.press('Enter');
    await expect(this.page.locator('.command-box')).toHaveCount(0);
  }

  /** Types into the command box, once it takes letters, and gives the first of what it finds. */
  async find(text: string): Promise<Locator> {
    await this.page.keyboard.press('Control+k');
    const box = this.page.locator('.command-box');
    await expect(box.locator('input')).toBeFocused();
    await expect(box.getByRole('menuitem').first()).toBeVisible();
    await this.page.keyboard.type(text);
    return box.getByRole('menuitem').first();
  }

  /** As if the system went over to another theme, which the program follows as long as nobody chose one. */
  async theme(theme: 'light' | 'dark'): Promise<void> {
    await this.page.emulateMedia({ colorScheme: theme });
    await expect(this.page.locator('html')).toHaveAttribute('data-theme', theme);
  }

  /** Does something in both themes at both sizes of window, one after the other on the one page, and says which. */
  async inEveryLook(check: (look: string) => Promise<void>): Promise<void> {
    for (const size of sizes)
      for (const theme of themes) {
        const look = `${theme}, ${size.width} by ${size.height}`;
        await test.step(look, async () => {
          await this.page.setViewportSize(size);
          await this.theme(theme);
          await this.settled();
          await check(look);
        });
      }
  }

  /** What axe and the layout have against the page in both themes at both sizes, each with the look it is in. */
  async faultsInEveryLook(where = ''): Promise<string[]> {
    const faults: string[] = [];
    await this.inEveryLook(async (look) => {
      const found = [...(await this.layoutFaults()), ...(await this.accessibilityFaults())];
      faults.push(...found.map((fault) => `${where === '' ? look : `${where}, ${look}`}: ${fault}`));
    });
    return faults;
  }

  /** Axe's findings against the whole page, in a form that a failed test can be read from. */
  async accessibilityFaults(): Promise<string[]> {
    await this.settled();
    if (!(await this.page.evaluate(() => 'axe' in globalThis))) await this.page.evaluate(axe);
    return await this.page.evaluate(async () => {
      const axe = (globalThis as unknown as { axe: typeof import('axe-core') }).axe;
      const { violations } = await axe.run(document, {
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        resultTypes: ['violations'],
      });
      return violations.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.target.join(' ')}`));
    });
  }

  /**
   * What a person would see as broken: a page that scrolls, text wider or taller than the box that cuts
   * it off, and controls that lie over one another, dialogs apart, or out of the window.
   */
  async layoutFaults(): Promise<string[]> {
    await this.settled();
    return await this.page.evaluate(() => {
      const faults: string[] = [];
      const nameOf = (element: Element) =>
        `${element.tagName.toLowerCase()}.${element.className} "${(element.textContent ?? '').trim().slice(0, 40)}"`;
      const root = document.documentElement;
      if (root.scrollWidth > root.clientWidth || root.scrollHeight > root.clientHeight)
        faults.push('the page scrolls');

      for (const element of document.querySelectorAll<HTMLElement>('body *')) {
        const style = getComputedStyle(element);
        const hasText = [...element.childNodes].some(
          (node) => node.nodeType === 3 && node.textContent?.trim(),
        );
        if (!hasText || style.visibility === 'hidden' || element.clientWidth <= 1) continue;
        const cutsWidth = style.overflowX === 'hidden' || style.overflowX === 'clip';
        const cutsHeight = style.overflowY === 'hidden' || style.overflowY === 'clip';
        const wide = cutsWidth && element.scrollWidth > element.clientWidth + 1;
        const tall = cutsHeight && element.scrollHeight > element.clientHeight + 1;
        if (wide || tall) faults.push(`cut off: ${nameOf(element)}`);
      }

      for (const field of document.querySelectorAll('input')) {
        if (field.scrollWidth > field.clientWidth + 1)
          faults.push(`cut off: ${field.ariaLabel} "${field.value}"`);
      }

      const scrolledAway = (element: Element): boolean => {
        const rect = element.getBoundingClientRect();
        for (let box = element.parentElement; box; box = box.parentElement) {
          if (getComputedStyle(box).overflowY === 'visible') continue;
          const frame = box.getBoundingClientRect();
          if (rect.bottom > frame.bottom + 1 || rect.top < frame.top - 1) return true;
        }
        return false;
      };
      const floating = (element: Element) => element.closest('[role=dialog], [role=alertdialog]');
      const controls = [
        ...document.querySelectorAll<HTMLElement>('button, input, [role=tab], a[href]'),
      ].filter(
        (element) =>
          element.checkVisibility({ visibilityProperty: true }) &&
          element.offsetParent !== null &&
          element.clientWidth > 1 &&
          !scrolledAway(element),
      );
      controls.forEach((element, i) => {
        const a = element.getBoundingClientRect();
        if (a.left < -0.5 || a.top < -0.5 || a.right > innerWidth + 0.5 || a.bottom > innerHeight + 0.5) {
          faults.push(`out of the window: ${nameOf(element)}`);
        }
        for (const other of controls.slice(i + 1)) {
          if (element.contains(other) || other.contains(element)) continue;
          if (floating(element) !== floating(other)) continue;
          const b = other.getBoundingClientRect();
          const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          if (across > 1 && down > 1) faults.push(`overlap: ${nameOf(element)} and ${nameOf(other)}`);
        }
      });
      return faults;
    });
  }
}
