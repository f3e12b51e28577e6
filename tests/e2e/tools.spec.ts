import type { Vec3 } from '../../src/graph/document.ts';
import { type BoardPage, expect, test } from './support.ts';

/** The example's second turn, in the corner, with the leg that runs north from it to the cap. */
async function corner(board: BoardPage) {
  const { job, schemeId } = await board.seen();
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  const [turn, cap] = [scheme?.nodes[2], scheme?.nodes[3]];
  if (!turn || !cap) throw new Error('the example has a second turn and a cap');
  return { turn, cap, middle: [turn.at[0], (turn.at[1] + cap.at[1]) / 2, turn.at[2]] as Vec3 };
}

const off = (at: Vec3, u: number, v: number): Vec3 => [at[0] + u, at[1] + v, at[2]];

async function key(board: BoardPage, ...keys: string[]): Promise<void> {
  for (const each of keys) await board.page.keyboard.press(each);
}

async function group(board: BoardPage, name: string, tool: string): Promise<void> {
  await board.page.getByRole('button', { name }).click();
  await board.page.getByRole('menuitem', { name: tool }).click();
}

/** Two clicks this far apart are no double click, however fast the machine is; ms. */
const apart = 500;

/** Real touches, which make pointer events of a finger. */
async function hand(board: BoardPage) {
  const cdp = await board.page.context().newCDPSession(board.page);
  return {
    touch: (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: { x: number; y: number }[]) =>
      cdp.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: points.map((point, id) => ({ ...point, id })),
      }),
    pen: (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', at: { x: number; y: number }) =>
      cdp.send('Input.dispatchMouseEvent', {
        type,
        ...at,
        pointerType: 'pen',
        button: 'left',
        buttons: type === 'mouseReleased' ? 0 : 1,
        clickCount: 1,
      }),
  };
}

test('a block is drawn by two clicks, resized by a grip, renamed in place and deleted', async ({ board }) => {
  await board.open('?new');
  await group(board, 'Room', 'Draw a block');
  await board.click('floor', [1, 1, 0]);
  await board.click('floor', [1.9, 1.6, 0]);
  const drawn = (await board.seen()).job.blocks[0];
  expect(drawn?.kind).toBe('chase');
  expect((await board.seen()).undoLabel).toBe('draw chase');

  const east = drawn?.max[0] ?? 0;
  const middle = ((drawn?.min[1] ?? 0) + (drawn?.max[1] ?? 0)) / 2;
  await board.drag('floor', [east, middle, 0], [east + 0.5, middle, 0]);
  const resized = (await board.seen()).job.blocks[0];
  expect(resized?.max[0]).toBeGreaterThan(east + 0.3);
  expect(resized?.min).toEqual(drawn?.min);

  await key(board, 'Enter');
  await board.page.getByLabel('Name of the block').fill('Pantry');
  await key(board, 'Enter');
  expect((await board.seen()).job.blocks[0]?.name).toBe('Pantry');
  await key(board, 'Delete');
  expect((await board.seen()).job.blocks).toEqual([]);
});

test('the kind of a block is chosen with the mouse, and kept', async ({ board }) => {
  await board.open('?new');
  await group(board, 'Room', 'Draw a block');
  await board.page.getByRole('button', { name: 'Block: Chase' }).click();
  await board.page.getByRole('menuitemradio', { name: 'Window or door' }).click();
  await board.drag('floor', [1, 1, 0], [1.9, 1.6, 0]);
  expect((await board.seen()).job.blocks[0]?.kind).toBe('window');
  await board.open('?new');
  await group(board, 'Room', 'Draw a block');
  await expect(board.page.getByRole('button', { name: 'Block: Window or door' })).toBeVisible();
});

