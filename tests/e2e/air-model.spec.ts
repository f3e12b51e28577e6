import type { Page } from 'playwright/test';
import { type BoardPage, expect, test } from './support.ts';

/** House pressure at the fastest speed, Pa, as the program has it. */
async function housePressure(board: BoardPage): Promise<number> {
  return await board.page.evaluate(() => {
    const outcome = globalThis.gentlebend.state().solution.speeds.at(-1)?.outcome;
    if (!outcome?.solved || !outcome.house) throw new Error('the example has a house and is solved');
    return outcome.house.pressure;
  });
}

const boost = (page: Page) => page.getByRole('region', { name: 'Results at boost' });
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).click();

test('a tighter house is drawn further down and lets less air out, and undo brings it back', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  const before = await board.seen();
  const pressure = await housePressure(board);
  await expect(boost(page).locator('[data-explain="house pressure"]')).toHaveText(
    `−${Math.abs(pressure).toFixed(1)} Pa`,
  );

  await page.getByRole('tab', { name: 'Kitchen' }).click();
  const field = page.getByRole('textbox', { name: 'Air changes at 50 Pa' });
  await field.fill('2');
  await field.press('Enter');
  const after = await board.seen();
  expect(after.job.house?.ach50).toBe(2);
  expect(after.undoLabel).toBe('change airtightness');
  expect(await housePressure(board)).toBeLessThan(pressure - 5);
  expect(after.flow ?? 0).toBeLessThan(before.flow ?? 0);
  await expect(page.getByText('Carbon monoxide.', { exact: true })).toBeVisible();

  await undo(page);
  expect((await board.seen()).job).toEqual(before.job);
  expect(await housePressure(board)).toBe(pressure);
});

test('what is typed wrong stays, with what is wrong about it, and changes nothing', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  const before = await board.seen();
  await page.getByRole('tab', { name: 'Kitchen' }).click();
  const field = page.getByRole('textbox', { name: 'Air changes at 50 Pa' });
  await field.fill('tight');
  await field.press('Tab');
  await expect(field).toHaveValue('tight');
  await expect(page.getByText(/“tight” is not clear.*from 0.05 to 60/)).toBeVisible();
  expect((await board.seen()).job).toEqual(before.job);
});

test('from the delivered flow one reaches a catalogue row and its source, and comes back', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  const flow = boost(page).locator('[data-explain="flow"]');
  await flow.click();
  const sheet = page.getByRole('dialog');
  await expect(sheet.getByRole('heading', { name: /^Air delivered by .* at boost$/ })).toBeVisible();
  await expect(sheet.locator('.explain-value')).toContainText((await flow.textContent()) ?? 'no figure');

  // Two steps deeper: the largest loss on the way, then its coefficient with the catalogue row behind it.
  await sheet.getByRole('button', { name: 'Wall cap with a flap' }).click();
  await expect(sheet.getByRole('heading')).toContainText('Loss, Wall cap with a flap');
  await sheet.getByRole('button', { name: 'loss coefficient' }).click();
  await expect(sheet.getByRole('heading')).toContainText('Loss coefficient');
  const source = sheet.locator('.explain-source').last();
  await expect(source.locator('code')).toHaveText('caps/wall-flap');
  await expect(source.locator('.explain-row')).toHaveText('Wall cap with a flap');
  await expect(source.locator('.source-kind')).toHaveText(
    /^(found in the source|from memory|common practice|assumption)$/,
  );
  await sheet.getByRole('button', { name: 'Back' }).click();
  await sheet.getByRole('button', { name: 'Back' }).click();
  await expect(sheet.getByRole('heading', { name: /^Air delivered/ })).toBeVisible();
});

test('the arrows move among the figures of a card, and Enter explains one', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  await boost(page).getByRole('button', { name: 'boost' }).focus();
  await page.keyboard.press('Tab');
  await page.keyboard.press('End');
  await expect(page.locator(':focus')).toHaveAttribute('data-explain', 'house pressure');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog').getByRole('heading')).toContainText('Pressure of the house');
  expect(await board.accessibilityFaults()).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.locator(':focus')).toHaveAttribute('data-explain', 'house pressure');
});

