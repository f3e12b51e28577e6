import type { Vec3 } from '../../src/graph/document.ts';
import { pdfBytes, planPage, pngBytes } from '../support/pictures.ts';
import { type BoardPage, expect, test } from './support.ts';

const foot = 0.3048;

/** Walls around a plan, with one across it, grey on white. */
const plan = (width: number, height: number) => (x: number, y: number) => {
  const wall = width / 60;
  const edge = x < wall || y < wall || x >= width - wall || y >= height - wall;
  return edge || (Math.abs(x - width * 0.4) < wall / 2 && y < height * 0.7) ? 40 : 250;
};

interface PictureFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

async function choose(board: BoardPage, file: PictureFile): Promise<void> {
  const { page } = board;
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('menuitem', { name: /Place an underlay/ }).click();
  await (await choosing).setFiles(file);
  await expect(page.getByRole('button', { name: 'Place', exact: true })).toBeVisible();
}

async function place(board: BoardPage): Promise<void> {
  await board.page.getByRole('button', { name: 'Place', exact: true }).click();
  await expect(board.page.getByRole('dialog')).toHaveCount(0);
  await board.frame();
}

const underlays = async (board: BoardPage) => (await board.seen()).job.underlays;

/** Pictures decoded and drawn since the page was opened. */
const pictures = async (board: BoardPage) =>
  await board.page.evaluate(() => globalThis.gentlebend.pictures());

/** Waits until as many pictures have been decoded and the sheets have drawn them. */
async function shown(board: BoardPage, decodes: number): Promise<void> {
  await expect.poll(async () => (await pictures(board)).decodes).toBe(decodes);
  await expect.poll(async () => (await pictures(board)).draws).toBeGreaterThan(0);
  await board.frame();
}

test('a PNG is placed, scaled by two points and a typed distance, and each is one step to undo', async ({
  board,
}) => {
  await board.open('?new');
  const before = await board.seen();
  const file = { name: 'plan.png', mimeType: 'image/png', buffer: pngBytes(600, 400, plan(600, 400)) };
  await choose(board, file);
  await place(board);
  const [placed] = await underlays(board);
  if (!placed) throw new Error('nothing was placed');
  expect(placed).toMatchObject({ name: 'plan.png', sheet: 'floor', size: [600, 400], locked: true });
  await shown(board, 1);

  const at = (x: number, y: number): Vec3 => [
    placed.at[0] + x * placed.scale,
    placed.at[1] + (400 - y) * placed.scale,
    0,
  ];
  await board.click('floor', at(100, 200));
  await board.click('floor', at(500, 200));
  await board.page.keyboard.type("10'");
  await board.page.keyboard.press('Enter');
  const [scaled] = await underlays(board);
  // 400 pixels are now ten feet, to the half pixel that a click may be off.
  expect((scaled?.scale ?? 0) * 400).toBeCloseTo(10 * foot, 1);
  expect((await board.seen()).undoLabel).toBe('set underlay scale');
  const first = (underlay = placed) => underlay.at[0] + 100 * underlay.scale;
  expect(first(scaled)).toBeCloseTo(first(), 2);

  await board.page.keyboard.press('Control+z');
  expect(await underlays(board)).toEqual([placed]);
  await board.page.keyboard.press('Control+z');
  expect((await board.seen()).job).toEqual(before.job);
});

test('a page of a PDF is chosen by its picture, and its scale on paper is taken', async ({ board }) => {
  await board.open('?new');
  const buffer = pdfBytes([planPage('Ground floor'), planPage('First floor')]);
  await choose(board, { name: 'plans.pdf', mimeType: 'application/pdf', buffer });
  const dialog = board.page.getByRole('dialog');
  await expect(dialog.locator('canvas')).toHaveCount(2);
  await dialog.getByRole('option', { name: 'Page 2' }).click();
  await dialog.getByRole('button', { name: /Scale of the drawing/ }).click();
  await board.page.getByRole('option', { name: '1:50' }).click();
  expect(await board.accessibilityFaults()).toEqual([]);
  expect(await board.layoutFaults()).toEqual([]);
  await place(board);
  const [placed] = await underlays(board);
  expect(placed?.name).toBe('plans.pdf, page 2');
  expect((placed?.scale ?? 0) * (placed?.size?.[0] ?? 0)).toBeCloseTo(11 * 0.0254 * 50, 2);
  await shown(board, 1);
  expect((await board.seen()).undoLabel).toBe('place underlay');
});

test('a scan of 20 megapixels is decoded once, and redrawn once a frame while it is zoomed and panned', async ({
  board,
}) => {
  await board.open('?new');
  const file = { name: 'scan.png', mimeType: 'image/png', buffer: pngBytes(5000, 4000, plan(5000, 4000)) };
  await choose(board, file);
  await place(board);
  await shown(board, 1);
  await board.page.keyboard.press('Escape');

  const box = await board.page.locator('[data-sheet="floor"]').boundingBox();
  if (!box) throw new Error('the floor sheet is on the screen');
  await board.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await board.frame();
  let resting = await pictures(board);
  await expect
    .poll(async () => {
      const before = resting;
      await board.frame();
      resting = await pictures(board);
      return resting.draws - before.draws;
    })
    .toBe(0);
  await board.frame();
  expect(await pictures(board)).toEqual(resting);

  await board.page.evaluate(() => {
    const counts = globalThis as unknown as { frames: number };
    counts.frames = 0;
    const count = () => {
      counts.frames += 1;
      requestAnimationFrame(count);
    };
    requestAnimationFrame(count);
  });
  await board.page.keyboard.down('Control');
  for (let i = 0; i < 12; i++) await board.page.mouse.wheel(0, i < 6 ? -120 : 120);
  await board.page.keyboard.up('Control');
  for (let i = 0; i < 12; i++) await board.page.mouse.wheel(40, 25);
  await board.frame();
  const frames = await board.page.evaluate(() => (globalThis as unknown as { frames: number }).frames);
  const moved = await pictures(board);
  expect(moved.decodes).toBe(1);
  expect(moved.draws - resting.draws).toBeGreaterThan(2);
  expect(moved.draws - resting.draws).toBeLessThanOrEqual(frames + 1);
});

