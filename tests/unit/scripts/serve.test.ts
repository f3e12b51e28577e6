import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve } from '../../../scripts/serve.mjs';

let folder: string;
let server: { url: string; close: () => void };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-serve-'));
  mkdirSync(join(folder, 'app/assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'app/index.html'), '<p>here</p>');
  writeFileSync(join(folder, 'app/.built-from'), 'stamp');
  writeFileSync(join(folder, 'app/assets/a b.js'), 'export {};');
  server = await serve(join(folder, 'app'), { port: 0 });
});
afterAll(() => {
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Asks for a path just as it is written: `fetch` would tidy it first. */
function statusOf(path: string, method = 'GET'): Promise<number | undefined> {
  const { hostname, port } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const sent = request({ hostname, port, path, method }, (response) => {
      response.resume();
      resolve(response.statusCode);
    });
    sent.on('error', reject).end();
  });
}

test('the address is on this machine alone', () => {
  expect(server.url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
});

test('the folder itself gives its page, under a policy that lets nothing in from elsewhere', async () => {
  const response = await fetch(server.url);
  expect(await response.text()).toBe('<p>here</p>');
  expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(response.headers.get('content-security-policy')).toMatch(/^default-src 'self';/);
});

test('a script has a type that browsers run', async () => {
  const response = await fetch(`${server.url}assets/a%20b.js?x=1`);
  expect([response.status, response.headers.get('content-type')]).toEqual([
    200,
    'text/javascript; charset=utf-8',
  ]);
});

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/assets/..%5c..%5csecret.txt',
  '/.built-from',
  '/%00',
  '/%',
  '/none',
  '/assets',
])('%s gives nothing', async (path) => {
  expect(await statusOf(path)).toBe(404);
});

test('only reading is served', async () => {
  expect([await statusOf('/', 'HEAD'), await statusOf('/', 'POST')]).toEqual([200, 405]);
});

test('a busy port makes room for another one', async () => {
  const busy = Number(new URL(server.url).port);
  const other = await serve(join(folder, 'app'), { port: busy });
  expect(Number(new URL(other.url).port)).not.toBe(busy);
  other.close();
});

test('a busy port that was asked for strictly is refused with a sentence', async () => {
  const busy = Number(new URL(server.url).port);
  await expect(serve(folder, { port: busy, strict: true })).rejects.toThrow(
    `Port ${busy} is taken by another program.`,
  );
});
