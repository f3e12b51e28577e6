import { type BoardPage, expect, test } from './support.ts';

const layers = ['background', 'ducts', 'overlay', 'active'] as const;

/** Counts how often each canvas of the page is cleared, which every drawing of a layer begins with. */
async function countDraws(board: BoardPage): Promise<void> {
  await board.page.addInitScript(() => {
    const draws: Record<string, number> = {};
    const clear = CanvasRenderingContext2D.prototype.clearRect;
    CanvasRenderingContext2D.prototype.clearRect = function (...rect) {
      const view = this.canvas.closest<HTMLElement>('[data-sheet], [data-view]');
      if (view) {
        const name = view.dataset.sheet ?? view.dataset.view;
        const index = [...view.querySelectorAll('canvas')].indexOf(this.canvas);
        const key = `${name} ${index}`;
        draws[key] = (draws[key] ?? 0) + 1;
      }
      clear.apply(this, rect);
    };
    Object.assign(globalThis, { draws });
  });
}

/** How often each layer of a sheet has been drawn since it was asked for last. */
async function drawn(board: BoardPage, sheet: string): Promise<Record<string, number>> {
  const counts = await board.page.evaluate((name) => {
    const { draws } = globalThis as unknown as { draws: Record<string, number> };
    const mine = [0, 1, 2, 3].map((index) => draws[`${name} ${index}`] ?? 0);
    for (const index of [0, 1, 2, 3]) draws[`${name} ${index}`] = 0;
    return mine;
  }, sheet);
  return Object.fromEntries(layers.map((layer, i) => [layer, counts[i] ?? 0]));
}

async function arrange(board: BoardPage, name: string): Promise<void> {
  await board.page.getByRole('radio', { name, exact: true }).click();
  await board.frame();
}

const settings = (board: BoardPage) =>
  board.page.evaluate(() => {
    const { section, workingHeight, sectionDepth, selection, hover } = globalThis.gentlebend.state();
    return { section, workingHeight, sectionDepth, selection, hover };
  });

test('a page that is left alone draws nothing', async ({ board }) => {
  await countDraws(board);
  await board.open('?example');
  await arrange(board, 'Three sheets and the isometric');
  await expect(board.page.locator('[data-proposal=combination]').first()).toBeVisible();
  const views = ['floor', 'section-x', 'section-y', 'isometric'];
  /** What is drawn in the time of so many frames. */
  const drawnIn = async (frames: number) => {
    for (const view of views) await drawn(board, view);
    for (let i = 0; i < frames / 2; i += 1) await board.frame();
    const counts: Record<string, number>[] = [];
    for (const view of views) counts.push(await drawn(board, view));
    return counts;
  };
  const nothing = views.map(() => ({ background: 0, ducts: 0, overlay: 0, active: 0 }));
  await expect.poll(() => drawnIn(10), 'it comes to rest').toEqual(nothing);
  expect(await drawnIn(60), 'and stays so').toEqual(nothing);
});

test('a drag draws each frame what moves once, and never what is behind it; pointing draws the overlay alone', async ({
  board,
}) => {
  await countDraws(board);
  await board.open('?example');
  const { bends, job } = await board.seen();
  const node = job.schemes[0]?.nodes.find(({ id }) => id === bends.at(-1)?.node);
  if (!node) throw new Error('the example has a turn');
  const at = await board.screenOf('floor', node.at);

  await board.page.mouse.move(at.x + 60, at.y + 60);
  await board.frame();
  await drawn(board, 'floor');
  await board.page.mouse.move(at.x, at.y);
  await board.frame();
  expect(await drawn(board, 'floor')).toMatchObject({ background: 0, ducts: 0, overlay: 1 });

  await board.page.mouse.down();
  await board.page.mouse.move(at.x + 12, at.y);
  await board.frame();
  await drawn(board, 'floor');
  const solves = () => board.page.evaluate(() => globalThis.gentlebend.stats().solves);
  const before = await solves();
  const frames = 6;
  for (let i = 1; i <= frames; i += 1) {
    await board.page.mouse.move(at.x + 12 + 20 * i, at.y);
    await board.frame();
  }
  expect(await drawn(board, 'floor')).toEqual({
    background: 0,
    ducts: frames,
    overlay: frames,
    active: frames,
  });
  expect((await solves()) - before).toBe(frames);
  await board.page.keyboard.press('Escape');
  await board.page.mouse.up();
});

test('the views are arranged as a person chose, also after a reload', async ({ board }) => {
  await board.open('?example');
  const frames = board.page.locator('.sheet-frame');
  await expect(frames).toHaveCount(2);
  await arrange(board, 'Three sheets');
  await expect(frames).toHaveCount(3);
  await arrange(board, 'Three sheets and the isometric');
  await expect(frames).toHaveCount(4);
  await board.reload();
  await expect(frames).toHaveCount(4);
});

test('the section that shows most of the route comes first, until a person picks one', async ({ board }) => {
  await board.open('?example');
  expect((await settings(board)).section).toBe('section-y');
  await board.page.getByRole('radio', { name: /looking north/ }).click();
  for (const { name } of (await board.seen()).job.schemes) {
    await board.page.getByText(name).first().click();
    expect((await settings(board)).section).toBe('section-x');
  }
});

