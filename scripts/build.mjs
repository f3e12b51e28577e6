import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './paths.mjs';

const appSources = [
  'index.html',
  'public',
  'src',
  'shared',
  'fixtures',
  'package-lock.json',
  'vite.config.ts',
];
const commandSources = ['src', 'shared', 'package-lock.json'];
const stampFile = '.built-from';

/**
 * Builds the program into dist/app unless that already comes from these very sources. Vite's own lines
 * go to standard error. Resolves to the folder.
 */
export async function buildApp() {
  return await buildWhenChanged(join(root, 'dist/app'), appSources, 'Building the program.', (outDir) => ({
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true },
  }));
}

/** Builds the command line into dist/command unless that is up to date; silent. Resolves to its module. */
export async function buildCommand() {
  const outDir = await buildWhenChanged(join(root, 'dist/command'), commandSources, null, (outDir) => ({
    configFile: false,
    logLevel: 'silent',
    build: { ssr: join(root, 'src/command/main.ts'), outDir, emptyOutDir: true, target: 'node20' },
  }));
  return join(outDir, 'main.js');
}

async function buildWhenChanged(outDir, sources, message, config) {
  const stamp = fingerprint(sources);
  const stampPath = join(outDir, stampFile);
  if (existsSync(stampPath) && readFileSync(stampPath, 'utf8') === stamp) return outDir;
  if (message !== null) console.error(message);
  const { build, createLogger } = await import('vite');
  const settings = config(outDir);
  await build({ root, ...settings, customLogger: onStandardError(createLogger(settings.logLevel)) });
  mkdirSync(outDir, { recursive: true });
  writeFileSync(stampPath, stamp);
  return outDir;
}

function onStandardError(logger) {
  return {
    ...logger,
    info: () => {},
    warn: (text) => console.error(text),
    error: (text) => console.error(text),
  };
}

/** Names and contents of everything that a build depends on: times say less, they change in a clone. */
function fingerprint(sources) {
  const hash = createHash('sha256');
  for (const path of sources.flatMap((source) => filesUnder(join(root, source)))) {
    hash.update(path.slice(root.length)).update('\0').update(readFileSync(path)).update('\0');
  }
  return hash.digest('hex');
}

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
