import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { offline, writeWorker } from '../../../scripts/offline.mjs';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-offline-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<p>here</p>');
  writeFileSync(join(folder, 'assets/late-12345678.js'), 'export {};');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function written() {
  writeWorker(folder);
  const text = readFileSync(join(folder, 'worker.js'), 'utf8');
  const version = /const version = '([0-9a-f]{16})';/.exec(text)?.[1];
  const files: unknown = JSON.parse(/const files = (\[.*\]);/.exec(text)?.[1] ?? 'null');
  return { version, files };
}

test('the worker lists every file of the build but itself, the page as the folder', () => {
  expect(written().files).toEqual(['assets/late-12345678.js', '']);
  expect(written().files).toEqual(['assets/late-12345678.js', '']);
});

test('the same build has the same version', () => {
  expect(written().version).toMatch(/^\w{16}$/);
  expect(written()).toEqual(written());
});

test('one changed byte of any file, or one more file, makes a new version', () => {
  const versions = [written().version];
  writeFileSync(join(folder, 'index.html'), '<p>Here</p>');
  versions.push(written().version);
  writeFileSync(join(folder, 'assets/late-12345678.js'), 'export { };');
  versions.push(written().version);
  writeFileSync(join(folder, 'more.txt'), '');
  versions.push(written().version);
  expect(new Set(versions).size).toBe(4);
});

test('the development server answers with a worker that takes itself away', () => {
  const served: string[] = [];
  offline().configureServer({
    middlewares: {
      use(path: string, answer: (request: unknown, response: unknown) => void) {
        answer(null, { setHeader: () => {}, end: (text: string) => served.push(path, text) });
      },
    },
  });
  expect(served[0]).toBe('/worker.js');
  expect(served[1]).toContain('self.registration.unregister()');
});
