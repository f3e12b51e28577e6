import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
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

test('a second run does not build again', () => {
  command('--help');
  const built = statSync('dist/command/main.js').mtimeMs;
  expect(command('--help').stdout).toMatch(/^Usage: /);
  expect(statSync('dist/command/main.js').mtimeMs).toBe(built);
});
