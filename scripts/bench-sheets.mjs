// Times drag, pan and recolour on a sheet in a real browser against a bare Konva scene of as many lines,
// in the same page, and prints them as ratios: what the drawing costs beyond its lines.
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright';
import { build, preview } from 'vite';
import { ensureBrowser } from './browser.mjs';

const page = fileURLToPath(new URL('../tests/bench/sheets', import.meta.url));
const outDir = fileURLToPath(new URL('../node_modules/.cache/bench-sheets', import.meta.url));
const args = process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : ['--disable-gpu'];

await build({
  root: page,
  configFile: false,
  logLevel: 'error',
  base: './',
  build: { outDir, emptyOutDir: true },
});
const server = await preview({
  root: page,
  configFile: false,
  logLevel: 'error',
  build: { outDir },
  preview: { host: '127.0.0.1', port: 0 },
});
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args });
try {
  const tab = await browser.newPage({ viewport: { width: 1100, height: 1500 } });
  tab.on('pageerror', (error) => console.error(error.message));
  const { port } = server.httpServer.address();
  await tab.goto(`http://127.0.0.1:${port}/`);
  await tab.waitForFunction(() => document.title === 'ready');
  console.log('\nOne frame on the floor sheet, and as a ratio to a bare Konva scene of as many lines\n');
  console.log('segments  what                  ours, ms  bare, ms   ratio  of it solving, ms');
  const sizes = process.argv.slice(2).map(Number);
  for (const segments of sizes.length > 0 ? sizes : [100, 1000, 5000, 20_000]) {
    const rows = await tab.evaluate((n) => globalThis.bench(n), segments);
    for (const { what, ours, bare, solving } of rows)
      console.log(
        [
          String(segments).padStart(8),
          what.padEnd(20),
          ours.toFixed(1).padStart(9),
          bare.toFixed(1).padStart(9),
          (ours / bare).toFixed(1).padStart(7),
          solving > 0 ? solving.toFixed(1).padStart(10) : '',
        ].join('  '),
      );
  }
} finally {
  await browser.close();
  await server.close();
}
