// Every check of the project with one command. Ends with one line: `N passed, N failed`.
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { browserVariable, ensureBrowser } from './browser.mjs';
import { buildApp } from './build.mjs';
import { root, tools } from './paths.mjs';
import { countPlaywright, countVitest } from './tally.mjs';

const reports = join(root, 'test-results', 'reports');

const runners = {
  types: () => check(tools.tsc, '--noEmit'),
  lint: () => check(tools.biome, 'check', '--error-on-warnings', '--colors=off'),
  rooms: () => check(tools.biome, 'lint', '--only=style/noRestrictedImports', '--colors=off', 'src'),
  unused: () => check(tools.knip, '--no-progress'),
  vitest: () =>
    counted('vitest.json', countVitest, tools.vitest, [
      'run',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${join(reports, 'vitest.json')}`,
    ]),
  browser: browserTests,
};

const { values } = parseArgs({ options: { only: { type: 'string', multiple: true } } });
const chosen = values.only ?? Object.keys(runners);
const unknown = chosen.find((name) => !Object.hasOwn(runners, name));
if (unknown !== undefined) {
  console.error(`No runner "${unknown}"; there are: ${Object.keys(runners).join(', ')}.`);
  process.exit(2);
}

const total = { passed: 0, failed: 0 };
for (const name of chosen) {
  console.log(`\n--- ${name}`);
  const started = performance.now();
  const { passed, failed } = await runners[name]();
  console.log(
    `--- ${name}: ${failed === 0 ? 'ok' : 'FAILED'} (${Math.round((performance.now() - started) / 1000)} s)`,
  );
  total.passed += passed;
  total.failed += failed;
}
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed === 0 ? 0 : 1;

/** Runs a package's script with this Node, its output passed on, nothing to read. Resolves to the exit code. */
function run(script, args, env = {}) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: root,
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, CI: 'true', NO_COLOR: '1', FORCE_COLOR: undefined, ...env },
    });
    child.on('error', (error) => {
      console.error(error.message);
      resolve(1);
    });
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/** A runner that says only yes or no counts as one. */
async function check(script, ...args) {
  return (await run(script, args)) === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

/** A runner that counts its tests in a report. One that fails without a failed test counts as one failure. */
async function counted(report, count, script, args, env) {
  const path = join(reports, report);
  mkdirSync(reports, { recursive: true });
  rmSync(path, { force: true });
  const code = await run(script, args, env);
  const { passed, failed } = existsSync(path)
    ? count(JSON.parse(readFileSync(path, 'utf8')))
    : { passed: 0, failed: 0 };
  const silentFailure = failed === 0 && (code !== 0 || passed === 0);
  return { passed, failed: silentFailure ? 1 : failed };
}

async function browserTests() {
  try {
    const browser = await ensureBrowser();
    await buildApp();
    const env = {
      [browserVariable]: browser,
      GENTLEBEND_TEST_PORT: String(await freePort()),
      PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, 'playwright.json'),
    };
    return await counted(
      'playwright.json',
      countPlaywright,
      tools.playwright,
      ['test', '--reporter=list,json'],
      env,
    );
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return { passed: 0, failed: 1 };
  }
}

function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject).listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}
