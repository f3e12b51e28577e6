import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './paths.mjs';

/**
 * Why the packages have to be installed, as a clause; `null` when all that the lock file names is there.
 * npm writes `node_modules/.package-lock.json` last, so without it an install was never finished.
 */
export function whyInstall(project = root) {
  const installed = join(project, 'node_modules', '.package-lock.json');
  if (!existsSync(installed)) return 'the packages are not installed yet';
  if (statSync(installed).mtimeMs < statSync(join(project, 'package-lock.json')).mtimeMs) {
    return 'package-lock.json is newer than what is installed';
  }
  let packages;
  try {
    packages = JSON.parse(readFileSync(installed, 'utf8')).packages;
  } catch {
    return 'the record of what is installed cannot be read';
  }
  const lost = Object.keys(packages).find((path) => !existsSync(join(project, path, 'package.json')));
  return lost === undefined ? null : `${lost} is missing`;
}

/** Runs `npm ci` when something is missing. Says everything on standard error. */
export function installMissing({ quiet = false } = {}) {
  const why = whyInstall();
  if (why === null) return;
  console.error(`Installing packages: ${why}.`);
  const level = quiet ? 'error' : 'warn';
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund', `--loglevel=${level}`];
  const npm = process.env.npm_execpath ?? '';
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  const result = /npm-cli\.[cm]?js$/.test(npm)
    ? spawnSync(process.execPath, [npm, ...args], options)
    : spawnSync(`npm ${args.join(' ')}`, { ...options, shell: true });
  if (result.status !== 0) {
    throw new Error(
      'The packages could not be installed; npm says why above. Check the network and run it again.',
    );
  }
}
