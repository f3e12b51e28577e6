import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/** A room may import from rooms before it in this list and from no other. */
const rooms = [
  'words',
  'units',
  'hydraulics',
  'graph',
  'advice',
  'drawing',
  'files',
  'command',
  'canvas',
  'app',
];
const biome = join(process.cwd(), 'node_modules/@biomejs/biome/bin/biome');

interface Planted {
  readonly room: string;
  readonly line: string;
  readonly allowed: boolean;
}

const x = 'console.log(x);';
const ways: ((target: string) => string)[] = [
  (target) => `import { x } from '../${target}/a.ts'; ${x}`,
  (target) => `import type { X } from '../../${target}/deep/a.ts'; export type Y = X;`,
  (target) => `export * from '../${target}/a.ts';`,
  (target) => `const x = await import('../${target}/a.ts'); ${x}`,
  (target) => `import '../${target}/a.ts';`,
];

const planted: Planted[] = rooms.flatMap((room, at) =>
  rooms.flatMap((target, to) => {
    const notForBrowsers = target === 'command' && at > to;
    const line = ways[(at + to) % ways.length] ?? (() => '');
    return to === at ? [] : [{ room, line: line(target), allowed: to < at && !notForBrowsers }];
  }),
);
for (const room of rooms) {
  const headless = rooms.indexOf(room) <= rooms.indexOf('command');
  for (const name of ['react', 'react-dom/client', 'konva', 'konva/lib/Core', 'react-konva']) {
    planted.push({ room, line: `import x from '${name}'; ${x}`, allowed: !headless });
  }
  planted.push({ room, line: `import x from 'node:fs'; ${x}`, allowed: room === 'command' });
}

let folder: string;
let refused: Set<string>;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-rooms-'));
  const config = JSON.parse(readFileSync('biome.json', 'utf8'));
  const { $schema: _, vcs: __, ...rules } = config;
  writeFileSync(join(folder, 'biome.json'), JSON.stringify(rules));
  planted.forEach(({ room, line }, i) => {
    mkdirSync(join(folder, 'src', room, 'inner'), { recursive: true });
    writeFileSync(join(folder, 'src', room, 'inner', `planted${i}.ts`), `${line}\n`);
  });
  const args = [
    biome,
    'lint',
    '--only=style/noRestrictedImports',
    '--reporter=github',
    '--max-diagnostics=none',
    '.',
  ];
  const { stdout } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  refused = new Set(
    [...stdout.matchAll(/noRestrictedImports,file=.*?planted(\d+)\.ts/g)].map((match) => match[1] ?? ''),
  );
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test('every folder of src is a room with a place in the order', () => {
  expect(readdirSync('src').sort()).toEqual([...rooms].sort());
});

describe.each(rooms)('src/%s', (room) => {
  const here = planted
    .map((entry, i) => ({ ...entry, refused: `${i}` }))
    .filter((entry) => entry.room === room);

  test('refuses every import that is not allowed to it', () => {
    const slipped = here.filter((entry) => !entry.allowed && !refused.has(entry.refused));
    expect(slipped.map((entry) => entry.line)).toEqual([]);
    expect(here.some((entry) => !entry.allowed)).toBe(true);
  });

  test('lets through every import that is allowed to it', () => {
    const stopped = here.filter((entry) => entry.allowed && refused.has(entry.refused));
    expect(stopped.map((entry) => entry.line)).toEqual([]);
  });
});
