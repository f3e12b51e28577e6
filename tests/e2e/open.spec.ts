import { expect, test } from './support.ts';

test('opens on the example job, solved, without a word in the console', async ({ board }) => {
  await board.open();
  const { job, flow } = await board.seen();
  expect(job.schemes).toHaveLength(2);
  expect(flow).toBeGreaterThan(0.05);
  await expect(board.page).toHaveTitle(/Gentlebend/);
});
