import { readFileSync } from 'node:fs';
import { DOMParser } from '@xmldom/xmldom';
import DxfParser, { type ILineEntity } from 'dxf-parser';
import { PNG } from 'pngjs';
import { type BoardPage, expect, test } from './support.ts';

async function asked(board: BoardPage) {
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: 'Save a drawing…' }).click();
  const dialog = board.page.getByRole('dialog', { name: 'Save a drawing' });
  await expect(dialog.getByRole('img', { name: /^Preview/ })).toBeVisible();
  return dialog;
}

type Dialog = Awaited<ReturnType<typeof asked>>;

async function chosen(board: BoardPage, dialog: Dialog, field: string, option: string) {
  await dialog.getByRole('button', { name: field }).click();
  await board.page.getByRole('option', { name: option }).click();
}

async function saved(board: BoardPage, dialog: Dialog, format: string) {
  const download = board.page.waitForEvent('download');
  await dialog.getByRole('button', { name: `Save ${format}` }).click();
  const file = await download;
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

test('an SVG of all sheets is saved, and is a drawing with the job’s title', async ({ board }) => {
  await board.open('?example');
  const dialog = await asked(board);
  const { name, bytes } = await saved(board, dialog, 'SVG');
  expect(name).toBe('invented-example-kitchen-all.svg');
  const root = new DOMParser().parseFromString(bytes.toString('utf8'), 'text/xml').documentElement;
  expect(root?.getAttribute('width')).toMatch(/^\d+(\.\d+)?mm$/);
  expect(root?.getElementsByTagName('title')[0]?.textContent).toBe(
    'Invented example kitchen: Out the north wall',
  );
  await expect(dialog).toBeHidden();
});

test('an SVG carries its font along, and a page that has none shows its letters in it', async ({ board }) => {
  await board.open('?example');
  let dialog = await asked(board);
  const withFont = (await saved(board, dialog, 'SVG')).bytes.toString('utf8');
  dialog = await asked(board);
  await dialog.getByText('Take the font along', { exact: false }).click();
  const without = (await saved(board, dialog, 'SVG')).bytes.toString('utf8');
  expect(withFont.match(/@font-face/g)?.length).toBeGreaterThan(0);
  expect(without).not.toContain('@font-face');
  const added = (withFont.length - without.length) / 1000;
  expect(added).toBeGreaterThan(50);
  expect(added).toBeLessThan(80);
  const elsewhere = await board.page.context().newPage();
  await elsewhere.setContent(withFont.replace(/^<\?xml[^>]*>/, ''));
  const loaded = await elsewhere.evaluate(async () => {
    const faces = await document.fonts.load('500 12px "Inter Variable"', 'Duct 8');
    return faces.map(({ status }) => status);
  });
  expect(loaded).toEqual(['loaded']);
});

test('a DXF of all sheets is saved, with every leg of the run in space', async ({ board }) => {
  await board.open('?example');
  const { segments, job } = await board.seen();
  const dialog = await asked(board);
  await dialog.getByText('DXF', { exact: true }).click();
  const { name, bytes } = await saved(board, dialog, 'DXF');
  expect(name).toBe('invented-example-kitchen-all.dxf');
  const read = new DxfParser().parseSync(bytes.toString('utf8'));
  expect(read?.header.$INSUNITS).toBe(4);
  const lines = (read?.blocks['RUN-3D']?.entities ?? []) as ILineEntity[];
  const nodes = new Map(job.schemes[0]?.nodes.map(({ id, at }) => [id, at]));
  const wanted = segments.map(({ from, to }) =>
    [from, to].map((id) => nodes.get(id)?.map((metres) => expect.closeTo(metres * 1000, 4))),
  );
  expect(lines.map(({ vertices }) => vertices.map(({ x, y, z }) => [x, y, z]))).toEqual(wanted);
});

test('a PNG is saved at the resolution that was typed, with ink on its paper and its size on it', async ({
  board,
}) => {
  await board.open('?example');
  const dialog = await asked(board);
  await dialog.getByText('PNG', { exact: true }).click();
  await chosen(board, dialog, 'Sheet', 'Floor');
  await chosen(board, dialog, 'Scale', '1 : 48 (');
  const field = dialog.getByLabel('Resolution');
  await field.fill('200 dpi');
  await field.press('Enter');
  const said = /([\d,]+) × ([\d,]+) pixels/.exec((await dialog.getByText(/\d pixels/).textContent()) ?? '');
  const { name, bytes } = await saved(board, dialog, 'PNG');
  expect(name).toBe('invented-example-kitchen-floor.png');
  const { width, height, data } = PNG.sync.read(bytes, { checkCRC: true });
  expect([width, height].map(String)).toEqual(said?.slice(1).map((figure) => figure.replace(',', '')));
  expect(bytes.indexOf('pHYs')).toBe(37);
  expect(bytes.readUInt32BE(41)).toBe(Math.round(200 / 0.0254));
  const at = (x: number, y: number) => [...data.subarray(4 * (y * width + x), 4 * (y * width + x) + 3)];
  expect(at(2, 2)).toEqual([255, 255, 255]);
  const coloured = (y: number) =>
    Array.from({ length: width }, (_, x) => at(x, y)).some(([r = 0, , b = 0]) => Math.abs(r - b) > 40);
  expect(coloured(Math.round(height / 3))).toBe(true);
});

test('a see-through PNG has no paper, and is said to be too large where it is', async ({ board }) => {
  await board.open('?example');
  const dialog = await asked(board);
  await dialog.getByText('PNG', { exact: true }).click();
  await dialog.getByText('See-through', { exact: true }).click();
  const field = dialog.getByLabel('Resolution');
  await chosen(board, dialog, 'Scale', '1 : 4 (3" = 1\'-0")');
  await field.fill('1200');
  await field.press('Enter');
  await expect(dialog.getByRole('alert')).toContainText('more pixels than a browser can draw');
  await expect(dialog.getByRole('button', { name: 'Save PNG' })).toBeDisabled();
  await chosen(board, dialog, 'Scale', '1 : 96 (');
  await field.fill('100');
  await field.press('Enter');
  const { bytes } = await saved(board, dialog, 'PNG');
  const { data } = PNG.sync.read(bytes, { checkCRC: true });
  expect(data[3]).toBe(0);
  expect(data.some((value, i) => i % 4 === 3 && value === 255)).toBe(true);
});

test('a job without duct says what to do first', async ({ board }) => {
  await board.open('?new');
  await board.page.getByRole('button', { name: 'File' }).click();
  await board.page.getByRole('menuitem', { name: 'Save a drawing…' }).click();
  const dialog = board.page.getByRole('dialog', { name: 'Save a drawing' });
  await expect(dialog).toContainText('There is no duct to draw yet');
  await expect(dialog.getByRole('button', { name: 'Save SVG' })).toBeDisabled();
});

test('the dialog stands whole in both themes at both sizes, has no fault that axe finds, and closes by Escape', async ({
  board,
}) => {
  await board.open('?example');
  const dialog = await asked(board);
  await dialog.getByText('PNG', { exact: true }).click();
  await board.inEveryLook(async (look) => {
    const overflow = await dialog.evaluate((box) => {
      const { left, top, right, bottom } = box.getBoundingClientRect();
      const outside = left < 0 || top < 0 || right > innerWidth || bottom > innerHeight;
      const cut = [box, ...box.querySelectorAll('button, input, p')].filter(
        (one) => one.clientWidth > 1 && one.scrollWidth > one.clientWidth + 1,
      );
      return {
        outside,
        cut: cut.map((one) => one.textContent),
        scrolls: box.scrollHeight > box.clientHeight + 1,
      };
    });
    expect(overflow, look).toEqual({ outside: false, cut: [], scrolls: false });
    expect(await board.accessibilityFaults(), look).toEqual([]);
  });
  await board.page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});