test('joists are drawn and repeated with typed numbers', async ({ board }) => {
  await board.open('?new');
  await board.page.locator('[data-sheet="floor"]').focus();
  await key(board, 'b', 'Tab', 'Tab', 'Tab');
  await board.click('floor', [0.5, 0.5, 0]);
  await board.click('floor', [0.5, 2, 0]);
  await board.page.keyboard.type('4');
  await key(board, 'Tab');
  await board.page.keyboard.type('16"');
  await key(board, 'Enter');
  const { job, undoLabel } = await board.seen();
  expect(job.blocks).toHaveLength(5);
  const [first, second] = job.blocks;
  expect((second?.min[0] ?? 0) - (first?.min[0] ?? 0)).toBeCloseTo(16 * 0.0254, 9);
  expect(undoLabel).toBe('repeat joist');
});

test('an exit face is drawn along a wall', async ({ board }) => {
  await board.open('?new');
  await group(board, 'Room', 'Draw an exit face');
  await board.drag('floor', [0.5, 2, 0], [2.5, 2, 0]);
  expect((await board.seen()).job.exits).toHaveLength(1);
});

test('the arc of a bend is dragged to a larger radius, which delivers more air', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  await board.click('floor', turn.at);
  const before = await board.seen();
  const bend = before.bends.find(({ node }) => node === turn.id);
  if (!bend) throw new Error('the corner is a bend');
  const [a, b] = [await board.screenOf('floor', [0, 0, 0]), await board.screenOf('floor', [1, 0, 0])];
  const reach = Math.max(bend.radius * (Math.SQRT2 - 1), 15 / (b.x - a.x)) / Math.SQRT2;
  const grip = off(turn.at, -reach, reach);
  await board.drag('floor', grip, off(grip, -0.1, 0.1));
  const after = await board.seen();
  const made = after.bends.find(({ node }) => node === turn.id);
  expect(made?.radius).toBeGreaterThan(bend.radius);
  expect(after.flow).toBeGreaterThan(before.flow ?? 0);
  expect(after.undoLabel).toBe('reshape bend');
  await key(board, 'Control+z');
  expect((await board.seen()).job).toEqual(before.job);
});

test('a radius is typed for the selected turn', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  await board.click('floor', turn.at);
  await key(board, 'r');
  await board.page.keyboard.type('2D');
  await key(board, 'Enter');
  const { bends } = await board.seen();
  expect(bends.find(({ node }) => node === turn.id)?.radiusRatio).toBeCloseTo(2, 9);
});

test('a part is placed on a leg, dragged along it and deleted', async ({ board }) => {
  await board.open('?example');
  const { middle } = await corner(board);
  const fittings = async () => (await board.seen()).job.schemes[0]?.segments[2]?.fittings ?? [];
  await group(board, 'Change the run', 'Place a part in line');
  await board.click('floor', middle);
  const [placed] = await fittings();
  expect(placed?.kind).toBe('backdraught-damper');
  await board.drag('floor', middle, off(middle, 0, 0.6));
  const [moved] = await fittings();
  expect((moved?.at ?? 0) - (placed?.at ?? 0)).toBeGreaterThan(0.4);
  await key(board, 'Delete');
  expect(await fittings()).toEqual([]);
});

test('a run is split at a turn and joined again', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  const count = async () => (await board.seen()).job.schemes[0]?.nodes.length ?? 0;
  const before = await count();
  await board.page.locator('[data-sheet="floor"]').focus();
  await key(board, 's');
  await board.click('floor', turn.at);
  expect(await count()).toBe(before + 1);
  await key(board, 'j');
  await board.click('floor', turn.at);
  await board.page.waitForTimeout(apart);
  await board.click('floor', turn.at);
  expect(await count()).toBe(before);
  expect((await board.seen()).undoLabel).toBe('join ends');
});

test('a branch starts in the middle of a leg', async ({ board }) => {
  await board.open('?example');
  const { middle } = await corner(board);
  await board.tool('Draw duct');
  await board.drag('floor', middle, off(middle, -0.8, 0));
  await key(board, 'Escape');
  const { segments, undoLabel } = await board.seen();
  expect(segments).toHaveLength(5);
  expect(undoLabel).toBe('draw leg');
});

