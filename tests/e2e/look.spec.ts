import { expect, test } from './support.ts';

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
];
const themes = ['light', 'dark'] as const;
/** The key of every tool. */
const tools = 'vdhcnpisjbxlwqgk';

for (const colorScheme of themes) {
  test.describe(`in ${colorScheme}`, () => {
    test.use({ colorScheme });

    test('the example and the empty job have no fault that axe finds', async ({ board }) => {
      for (const start of ['?example', '?new']) {
        await board.open(start);
        expect(await board.accessibilityFaults()).toEqual([]);
      }
    });

    for (const size of sizes) {
      test(`nothing is cut off or overlaps at ${size.width} by ${size.height}`, async ({ board }, info) => {
        await board.page.setViewportSize(size);
        await board.open('?example');
        await expect(board.page.locator('[data-proposal]').first()).toBeVisible();
        expect(await board.page.evaluate(() => globalThis.gentlebend.state().theme)).toBe(colorScheme);
        for (const scheme of (await board.seen()).job.schemes) {
          await board.page.getByText(scheme.name).first().click();
          await expect(board.page.locator('[data-proposal]:not([disabled])').first()).toBeVisible();
          const name = `${scheme.id}-${colorScheme}-${size.width}.png`;
          const body = await board.page.screenshot({ path: info.outputPath(name) });
          await info.attach(name, { body, contentType: 'image/png' });
          expect(await board.layoutFaults()).toEqual([]);
        }
      });

      test(`no word is cut off in any panel, tool or arrangement at ${size.width} by ${size.height}`, async ({
        board,
      }) => {
        await board.page.setViewportSize(size);
        await board.open('?example');
        const { segments } = await board.seen();
        const faults: string[] = [];
        const look = async (where: string) => {
          await board.frame();
          faults.push(...(await board.layoutFaults()).map((fault) => `${where}: ${fault}`));
        };
        const panels = board.page.getByRole('tablist', { name: 'Details' }).getByRole('tab');
        for (const panel of await panels.all()) {
          await panel.click();
          await look((await panel.getAttribute('data-key')) ?? '');
        }
        const [first, second] = segments;
        const corner =
          first && (await board.seen()).job.schemes[0]?.nodes.find(({ id }) => id === second?.to);
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
    }
  });
}
