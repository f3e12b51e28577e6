import type { Vec3 } from '../../src/graph/document.ts';
import { type BoardPage, expect, test } from './support.ts';

const foot = 0.3048;
const start: Vec3 = [2 * foot, 2 * foot, 0];

async function startRun(board: BoardPage): Promise<void> {
  await board.open('?new');
  await board.tool('Draw duct');
  await board.click('floor', start);
}

async function nodes(board: BoardPage) {
  return (await board.seen()).job.schemes[0]?.nodes ?? [];
}

test('a typed length is drawn exactly, and a riser by its typed height', async ({ board }) => {
  await startRun(board);
  await board.pointAt('floor', [5 * foot, 2 * foot, 0]);
  await board.page.keyboard.type('3\' 4 1/2"');
  await board.page.keyboard.press('Enter');
  await board.page.keyboard.type('u18"');
  await board.page.keyboard.press('Enter');
  const [first, second, third] = await nodes(board);
  expect((second?.at[0] ?? 0) - (first?.at[0] ?? 0)).toBeCloseTo(3.375 * foot, 12);
  expect(second?.at.slice(1)).toEqual(first?.at.slice(1));
  expect((third?.at[2] ?? 0) - (second?.at[2] ?? 0)).toBeCloseTo(1.5 * foot, 12);
});

test('a run is drawn with the keyboard alone from the sheet in focus', async ({ board }) => {
  await board.open('?new');
  await board.tool('Place hood');
  await board.click('floor', start);
  await board.page.locator('[data-sheet="floor"]').focus();
  for (const key of ['d', 'Enter', 'u']) await board.page.keyboard.press(key);
  await board.page.keyboard.type("2'");
  await board.page.keyboard.press('Enter');
  await board.page.keyboard.press('ArrowUp');
  await board.page.keyboard.type("6'");
  await board.page.keyboard.press('Enter');
  await board.page.keyboard.press('c');
  const { segments, bends } = await board.seen();
  expect(segments.map(({ length }) => length)).toEqual([2, 6].map((n) => expect.closeTo(n * foot, 9)));
  expect(bends.map(({ angle }) => angle)).toEqual([expect.closeTo(90, 9)]);
  expect((await nodes(board)).at(-1)?.role).toBe('cap');
});

test('what is typed into a field draws nothing', async ({ board }) => {
  await startRun(board);
  await board.pointAt('floor', [5 * foot, 2 * foot, 0]);
  await board.page.evaluate(() => {
    const field = document.createElement('input');
    document.body.append(field);
    field.focus();
  });
  await board.page.keyboard.type('36');
  await board.page.keyboard.press('Enter');
  expect(await nodes(board)).toEqual([]);
});

test('Control and the wheel zoom to the pointer and leave the page alone', async ({ board }) => {
  await startRun(board);
  const { x, y } = await board.screenOf('floor', start);
  const ratio = await board.page.evaluate(() => devicePixelRatio);
  const size = async () => {
    const [a, b] = [await board.screenOf('floor', [0, 0, 0]), await board.screenOf('floor', [1, 0, 0])];
    return b.x - a.x;
  };
  const scale = await size();
  await board.page.keyboard.down('Control');
  await board.page.mouse.wheel(0, -120);
  await board.page.keyboard.up('Control');
  await board.frame();
  expect(await size()).toBeGreaterThan(scale * 1.1);
  const after = await board.screenOf('floor', start);
  expect(Math.hypot(after.x - x, after.y - y)).toBeLessThan(1);
  expect(await board.page.evaluate(() => devicePixelRatio)).toBe(ratio);
});

test('two fingers pan and zoom, and what one finger had begun is dropped', async ({ board }) => {
  await board.open();
  const { job } = await board.seen();
  const turn = job.schemes[0]?.nodes[1]?.at ?? start;
  const at = await board.screenOf('floor', turn);
  const metre = async () => {
    const [a, b] = [await board.screenOf('floor', [0, 0, 0]), await board.screenOf('floor', [1, 0, 0])];
    return b.x - a.x;
  };
  const scale = await metre();
  const cdp = await board.page.context().newCDPSession(board.page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: { x: number; y: number }[]) =>
    cdp.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: points.map((point, id) => ({ ...point, id })),
    });
  await touch('touchStart', at);
  await touch('touchMove', { x: at.x + 30, y: at.y });
  await board.frame();
  await touch('touchStart', { x: at.x + 30, y: at.y }, { x: at.x + 130, y: at.y });
  await touch('touchMove', { x: at.x, y: at.y }, { x: at.x + 200, y: at.y });
  await board.frame();
  await touch('touchEnd');
  await expect.poll(metre).toBeCloseTo(scale * 2, 1);
  const after = await board.seen();
  expect(after.job).toEqual(job);
  expect(after.undoLabel).toBeNull();
});