test('a drawing in DXF brings its own scale, and one in SVG leaves its script behind', async ({ board }) => {
  await board.open('?new');
  const line = [0, 'LINE', 8, '0', 10, 0, 20, 0, 11, 6000, 21, 3000];
  const header = [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC'];
  const dxf = [...header, 0, 'SECTION', 2, 'ENTITIES', ...line, 0, 'ENDSEC', 0, 'EOF'].join('\n');
  await choose(board, { name: 'plan.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from(dxf) });
  await place(board);
  const svg =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><script>alert(1)</script><path stroke="#000" d="M0 0 9 9"/></svg>';
  await choose(board, { name: 'plan.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(svg) });
  await board.page.getByRole('button', { name: 'Place', exact: true }).click();
  await expect(board.page.getByRole('alertdialog')).toContainText('left out of the SVG (1 place)');
  await board.page.getByRole('button', { name: 'Close' }).click();
  await shown(board, 2);
  const [drawn, clean] = await underlays(board);
  expect((drawn?.scale ?? 0) * (drawn?.size?.[0] ?? 0)).toBeCloseTo(6 * 1.02, 2);
  expect(Buffer.from(clean?.image.split(',')[1] ?? '', 'base64').toString()).not.toContain('script');
});

test('a file dropped on a section is laid under that section', async ({ board }) => {
  await board.open('?new');
  const bytes = [...pngBytes(300, 200, plan(300, 200))];
  const data = await board.page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([new Uint8Array(content)], 'section.png', { type: 'image/png' }));
    return transfer;
  }, bytes);
  const section = board.page.locator('[data-sheet^="section"]').first();
  const sheet = await section.getAttribute('data-sheet');
  await section.dispatchEvent('dragover', { dataTransfer: data });
  await section.dispatchEvent('drop', { dataTransfer: data });
  await place(board);
  expect((await underlays(board)).map((each) => [each.name, each.sheet])).toEqual([['section.png', sheet]]);
});

test('a file that is no picture is refused in words, and nothing changes', async ({ board }) => {
  await board.open('?new');
  const before = await board.seen();
  const { page } = board;
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const choosing = page.waitForEvent('filechooser');
  await page.getByRole('menuitem', { name: /Place an underlay/ }).click();
  await (await choosing).setFiles({ name: 'plan.png', mimeType: 'image/png', buffer: Buffer.from('words') });
  await expect(page.getByRole('alertdialog')).toContainText(
    'plan.png is none of PNG, JPEG, SVG, PDF and DXF',
  );
  expect(await board.seen()).toEqual(before);
});

test('the list of underlays works and has no fault in either theme', async ({ board }) => {
  const noFault = async (where: string) => {
    for (const theme of ['light', 'dark'] as const) {
      await board.theme(theme);
      expect(await board.accessibilityFaults(), `${where}, ${theme}`).toEqual([]);
    }
  };
  await board.open('?new');
  const file = { name: 'plan.png', mimeType: 'image/png', buffer: pngBytes(600, 400, plan(600, 400)) };
  await choose(board, file);
  await noFault('before it is placed');
  await place(board);
  await board.page.keyboard.press('Escape');
  const { page } = board;
  await page.getByRole('button', { name: 'Underlays', exact: true }).click();
  const card = page.getByRole('group', { name: 'plan.png' });
  await card.getByText('Locked').click();
  await card.getByRole('slider', { name: 'Opacity' }).press('ArrowRight');
  const [changed] = await underlays(board);
  expect([changed?.locked, changed?.opacity]).toEqual([false, expect.closeTo(0.65, 9)]);
  await card.getByRole('textbox', { name: 'Width of the whole picture' }).fill('6 m');
  await page.keyboard.press('Enter');
  expect((await underlays(board))[0]?.scale).toBeCloseTo(0.01, 9);
  await noFault('the list');

  await card.getByRole('button', { name: 'Move', exact: true }).click();
  const [at0] = await underlays(board);
  const grip: Vec3 = [(at0?.at[0] ?? 0) + 1, (at0?.at[1] ?? 0) + 1, 0];
  await board.drag('floor', grip, [grip[0] + 0.5, grip[1], 0]);
  const [moved] = await underlays(board);
  expect((moved?.at[0] ?? 0) - (at0?.at[0] ?? 0)).toBeCloseTo(0.5, 1);
  expect((await board.seen()).undoLabel).toBe('move underlay');

  await page.getByRole('button', { name: 'Underlays', exact: true }).click();
  await page.getByRole('button', { name: 'Remove plan.png' }).click();
  expect(await underlays(board)).toEqual([]);
  for (let i = 0; i < 6; i++) await page.keyboard.press('Control+z');
  expect((await board.seen()).undoLabel).toBeNull();
});
