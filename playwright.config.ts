import { defineConfig } from 'playwright/test';
import { findBrowser } from './scripts/browser.mjs';

const port = Number(process.env.GENTLEBEND_TEST_PORT ?? 4390);
const executablePath = await findBrowser();

/** Quiet, without a sandbox where the tests run as root, and nothing asked of any network. */
const args = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
];

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results/browser',
  fullyParallel: true,
  workers: 2,
  forbidOnly: true,
  retries: 0,
  // Far more than any test needs: a machine with much else to do is slow, and that is no fault of the program.
  timeout: 240_000,
  expect: { timeout: 40_000 },
  use: {
    baseURL: `http://127.0.0.1:${port}/`,
    viewport: { width: 1440, height: 900 },
    locale: 'en-US',
    // Each test starts without a kept copy of the program; offline.spec.ts makes one.
    serviceWorkers: 'block',
    screenshot: 'only-on-failure',
    trace: process.env.GENTLEBEND_TRACE ? 'retain-on-failure' : 'off',
    launchOptions: { args, ...(executablePath === null ? {} : { executablePath }) },
  },
  webServer: {
    command: `node --no-warnings scripts/start.mjs --no-open --strict-port --port ${port}`,
    url: `http://127.0.0.1:${port}/`,
    reuseExistingServer: false,
    timeout: 120_000,
    stdout: 'ignore',
    stderr: 'pipe',
  },
});
