import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { solveScheme } from '../../../src/graph/solve.ts';
import { currentStyle, plainStyle } from '../../../src/units/index.ts';
import { runCommand } from '../../support/command.ts';
import { readPdf } from '../../support/pdf.ts';
import { exampleJob } from '../../support/route-job.ts';

const example = join(process.cwd(), 'fixtures/example.gentlebend.json');
let folder: string;

/** Long enough for a machine that has other things to do, ms. */
vi.setConfig({ testTimeout: 60_000 });

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-locale-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = (...args: string[]) => runCommand(args, folder);

/** The fastest air of the example at its highest speed, to a tenth of a metre a second. */
function fastest(): string {
  const outcome = solveScheme(exampleJob(), 'wall').speeds.at(-1)?.outcome;
  if (!outcome?.solved || !outcome.fastest) throw new Error('the example is solved');
  return outcome.fastest.velocity.toFixed(1);
}

const inMetric = ['--scheme', 'wall', '--units', 'metric'];

test('solve --locale writes figures as people of that language do', async () => {
  const plain = await run('solve', example, ...inMetric);
  const german = await run('solve', example, ...inMetric, '--locale', 'de-DE');
  expect(plain.stdout).toContain(`${fastest()} m/s`);
  expect(german.stdout).toContain(`${fastest().replace('.', ',')} m/s`);
  expect(german.stdout).not.toContain(`${fastest()} m/s`);
  const figures = (text: string) => text.split('\n').filter((line) => /^ {2}(low|boost) /.test(line));
  expect(figures(plain.stdout).join()).toMatch(/\d\.\d/);
  expect(figures(german.stdout).join()).not.toMatch(/\d\.\d/);
});

test.each(['check', 'propose', 'parts'])(
  '%s --locale writes figures with the comma of that language',
  async (name) => {
    const { stdout } = await run(name, example, ...inMetric, '--locale', 'de-DE');
    expect(stdout).toMatch(/\d,\d/);
  },
);

test('report --locale writes the PDF with the dates and figures of that language', async () => {
  const asked = ['--date', '2026-03-02', '--out', 'german.pdf', '--locale', 'de-DE'];
  await run('report', example, ...inMetric, ...asked);
  const { pages } = await readPdf(readFileSync(join(folder, 'german.pdf')));
  const texts = pages.flatMap((page) => page.texts.map(({ text }) => text));
  expect(texts).toContain(fastest().replace('.', ','));
  expect(texts).toContain('02.03.2026');
});

test.each([
  ['solve', '--json'],
  ['solve', '--csv', 'results'],
  ['check', '--json'],
  ['parts', '--csv', 'parts'],
  ['report', '--text', '--json', '--date', '2026-03-02'],
])('%s %s stays as it is whatever the locale', async (name, ...options) => {
  const plain = await run(name, example, ...inMetric, ...options);
  const german = await run(name, example, ...inMetric, ...options, '--locale', 'de-DE');
  expect(plain.stdout.length).toBeGreaterThan(100);
  expect(german.stdout.replace(/"made": .*/, '')).toBe(plain.stdout.replace(/"made": .*/, ''));
});

test('a locale that is none is refused with what one looks like, before any file is read', async () => {
  const { code, stdout, stderr } = await run('solve', 'nowhere.json', '--locale', 'German!');
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toContain('as de-DE or en-GB; not "German!"');
});

test('the style of one run is not left behind for the next', async () => {
  await run('solve', example, '--locale', 'de-DE');
  expect(currentStyle()).toBe(plainStyle);
});
