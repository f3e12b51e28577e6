import { expect, test } from './support.ts';

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
];
const themes = ['light', 'dark'] as const;

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
    }
  });
}
