import { expect, test } from './support.ts';

test('the airflow needed is overruled with a reason, shown, undone and taken back', async ({ board }) => {
  await board.open('?example');
  const before = await board.seen();
  await board.page.getByRole('tab', { name: 'Kitchen' }).click();
  const needed = board.page.getByRole('region', { name: 'Airflow needed' });
  await needed.getByRole('button', { name: 'Overrule…' }).click();
  const form = needed.getByRole('form', { name: 'Another airflow in this job' });
  await expect(form.getByLabel('Airflow to go by')).toBeFocused();
  await form.getByLabel('Airflow to go by').fill('450 cfm');
  await form.getByRole('button', { name: 'Go by this' }).click();
  await expect(form).toContainText('Give a reason');
  expect((await board.seen()).job).toEqual(before.job);

  await form.getByLabel('Reason, which is printed').fill('The instructions of the hood ask for it.');
  await form.getByRole('button', { name: 'Go by this' }).click();
  await expect(needed.getByRole('heading', { name: /Needs 450 cfm/ })).toBeVisible();
  await expect(needed).toContainText('Reason: The instructions of the hood ask for it.');
  await expect(needed).toContainText('less than the 601 cfm');
  await expect(board.page.getByRole('button', { name: /needs 450 cfm: set in this job/ })).toBeVisible();
  const after = await board.seen();
  expect(after.job.kitchen.requiredAirflow?.reason).toBe('The instructions of the hood ask for it.');
  expect(after.undoLabel).toBe('overrule the airflow needed');

  await needed.getByRole('button', { name: 'Go by the rules again' }).click();
  expect((await board.seen()).job).toEqual(before.job);
  await board.page.keyboard.press('Control+z');
  await expect(needed.getByRole('heading', { name: /Needs 450 cfm/ })).toBeVisible();
});

test('the form stands whole in both themes at both sizes, and axe finds no fault', async ({ board }) => {
  await board.open('?example');
  await board.page.getByRole('tab', { name: 'Kitchen' }).click();
  await board.page.getByRole('button', { name: 'Overrule…' }).click();
  await expect(board.page.getByLabel('Airflow to go by')).toBeFocused();
  const faults = await board.faultsInEveryLook();
  expect(faults.filter((fault) => !fault.includes('Job title'))).toEqual([]);
});
