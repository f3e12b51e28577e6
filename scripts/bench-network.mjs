// Bundles the network benchmark as the program itself is bundled, and runs it in plain Node: the
// test runner's module transform would slow our side and not the engine's.
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const outDir = fileURLToPath(new URL('../node_modules/.cache/bench', import.meta.url));
await build({
  configFile: false,
  logLevel: 'error',
  build: {
    ssr: fileURLToPath(new URL('../tests/bench/network-ratios.ts', import.meta.url)),
    outDir,
    target: 'node20',
    rollupOptions: { output: { entryFileNames: 'network-ratios.mjs' } },
  },
});
await import(pathToFileURL(`${outDir}/network-ratios.mjs`).href);
