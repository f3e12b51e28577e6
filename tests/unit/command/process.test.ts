import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';

/** The command line as a person runs it: its own process, built from the sources. */
function command(...args: string[]) {
  return spawnSync(process.execPath, ['scripts/command.mjs', ...args], { encoding: 'utf8' });
}

test('the built command prints one JSON object and nothing else', () => {
  const { status, stdout, stderr } = command('solve', 'fixtures/example.gentlebend.json', '--json');
  expect([status, stderr]).toEqual([0, '']);
  expect(JSON.parse(stdout).schemes).toHaveLength(2);
});

test('bad input gives exit 2, a message on standard error and nothing on standard output', () => {
  const { status, stdout, stderr } = command('solve', 'package.json');
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toBe('package.json: format: this is not a Gentlebend job (expected "gentlebend")\n');
});

test('runs at the same time, and a second run, share one build', async () => {
  const before = builds();
  const codes = await Promise.all([together(), together(), together()]);
  expect(codes).toEqual([0, 0, 0]);
  expect(command('--help').stdout).toMatch(/^Usage: /);
  expect(builds().filter((name) => !before.includes(name)).length).toBeLessThanOrEqual(1);
});

function together(): Promise<number | null> {
  const child = spawn(process.execPath, ['scripts/command.mjs', '--help'], { stdio: 'ignore' });
  return new Promise((resolve) => child.on('close', resolve));
}

function builds(): string[] {
  return existsSync('dist/built') ? readdirSync('dist/built') : [];
}
