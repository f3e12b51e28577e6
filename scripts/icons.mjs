// Draws the program's pictures for home screens and task bars from one drawing: `node scripts/icons.mjs`.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright';
import { findBrowser } from './browser.mjs';
import { root } from './paths.mjs';

const folder = join(root, 'public', 'icons');

/** The bend in its field of 32 by 32; `corner` rounds the field, `inset` keeps the bend off its edges. */
function drawing({ corner, inset }) {
  const scale = (32 - 2 * inset) / 32;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><title>Gentlebend</title><rect width="32" height="32" rx="${corner}" fill="#a3431b"/><g transform="translate(${inset} ${inset}) scale(${scale})" fill="none" stroke="#fbf8f1"><path d="M8 26V16a8 8 0 0 1 8-8h10M15 26V17a2 2 0 0 1 2-2h9" stroke-width="2.6"/></g></svg>\n`;
}

const plain = drawing({ corner: 7, inset: 0 });
/** Systems cut this one to their own shape and may take a fifth from every side. */
const maskable = drawing({ corner: 0, inset: 3 });
const square = drawing({ corner: 0, inset: 2 });

const pictures = [
  ['icon-192.png', plain, 192],
  ['icon-512.png', plain, 512],
  ['icon-maskable-512.png', maskable, 512],
  ['icon-apple-180.png', square, 180],
];

mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'icon.svg'), plain);
const executablePath = await findBrowser();
const browser = await chromium.launch({
  args: process.getuid?.() === 0 ? ['--no-sandbox'] : [],
  ...(executablePath === null ? {} : { executablePath }),
});
for (const [name, svg, size] of pictures) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px}</style>${svg}`);
  await page.screenshot({ path: join(folder, name), omitBackground: true });
  await page.close();
}
await browser.close();
