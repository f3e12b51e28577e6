import { type BoardPage, expect, test } from './support.ts';

const openLab = async (board: BoardPage, name = 'Bend lab') => {
  const { page } = board;
  await board.ask(name.toLowerCase(), name);
  await expect(page.getByRole('dialog', { name: 'Bend lab' })).toBeVisible();
};

/** The figures of a page of the lab, as numbers. */
const figures = async ({ page }: BoardPage) => {
  const read = async (id: string) =>
    Number.parseFloat((await page.locator(`[data-figure="${id}"] dd > span`).first().textContent()) ?? '');
  return {
    flow: await read('flow'),
    c: await read('c'),
    equivalent: await read('equivalent'),
    loss: await read('loss'),
    sound: await read('sound'),
  };
};

const radius = ({ page }: BoardPage) => page.getByRole('slider', { name: 'Radius over diameter, r/D' });

const dragGrip = async (board: BoardPage, dx: number, dy: number) => {
  const { page } = board;
  await board.settled();
  const box = await page.locator('[data-grip="radius"]').boundingBox();
  if (!box) throw new Error('the turn has a grip');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps: 8 });
  await page.mouse.up();
  await board.frame();
};

test('pulling the arc outward makes the turn tighter: every figure goes with it, and back', async ({
  board,
}) => {
  await board.open('?example');
  await openLab(board);
  const before = await figures(board);
  await dragGrip(board, 26, 26);
  const tight = await figures(board);
  expect(Number(await radius(board).inputValue())).toBeLessThan(1);
  expect(tight.c).toBeGreaterThan(before.c);
  expect(tight.equivalent).toBeGreaterThan(before.equivalent);
  expect(tight.loss).toBeGreaterThan(before.loss);
  expect(tight.flow).toBeLessThan(before.flow);
  expect(tight.sound).toBeGreaterThan(before.sound);
  await dragGrip(board, -80, -80);
  const gentle = await figures(board);
  expect(Number(await radius(board).inputValue())).toBeGreaterThan(1);
  expect(gentle.c).toBeLessThan(before.c);
  expect(gentle.equivalent).toBeLessThan(before.equivalent);
  expect(gentle.flow).toBeGreaterThan(before.flow);
});

test('the slider changes the radius by keys, and the drawing with it', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  const arc = () => board.page.locator('.stage [data-kind="bend"] .drawn-wall').getAttribute('d');
  const [before, drawn] = [await figures(board), await arc()];
  await radius(board).focus();
  for (let i = 0; i < 6; i += 1) await board.page.keyboard.press('ArrowRight');
  await expect(radius(board)).toHaveValue('1.3');
  await board.frame();
  const after = await figures(board);
  expect(after.c).toBeLessThan(before.c);
  expect(after.flow).toBeGreaterThan(before.flow);
  expect(await arc()).not.toBe(drawn);
});

test('a turn of the drawing is tried without touching it, and applied as one undo step', async ({
  board,
}) => {
  await board.open('?example');
  await board.page.locator('[data-sheet="floor"]').focus();
  for (let i = 0; i < 3; i += 1) await board.page.keyboard.press(']');
  await board.page.getByRole('tab', { name: 'Selected' }).click();
  await board.page.getByRole('button', { name: 'Try it in the bend lab' }).click();
  const [start] = [await board.seen()];
  const [turn] = start.bends;
  if (!turn) throw new Error('the example has turns');
  await expect(board.page.getByLabel('Turn', { exact: true })).toHaveValue(turn.node);
  await radius(board).focus();
  await board.page.keyboard.press('Home');
  expect((await board.seen()).job).toEqual(start.job);
  const { flow } = await figures(board);
  await board.page.getByRole('button', { name: 'Apply to my drawing' }).click();
  const applied = await board.seen();
  expect(applied.bends[0]?.radiusRatio).toBe(0.5);
  expect(applied.undoLabel).toBe('make turn as in the lab');
  expect(Math.round((applied.flow ?? 0) / 0.00047194745)).toBe(flow);
  await board.page.keyboard.press('Escape');
  await board.page.keyboard.press('Control+z');
  expect((await board.seen()).job).toEqual(start.job);
});

test('guess first hides the figures of a new situation until a guess is made', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  await board.page.getByText('Guess first').click();
  const guess = board.page.getByRole('slider', { name: /How much air gets out/ });
  await expect(guess).toBeVisible();
  await expect(board.page.locator('[data-figure="c"]')).toHaveCount(0);
  await guess.focus();
  await board.page.keyboard.press('Home');
  await board.page.getByRole('button', { name: 'Reveal' }).click();
  await expect(board.page.getByText(/You said 0 cfm; it is \d+ cfm/)).toBeVisible();
  await expect(board.page.locator('[data-figure="c"]')).toBeVisible();
  await radius(board).focus();
  await board.page.keyboard.press('ArrowLeft');
  await expect(guess).toBeVisible();
  await expect(board.page.locator('[data-figure="c"]')).toHaveCount(0);
});

test('every kind of bend stands beside the others, the mitred one as the dearest', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  await board.page.getByRole('tab', { name: 'All kinds' }).click();
  const kinds = board.page.locator('.kind');
  await expect(kinds).toHaveCount(12);
  await expect(kinds.last()).toHaveAttribute('data-kind', 'mitred');
  const cs = await board.page.locator('.kind dl > div:first-child dd span').allInnerTexts();
  const values = cs.map(Number);
  expect(values).toEqual([...values].sort((a, b) => a - b));
  await board.page
    .locator('[data-kind="mitred"]')
    .getByRole('button', { name: /Look at it.*mitred bend/ })
    .click();
  expect((await figures(board)).c).toBe(values.at(-1));
  await expect(radius(board)).toBeDisabled();
});

