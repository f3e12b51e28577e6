import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './paths.mjs';

const builds = join(root, 'dist', 'built');
const appSources = [
  'index.html',
  'public',
  'src',
  'shared',
  'fixtures',
  'package-lock.json',
  'vite.config.ts',
  'scripts/offline.mjs',
];
const commandSources = ['src', 'shared', 'package.json', 'package-lock.json'];

/**
 * The folder of the built program, made from these very sources. Vite's own lines go to standard error.
 */
export async function buildApp() {
  return await builtFrom('app', appSources, 'Building the program.', (outDir) => ({
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true },
  }));
}

/** The module of the built command line, made from these very sources; silent. */
export async function buildCommand() {
  const folder = await builtFrom('command', commandSources, null, (outDir) => ({
    configFile: false,
    logLevel: 'silent',
    build: { ssr: join(root, 'src/command/main.ts'), outDir, emptyOutDir: true, target: 'node20' },
  }));
  return join(folder, 'main.js');
}

/**
 * A build has a folder of its own, named after its sources, and appears there in one step: several runs
 * at once do not meet half a build, nor does one take away what another serves.
 */
async function builtFrom(name, sources, message, config) {
  const folder = join(builds, `${name}-${fingerprint(sources)}`);
  if (existsSync(folder)) return folder;
  if (message !== null) console.error(message);
  const { build, createLogger } = await import('vite');
  const unfinished = join(builds, `.${name}-${process.pid}`);
  const settings = config(unfinished);
  try {
    await build({ root, ...settings, customLogger: onStandardError(createLogger(settings.logLevel)) });
    renameSync(unfinished, folder);
  } catch (error) {
    if (!existsSync(folder)) throw error;
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
  }
  forgetOld(name, folder);
  return folder;
}

const day = 24 * 60 * 60 * 1000;

/** Removes builds of earlier sources once nobody can still be using them. */
function forgetOld(name, current) {
  for (const entry of readdirSync(builds)) {
    const path = join(builds, entry);
    if (!entry.replace(/^\./, '').startsWith(`${name}-`) || path === current) continue;
    if (Date.now() - statSync(path).mtimeMs > day) rmSync(path, { recursive: true, force: true });
  }
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
  return hash.digest('hex').slice(0, 16);
}

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}