test('what is clicked in the isometric is selected in every view, and turning it changes no document', async ({
  board,
}) => {
  await board.open('?example');
  const before = await board.seen();
  await arrange(board, 'Three sheets and the isometric');
  const picture = board.page.locator('[data-view="isometric"]');
  await board.settled();
  const box = await picture.boundingBox();
  if (!box) throw new Error('the isometric is on the screen');
  const hovered = async () => {
    const { hover } = await settings(board);
    return hover.nodes.length + hover.segments.length;
  };
  let found = false;
  for (let y = 0.2; y < 0.9 && !found; y += 0.04) {
    for (let x = 0.2; x < 0.8 && !found; x += 0.04) {
      await board.page.mouse.move(box.x + box.width * x, box.y + box.height * y);
      found = (await hovered()) > 0;
    }
  }
  expect(found).toBe(true);
  const { hover } = await settings(board);
  await board.page.mouse.down();
  await board.page.mouse.up();
  const { selection } = await settings(board);
  expect([selection.nodes, selection.segments]).toEqual([hover.nodes, hover.segments]);

  const head = board.page.getByRole('heading', { name: /^Isometric/ });
  await expect(head).toContainText('from the south-east, 35° above');
  await picture.focus();
  await board.page.keyboard.press('ArrowRight');
  await board.page.keyboard.press('ArrowRight');
  await board.page.keyboard.press('ArrowUp');
  await expect(head).toContainText('from the south, 50° above');
  await board.page.mouse.move(box.x + 30, box.y + 30);
  await board.page.mouse.down();
  await board.page.mouse.move(box.x + 130, box.y + 30, { steps: 5 });
  await board.page.mouse.up();
  await expect(head).not.toContainText('from the south, 50°');
  await board.page.mouse.dblclick(box.x + 30, box.y + 30);
  await expect(head).toContainText('from the south-east, 35° above');
  const after = await board.seen();
  expect([after.job, after.undoLabel]).toEqual([before.job, before.undoLabel]);
});

test('the working height is typed on the floor sheet, dragged on a section, and what is drawn stands at it', async ({
  board,
}) => {
  await board.open('?new');
  const field = board.page.getByRole('textbox', { name: 'Working height' });
  await field.fill('6\' 8 1/2"');
  await field.press('Enter');
  expect((await settings(board)).workingHeight).toBeCloseTo(80.5 * 0.0254, 12);
  await field.fill('high');
  await field.press('Enter');
  await expect(board.page.getByText(/"high" is not a length|“high” is not a length/)).toBeVisible();
  await field.press('Escape');

  const mark = board.page.getByRole('slider', { name: 'Working height' });
  await board.settled();
  const box = await mark.boundingBox();
  if (!box) throw new Error('the mark is on the section');
  await board.page.mouse.move(box.x + 8, box.y + box.height / 2);
  await board.page.mouse.down();
  await board.page.mouse.move(box.x + 8, box.y + box.height / 2 - 60, { steps: 4 });
  await board.page.mouse.up();
  const { workingHeight } = await settings(board);
  expect(workingHeight).toBeGreaterThan(80.5 * 0.0254 + 0.1);

  await board.tool('Draw duct');
  await board.click('floor', [0.6096, 0.6096, 0]);
  await board.click('floor', [1.8288, 0.6096, 0]);
  await board.page.keyboard.press('Escape');
  const { job } = await board.seen();
  expect(job.schemes[0]?.nodes.map(({ at }) => at[2])).toEqual([
    expect.closeTo(workingHeight, 9),
    expect.closeTo(workingHeight, 9),
  ]);
});

test('a section is cut by a typed place, by dragging its line on the floor, and shows all again', async ({
  board,
}) => {
  await board.open('?example');
  const field = board.page.getByRole('textbox', { name: 'Cut at x' });
  await field.fill("6'");
  await field.press('Enter');
  const depth = async () => (await settings(board)).sectionDepth['section-y'];
  expect(await depth()).toBeCloseTo(6 * 0.3048, 12);

  const line = board.page.getByRole('slider', { name: 'Cut looking west' });
  await board.settled();
  const box = await line.boundingBox();
  if (!box) throw new Error('the line is on the floor');
  await board.page.mouse.move(box.x + box.width / 2, box.y + 10);
  await board.page.mouse.down();
  await board.page.mouse.move(box.x + box.width / 2 + 50, box.y + 10, { steps: 4 });
  await board.page.mouse.up();
  expect(await depth()).toBeGreaterThan(6 * 0.3048 + 0.1);
  await expect(field).not.toHaveValue('all');

  const cut = await depth();
  await line.focus();
  await board.page.keyboard.press('ArrowLeft');
  expect(await depth()).toBeLessThan(cut ?? 0);
  await board.page.keyboard.press('Delete');
  expect(await depth()).toBeNull();
  await expect(field).toHaveValue('all');
  expect((await board.seen()).undoLabel).toBeNull();
});

test('every arrangement fits in both themes at both sizes, and axe finds no fault', async ({ board }) => {
  await board.open('?example');
  for (const name of ['Two sheets', 'Three sheets', 'Three sheets and the isometric']) {
    await arrange(board, name);
    expect(await board.faultsInEveryLook(name)).toEqual([]);
  }
});