test('dimensions are chained, a note is typed and a distance measured', async ({ board }) => {
  await board.open('?example');
  const { turn, cap } = await corner(board);
  await group(board, 'Dimensions and notes', 'Dimension');
  await board.click('floor', turn.at);
  await board.click('floor', cap.at);
  await board.click('floor', off(turn.at, -0.9, 1.5));
  await key(board, 'Enter');
  const { job } = await board.seen();
  expect(job.schemes[0]?.dimensions).toEqual([
    expect.objectContaining({ along: 'v', from: { node: turn.id }, to: { node: cap.id } }),
  ]);

  await key(board, 'w');
  await board.click('floor', [1, 2.4, 0]);
  await board.page.keyboard.type('Ask the builder');
  await key(board, 'Enter');
  expect((await board.seen()).job.sheetNotes).toEqual([expect.objectContaining({ text: 'Ask the builder' })]);

  const { job: before } = await board.seen();
  await key(board, 'q');
  await board.click('floor', turn.at);
  await board.click('floor', cap.at);
  await expect(board.page.locator('.tool-hint')).toContainText("11'-7");
  expect((await board.seen()).job).toEqual(before);
});

test('a length is typed over its number on the sheet, as a step too', async ({ board }) => {
  await board.open('?example');
  const { middle } = await corner(board);
  await board.click('floor', middle);
  const length = async () => (await board.seen()).segments[2]?.length ?? 0;
  const before = await length();
  await key(board, 'Enter');
  const field = board.page.getByLabel(/^Length of/);
  const box = await field.boundingBox();
  await field.fill('six feet');
  await key(board, 'Enter');
  await expect(board.page.getByRole('alert')).toContainText('six feet');
  await key(board, 'Escape');
  await expect(field).toHaveCount(0);
  expect(await length()).toBe(before);

  if (!box) throw new Error('the field was on the screen');
  await board.page.mouse.dblclick(box.x + box.width / 2, box.y + box.height / 2);
  await field.fill('-6"');
  await key(board, 'Enter');
  expect(await length()).toBeCloseTo(before - 6 * 0.0254, 9);
  expect((await board.seen()).undoLabel).toBe('set length');
});

test('a turn is moved by a typed distance with the keyboard alone', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  await board.click('floor', turn.at);
  await key(board, 'm');
  await board.page.keyboard.type('6"');
  await key(board, 'ArrowLeft', 'Enter');
  const moved = (await board.seen()).job.schemes[0]?.nodes[2];
  expect(moved?.at[0]).toBeCloseTo(turn.at[0] - 6 * 0.0254, 9);
});

test('what lies behind is taken by a second click, and is named', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  await board.click('floor', turn.at);
  const first = (await board.seen()).selection;
  await board.page.waitForTimeout(apart);
  await board.click('floor', turn.at);
  expect((await board.seen()).selection).not.toEqual(first);
  await expect(board.page.locator('.tool-hint')).toContainText(/2 of \d here/);
});

test('a right click and Shift+F10 open the menu of what is there', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  const { x, y } = await board.screenOf('floor', turn.at);
  await board.page.mouse.click(x, y, { button: 'right' });
  await expect(board.page.getByRole('menu')).toBeVisible();
  expect((await board.seen()).selection.nodes).toEqual([turn.id]);
  await key(board, 'Escape');
  await expect(board.page.getByRole('menu')).toHaveCount(0);
  await board.page.locator('[data-sheet="floor"]').focus();
  await key(board, 'Shift+F10');
  await expect(board.page.getByRole('menu')).toBeVisible();
});

