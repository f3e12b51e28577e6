import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';

let project: string;

/** A project of its own with nothing left to install, so that no test can touch the real packages. */
beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), 'gentlebend-ready-'));
  for (const name of ['ready', 'install', 'paths']) {
    cpSync(`scripts/${name}.mjs`, join(project, 'scripts', `${name}.mjs`));
  }
  mkdirSync(join(project, 'node_modules'));
  writeFileSync(join(project, 'package-lock.json'), '{}');
  writeFileSync(join(project, 'node_modules/.package-lock.json'), '{"packages": {}}');
});
afterAll(() => {
  rmSync(project, { recursive: true, force: true });
});

/** Runs scripts/ready.mjs as if on another Node. */
function ready(version: string) {
  const pretend = `Object.defineProperty(process.versions, 'node', { value: '${version}' });`;
  const load = `data:text/javascript,${encodeURIComponent(pretend)}`;
  const script = join(project, 'scripts/ready.mjs');
  return spawnSync(process.execPath, ['--import', load, script, '--quiet'], { encoding: 'utf8' });
}

test.each(['12.22.0', '18.20.4', '20.18.3'])(
  'Node %s is refused with a sentence that names the version needed',
  (version) => {
    const { status, stdout, stderr } = ready(version);
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/^Gentlebend needs Node 20\.19 or newer, and this is Node \d+\.\d+\.\d+\. .*\n$/);
  },
);

test.each(['20.19.0', '22.1.0', '24.0.0'])('Node %s does, and what is installed is left alone', (version) => {
  expect(ready(version)).toMatchObject({ status: 0, stdout: '', stderr: '' });
});

test('the version that the sentence names is the one that the package asks for', () => {
  expect(JSON.parse(readFileSync('package.json', 'utf8')).engines.node).toBe('>=20.19.0');
});