test('a speed of which only the free-air rating is known is flagged wherever its air is shown', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  const before = await board.seen();
  const flow = boost(page).locator('[data-explain="flow"]');
  await expect(flow).not.toContainText('≈');

  await page.getByRole('tab', { name: 'Kitchen' }).click();
  await page.getByRole('button', { name: 'Invented 36 in hood, 600 cfm' }).click();
  await page.getByRole('button', { name: /How the fan is known/ }).click();
  await page.getByRole('option', { name: 'Free air and shut-off' }).click();
  const speed = (await board.seen()).job.hoods[0]?.speeds.at(-1);
  expect(speed?.curve).toBeUndefined();
  expect(speed?.freeAir?.flow).toBeCloseTo(0.283, 2);
  await expect(page.getByText(/Assumed\. The curve is a parabola from the shut-off pressure/)).toBeVisible();
  await expect(flow).toContainText('≈');
  await flow.click();
  await expect(page.getByRole('dialog')).toContainText('The curve is a parabola from the shut-off pressure');
  await page.keyboard.press('Escape');

  await undo(page);
  expect((await board.seen()).job).toEqual(before.job);
  await expect(flow).not.toContainText('≈');
});

test('a curve is pasted from a spreadsheet, and a wrong point stays as it was typed', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  const before = await board.seen();
  await page.getByRole('tab', { name: 'Kitchen' }).click();
  await page.getByRole('button', { name: 'Invented 36 in hood, 600 cfm' }).click();
  const first = page.getByRole('textbox', { name: 'Flow, point 1' });
  await first.evaluate((cell) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text', '0\t1.2\n200\t1.1\n400\t0.7\n500\t0.4\n560\t0.2\n620\t0');
    cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
  });
  const curve = (await board.seen()).job.hoods[0]?.speeds.at(-1)?.curve;
  expect(curve?.map(([flow]) => Math.round(flow / 0.0004719474432))).toEqual([0, 200, 400, 500, 560, 620]);

  const pressure = page.getByRole('textbox', { name: 'Static pressure, point 2' });
  await pressure.fill('lots');
  await pressure.press('Enter');
  await expect(pressure).toHaveValue('lots');
  await expect(page.getByRole('alert')).toContainText('“lots”');
  expect((await board.seen()).job.hoods[0]?.speeds.at(-1)?.curve).toEqual(curve);
  await pressure.press('Escape');
  await expect(pressure).toHaveValue('1.10');

  await undo(page);
  expect((await board.seen()).job).toEqual(before.job);
});

test('a screen put in line costs air, less of it the more of it is open, and its data sheet overrules the row', async ({
  board,
}) => {
  const { page } = board;
  await board.open('?example');
  const before = await board.seen();
  await page.getByRole('tab', { name: 'Pressure' }).click();
  await page.getByRole('button', { name: /^Hood to turn 1.*friction/ }).click();
  await page.getByRole('tab', { name: 'Selected' }).click();
  await page.getByRole('button', { name: /Put a part in line/ }).click();
  await page.getByRole('option', { name: 'Wire screen' }).click();
  const screened = (await board.seen()).flow ?? 0;
  expect(screened).toBeLessThan(before.flow ?? 0);

  const screen = page.getByRole('group', { name: 'Wire screen' });
  await screen.getByRole('textbox', { name: 'Free area' }).fill('90 %');
  await page.keyboard.press('Enter');
  expect((await board.seen()).flow ?? 0).toBeGreaterThan(screened);

  await screen.getByRole('button', { name: /Its loss is from/ }).click();
  await page.getByRole('option', { name: 'Data sheet: loss at a flow' }).click();
  await screen.getByRole('textbox', { name: 'Loss', exact: true }).fill('0.4 in wg');
  await page.keyboard.press('Enter');
  expect((await board.seen()).flow ?? 0).toBeLessThan(screened);
  for (let step = 0; step < 4; step += 1) await undo(page);
  expect((await board.seen()).job).toEqual(before.job);
});

for (const start of ['?example', '?new'])
  test(`the kitchen and the hood of ${start} have no fault in either theme at either size`, async ({
    board,
  }) => {
    const { page } = board;
    await board.open(start);
    await page.getByRole('tab', { name: 'Kitchen' }).click();
    expect(await board.faultsInEveryLook('the kitchen')).toEqual([]);
    await page.getByRole('button', { name: 'Invented 36 in hood, 600 cfm' }).click();
    expect(await board.faultsInEveryLook('the hood')).toEqual([]);
  });

test('the pressures and a leg of them have no fault in either theme at either size', async ({ board }) => {
  const { page } = board;
  await board.open('?example');
  await page.getByRole('tab', { name: 'Pressure' }).click();
  expect(await board.faultsInEveryLook('the pressures')).toEqual([]);
  await page.getByRole('button', { name: /^Hood to turn 1.*friction/ }).click();
  await page.getByRole('tab', { name: 'Selected' }).click();
  expect(await board.faultsInEveryLook('a leg')).toEqual([]);
});
