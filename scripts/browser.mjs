import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { tools } from './paths.mjs';

/** Names the browser's program for the tests, above whatever else is installed. */
export const browserVariable = 'GENTLEBEND_BROWSER';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

function usualPlaces() {
  const { platform, env } = process;
  if (platform === 'darwin') {
    return ['Google Chrome', 'Chromium'].map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`);
  }
  if (platform === 'win32') {
    return [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA]
      .filter(Boolean)
      .map((folder) => join(folder, 'Google/Chrome/Application/chrome.exe'));
  }
  const folders = (env.PATH ?? '').split(delimiter).filter(Boolean);
  return names.flatMap((name) => folders.map((folder) => join(folder, name)));
}

/** A package can leave a script that only says how to get the browser; one that runs tells its version. */
function runs(path) {
  if (!existsSync(path)) return false;
  if (process.platform === 'win32') return true;
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 20_000 }).status === 0;
}

/**
 * The browser for the tests: the one that the variable names, Playwright's own, or an installed Chromium
 * or Chrome. `null` where there is none; refuses a variable that names no file.
 */
export async function findBrowser() {
  const named = process.env[browserVariable];
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`${browserVariable} names ${named}, and there is no such file.`);
  }
  const { chromium } = await import('playwright');
  const own = chromium.executablePath();
  if (own && existsSync(own)) return own;
  return usualPlaces().find(runs) ?? null;
}

/** The browser for the tests, fetched when there is none: the system's package, or Playwright's own. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found !== null) return found;
  console.error('No browser for the tests: installing one.');
  const run = (program, ...args) => spawnSync(program, args, { stdio: ['ignore', 2, 2] }).status === 0;
  const packaged =
    process.getuid?.() === 0 &&
    existsSync('/etc/debian_version') &&
    run('apt-get', 'update') &&
    run('apt-get', 'install', '-y', 'chromium');
  const installed = packaged ? await findBrowser() : null;
  if (installed !== null) return installed;
  run(process.execPath, tools.playwright, 'install', 'chromium');
  const fetched = await findBrowser();
  if (fetched !== null) return fetched;
  throw new Error(
    `The browser tests need Chromium or Chrome, and none could be installed. Install one, or name its program in ${browserVariable}.`,
  );
}