test('two 45s help a mitred corner, and a run loses air with each bend', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  await board.page.getByRole('tab', { name: 'All kinds' }).click();
  await board.page
    .locator('[data-kind="mitred"]')
    .getByRole('button', { name: /Look at it.*mitred bend/ })
    .click();
  await board.page.getByRole('tab', { name: 'Two 45s' }).click();
  await expect(board.page.getByText(/they are worth it/)).toBeVisible();
  await board.page.getByRole('tab', { name: 'A run of bends' }).click();
  const texts = await board.page.locator('.run-bars dd span').allInnerTexts();
  const flows = texts.map((text) => Number.parseFloat(text));
  expect(flows).toHaveLength(7);
  expect(flows).toEqual([...flows].sort((a, b) => b - a));
  expect(new Set(flows).size).toBe(7);
});

test('a lesson is walked from its first step to its end with keys alone', async ({ board }) => {
  await board.open('?example');
  const { page } = board;
  await board.ask('lessons', 'Lessons');
  await page.getByRole('button', { name: 'Begin “Tight turns”' }).focus();
  await page.keyboard.press('Enter');
  const told: string[] = [];
  for (let step = 1; step <= 5; step += 1) {
    await expect(page.getByText(`step ${step} of 5`)).toBeVisible();
    await expect(page.locator('.lesson h3')).toBeFocused();
    await page.keyboard.press('Tab');
    await expect(page.getByRole('dialog').getByRole('slider')).toBeFocused();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect(page.getByText(/^Remember\./)).toBeVisible();
    told.push((await page.locator('.lesson-table tbody tr').first().textContent()) ?? '');
    await expect(page.getByRole('button', { name: step < 5 ? 'Next step' : 'To the end' })).toBeFocused();
    await page.keyboard.press('Enter');
  }
  await expect(page.getByRole('heading', { name: /take home from “Tight turns”/ })).toBeFocused();
  await expect(page.locator('.lesson-end li')).toHaveCount(5);
  await expect(page.getByRole('heading', { name: 'How far this holds' })).toBeVisible();
  expect(new Set(told).size).toBe(5);
});

test('a lesson that was left is gone on with at its step, also on another day', async ({ board }) => {
  await board.open('?example');
  const { page } = board;
  const lessons = async () => {
    await openLab(board);
    await page.getByRole('tab', { name: 'Lessons' }).click();
  };
  await lessons();
  await expect(page.getByRole('button', { name: /^Begin/ })).toHaveCount(3);
  await page.getByRole('button', { name: 'Begin “Small cap”' }).click();
  await page.getByRole('button', { name: 'Show it without a guess' }).click();
  await page.getByRole('button', { name: 'Next step' }).click();
  await expect(page.getByText('step 2 of 6')).toBeVisible();
  await board.reload();
  await lessons();
  await page.getByRole('button', { name: 'Go on with step 2 of “Small cap”' }).click();
  await expect(page.getByText('step 2 of 6')).toBeVisible();
});

test('presenting sets every word in big type, and Escape leads back to the lab', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  const { page } = board;
  await page.getByRole('button', { name: 'Present', exact: true }).click();
  for (const tab of ['One turn', 'All kinds', 'Two 45s', 'A run of bends', 'Lessons']) {
    await page.getByRole('tab', { name: tab }).click();
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('.lab *')].flatMap((element) => {
        const words = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
        const shown = element.getClientRects().length > 0 && element.clientWidth > 1;
        return words && shown && Number.parseFloat(getComputedStyle(element).fontSize) < 20
          ? [`${element.className}: ${element.textContent}`]
          : [];
      }),
    );
    expect(small, tab).toEqual([]);
  }
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'Present', exact: true })).toBeVisible();
  await expect(page.getByRole('dialog', { name: 'Bend lab' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog', { name: 'Bend lab' })).toHaveCount(0);
});

const tabs = ['One turn', 'All kinds', 'Two 45s', 'A run of bends', 'Lessons'];

test('no page of the lab has a fault in either theme at either size', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  for (const tab of tabs) {
    await board.page.getByRole('tab', { name: tab }).click();
    // The lab itself lies over the desk.
    const faults = await board.faultsInEveryLook(tab);
    expect(faults.filter((fault) => !fault.includes(': overlap'))).toEqual([]);
  }
});

test('no page of the lab has a fault that axe finds when it is presented', async ({ board }) => {
  await board.open('?example');
  await openLab(board);
  await board.page.getByRole('button', { name: 'Present', exact: true }).click();
  for (const tab of tabs) {
    await board.page.getByRole('tab', { name: tab }).click();
    for (const theme of ['light', 'dark'] as const) {
      await board.theme(theme);
      expect(await board.accessibilityFaults(), `${tab}, ${theme}`).toEqual([]);
    }
  }
});

test('no step of a lesson has a fault that axe finds', async ({ board }) => {
  await board.open('?example');
  await openLab(board, 'Lessons');
  const { page } = board;
  for (const next of ['Begin “Small cap”', 'Show it']) {
    await page.getByRole('button', { name: next, exact: true }).click();
    for (const theme of ['light', 'dark'] as const) {
      await board.theme(theme);
      expect(await board.accessibilityFaults(), `${next}, ${theme}`).toEqual([]);
    }
  }
});