test('a finger taps to select, rests for the menu and draws a block', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  const { touch } = await hand(board);
  const at = await board.screenOf('floor', turn.at);
  const beside = { x: at.x + 12, y: at.y - 12 };
  // Not one after the other: a finger that stays for long is another gesture.
  await Promise.all([touch('touchStart', beside), touch('touchEnd')]);
  expect((await board.seen()).selection.nodes).toEqual([turn.id]);

  await touch('touchStart', at);
  await expect(board.page.getByRole('menu')).toBeVisible();
  await touch('touchEnd');
  await key(board, 'Escape');
  await expect(board.page.getByRole('menu')).toHaveCount(0);

  const count = (await board.seen()).job.blocks.length;
  await board.page.locator('[data-sheet="floor"]').focus();
  await key(board, 'b');
  const [a, b] = [await board.screenOf('floor', [0.5, 2.6, 0]), await board.screenOf('floor', [1.4, 3.2, 0])];
  await touch('touchStart', a);
  await touch('touchMove', { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  await touch('touchMove', b);
  await board.frame();
  await touch('touchEnd');
  const { job, undoLabel } = await board.seen();
  expect(job.blocks).toHaveLength(count + 1);
  expect(undoLabel).toBe('draw chase');
});

test('a pen moves a turn while the palm rests on the paper', async ({ board }) => {
  await board.open('?example');
  const { turn } = await corner(board);
  const { touch, pen } = await hand(board);
  const from = await board.screenOf('floor', turn.at);
  const to = await board.screenOf('floor', off(turn.at, -0.4, 0));
  await pen('mouseMoved', from);
  await pen('mousePressed', from);
  await touch('touchStart', { x: from.x - 60, y: from.y - 160 });
  await pen('mouseMoved', { x: (from.x + to.x) / 2, y: from.y });
  await pen('mouseMoved', to);
  await board.frame();
  await touch('touchEnd');
  await pen('mouseReleased', to);
  const { job, undoLabel } = await board.seen();
  expect(job.schemes[0]?.nodes[2]?.at[0]).toBeLessThan(turn.at[0] - 0.3);
  expect(undoLabel).toBe('move turn');
});

test('tools, fields on the sheet and details of the room have no fault in either theme', async ({
  board,
}) => {
  await board.page.setViewportSize({ width: 1024, height: 768 });
  await board.open('?example');
  // A job's title is as long as people make it; in a narrow window it ends in dots.
  const cutOff = async () => (await board.layoutFaults()).filter((fault) => !fault.includes('Job title'));
  const noFault = async (where: string) => {
    for (const theme of ['light', 'dark'] as const) {
      await board.theme(theme);
      expect(await board.accessibilityFaults(), `${where}, ${theme}`).toEqual([]);
    }
  };
  await board.page.getByRole('button', { name: 'Dimensions and notes' }).click();
  await expect(board.page.getByRole('menuitem', { name: 'Pin a note' })).toBeVisible();
  await noFault('a menu of tools');
  await key(board, 'Escape');
  await expect(board.page.getByRole('menu')).toHaveCount(0);

  const { middle } = await corner(board);
  await board.click('floor', middle);
  await key(board, 'Enter');
  await board.page.getByLabel(/^Length of/).fill('six');
  await key(board, 'Enter');
  await expect(board.page.getByRole('alert')).toBeVisible();
  await noFault('a field on the sheet');
  await key(board, 'Escape');
  await expect(board.page.getByLabel(/^Length of/)).toHaveCount(0);

  await key(board, 'b');
  await board.drag('floor', [0.4, 2.6, 0], [1.4, 3.3, 0]);
  await board.page.getByRole('tab', { name: 'Selected' }).click();
  await expect(board.page.getByLabel('North–south')).toBeVisible();
  await noFault('a block');
  expect(await cutOff()).toEqual([]);
  await board.page.getByLabel('Height', { exact: true }).fill("5'");
  await key(board, 'Enter');
  const block = (await board.seen()).job.blocks.at(-1);
  expect((block?.max[2] ?? 0) - (block?.min[2] ?? 0)).toBeCloseTo(5 * 0.3048, 9);
});
