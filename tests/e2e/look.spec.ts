import { expect, test } from './support.ts';

/** The key of every tool. */
const tools = 'vdhcnpisjbxlwqgk';

for (const start of ['?example', '?new'])
  test(`the desk of ${start} has no fault that axe finds, and nothing is cut off, in either theme at either size`, async ({
    board,
  }) => {
    await board.open(start);
    expect(await board.faultsInEveryLook()).toEqual([]);
  });

test('no scheme has anything cut off or overlapping in either theme at either size', async ({ board }) => {
  await board.open('?example');
  const proposal = board.page.locator('[data-proposal]:not([disabled])').first();
  for (const { name } of (await board.seen()).job.schemes) {
    await board.page.getByText(name).first().click();
    await expect(proposal).toBeVisible();
    expect(await board.faultsInEveryLook(name)).toEqual([]);
  }
});

for (const width of [1440, 1024])
  test.describe(`in a window ${width} wide`, () => {
    test.use({ viewport: { width, height: width === 1440 ? 900 : 768 } });

    test('the program starts in the theme of the system, with nothing cut off', async ({ board }) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await board.page.emulateMedia({ colorScheme });
        await board.open('?example');
        expect(await board.page.evaluate(() => globalThis.gentlebend.state().theme)).toBe(colorScheme);
        await expect(board.page.locator('[data-proposal]:not([disabled])').first()).toBeVisible();
        expect(await board.layoutFaults(), colorScheme).toEqual([]);
      }
    });

    test('no word is cut off in any panel, tool or arrangement', async ({ board }) => {
      await board.open('?example');
      const { segments } = await board.seen();
      const faults: string[] = [];
      const look = async (where: string) => {
        faults.push(...(await board.layoutFaults()).map((fault) => `${where}: ${fault}`));
      };
      const panels = board.page.getByRole('tablist', { name: 'Details' }).getByRole('tab');
      for (const panel of await panels.all()) {
        await panel.click();
        await look((await panel.getAttribute('data-key')) ?? '');
      }
      const [first, second] = segments;
      const corner = first && (await board.seen()).job.schemes[0]?.nodes.find(({ id }) => id === second?.to);
      if (!corner) throw new Error('the example has a corner');
      await board.click('floor', corner.at);
      await look('a turn selected');
      for (const tool of tools) {
        await board.page.keyboard.press(tool);
        await look(`tool ${tool}`);
      }
      const arrangements = board.page.getByRole('radiogroup', { name: 'Views' }).getByRole('radio');
      for (const arrangement of await arrangements.all()) {
        await arrangement.click();
        await look((await arrangement.getAttribute('aria-label')) ?? '');
      }
      expect(faults).toEqual([]);
    });
  });
