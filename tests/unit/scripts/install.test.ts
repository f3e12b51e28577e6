import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { whyInstall } from '../../../scripts/install.mjs';

let project: string;

beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'gentlebend-install-'));
  write('package-lock.json', '{}');
  write('node_modules/.package-lock.json', JSON.stringify({ packages: { 'node_modules/a': {} } }));
  write('node_modules/a/package.json', '{}');
  dated('package-lock.json', 1000);
  dated('node_modules/.package-lock.json', 2000);
});
afterEach(() => {
  rmSync(project, { recursive: true, force: true });
});

function write(path: string, text: string) {
  mkdirSync(join(project, path, '..'), { recursive: true });
  writeFileSync(join(project, path), text);
}

function dated(path: string, seconds: number) {
  utimesSync(join(project, path), seconds, seconds);
}

test('a complete install is left alone', () => {
  expect(whyInstall(project)).toBeNull();
});

test('a fresh clone is installed', () => {
  rmSync(join(project, 'node_modules'), { recursive: true });
  expect(whyInstall(project)).toBe('the packages are not installed yet');
});

test('an install that was broken off is done again', () => {
  rmSync(join(project, 'node_modules/.package-lock.json'));
  expect(whyInstall(project)).toBe('the packages are not installed yet');
});

test('a lock file that is newer than the install brings a new one', () => {
  dated('package-lock.json', 3000);
  expect(whyInstall(project)).toBe('package-lock.json is newer than what is installed');
});

test('a package that went missing is told by name', () => {
  rmSync(join(project, 'node_modules/a'), { recursive: true });
  expect(whyInstall(project)).toBe('node_modules/a is missing');
});

test('a record that cannot be read brings a new install', () => {
  write('node_modules/.package-lock.json', '{"packages": ');
  expect(whyInstall(project)).toBe('the record of what is installed cannot be read');
});
