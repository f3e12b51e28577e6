import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, wherever the command was started from. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** The script that a package runs as its command, to be started with this same Node. */
export const tools = {
  biome: join(root, 'node_modules/@biomejs/biome/bin/biome'),
  knip: join(root, 'node_modules/knip/bin/knip.js'),
  playwright: join(root, 'node_modules/playwright/cli.js'),
  tsc: join(root, 'node_modules/typescript/bin/tsc'),
  vite: join(root, 'node_modules/vite/bin/vite.js'),
  vitest: join(root, 'node_modules/vitest/vitest.mjs'),
};
