import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { jobSheetOf } from '../../../src/files/job-sheet/content.ts';
import { runCommand } from '../../support/command.ts';
import { exampleJob } from '../../support/route-job.ts';

const example = join(process.cwd(), 'fixtures/example.gentlebend.json');
let folder: string;

/** Long enough for a machine that has other things to do, ms. */
vi.setConfig({ testTimeout: 60_000 });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-report-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = (...args: string[]) => runCommand(args, folder);

test('report writes a PDF named after the job file into the folder that it is called from', async () => {
  const { code, stdout, stderr } = await run('report', example, '--scheme', 'wall');
  expect([code, stderr]).toEqual([0, '']);
  const [name] = readdirSync(folder);
  expect(name).toBe('example-job-sheet.pdf');
  expect(stdout).toContain(join(folder, 'example-job-sheet.pdf'));
  const bytes = readFileSync(join(folder, 'example-job-sheet.pdf'));
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
});

test('report --out takes a folder or a file', async () => {
  mkdirSync(join(folder, 'sheets'));
  await run('report', example, '--scheme', 'wall', '--out', 'sheets');
  await run('report', example, '--scheme', 'wall', '--paper', 'a4', '--out', 'wall.pdf');
  expect(readdirSync(folder).sort()).toEqual(['sheets', 'wall.pdf']);
  expect(readdirSync(join(folder, 'sheets'))).toEqual(['example-job-sheet.pdf']);
});

test('report takes the paper of the job’s units, or the one asked for', async () => {
  await run('report', example, '--scheme', 'wall', '--out', 'usual.pdf');
  await run('report', example, '--scheme', 'wall', '--paper', 'a4', '--out', 'asked.pdf');
  const boxOf = (name: string) =>
    /\/MediaBox \[[^\]]*\]/.exec(readFileSync(join(folder, name), 'latin1'))?.[0];
  expect(boxOf('usual.pdf')).toMatch(/0 0 612 792/);
  expect(boxOf('asked.pdf')).toMatch(/595/);
});

test('report never writes one job’s sheet over another’s', async () => {
  const { code, stderr } = await run('report', example, example, '--scheme', 'wall', '--out', 'one.pdf');
  expect(code).toBe(2);
  expect(stderr).toMatch(/written already for another file/);
});

test('report --text --json gives the data of the sheets and writes no file', async () => {
  const { stdout } = await run('report', example, '--text', '--json', '--date', '2026-03-02');
  const { sheets } = JSON.parse(stdout);
  const made = await jobSheetOf(exampleJob(), 'wall', { date: new Date('2026-03-02T12:00:00') });
  expect(sheets[0]).toEqual(JSON.parse(JSON.stringify(made)));
  expect(sheets).toHaveLength(2);
  expect(readdirSync(folder)).toEqual([]);
});

test('report --text tells results, schedule and calculation in plain lines', async () => {
  const { stdout } = await run('report', example, '--text', '--scheme', 'roof', '--date', '2026-03-02');
  expect(stdout).toMatch(/^Job sheet\nJob: Invented example kitchen\nScheme: Up through the roof\n/);
  expect(stdout).toMatch(/Date: 2026-03-02/);
  expect(stdout).toMatch(/A\.4 Velocity\n {2}V = Q \/ A/);
  expect(stdout).toMatch(/Designed by: _{20}/);
});

test('report refuses a day that is none', async () => {
  const { code, stderr } = await run('report', example, '--date', '2026-13-40');
  expect(code).toBe(2);
  expect(stderr).toMatch(/is no day/);
});
