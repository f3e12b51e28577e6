import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { checkCodes } from '../../../src/advice/codes/check.ts';
import { ranked } from '../../../src/advice/goals.ts';
import { totalsOf } from '../../../src/advice/parts/totals.ts';
import { partWords } from '../../../src/advice/parts.ts';
import { proposals } from '../../../src/advice/proposals.ts';
import { requiredAirflow } from '../../../src/advice/required.ts';
import { csvText } from '../../../src/files/csv/csv.ts';
import { partsTable } from '../../../src/files/csv/parts.ts';
import { routeTable } from '../../../src/files/csv/run.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob } from '../../support/route-job.ts';
import { sampleJob } from '../files/sample.ts';

const example = 'fixtures/example.gentlebend.json';
let folder: string;
let sample: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-process-'));
  sample = join(folder, 'sample.gentlebend.json');
  writeFileSync(sample, JSON.stringify(sampleJob()));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The command line as a person runs it: its own process, built from the sources. */
function command(args: string[], input?: string) {
  const options = { encoding: 'utf8', ...(input === undefined ? {} : { input }) } as const;
  return spawnSync(process.execPath, ['scripts/command.mjs', ...args], options);
}

const json = (args: string[], input?: string) => JSON.parse(command([...args, '--json'], input).stdout);

test('the built command prints one JSON object and nothing else', () => {
  const { status, stdout, stderr } = command(['solve', example, '--json']);
  expect([status, stderr]).toEqual([0, '']);
  expect(JSON.parse(stdout).schemes).toHaveLength(2);
});

test('bad input gives exit 2, a message on standard error and nothing on standard output', () => {
  const { status, stdout, stderr } = command(['solve', 'package.json']);
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toBe('package.json: format: this is not a Gentlebend job (expected "gentlebend")\n');
});

test('runs at the same time, and a second run, share one build', async () => {
  const before = builds();
  const codes = await Promise.all([together(), together(), together()]);
  expect(codes).toEqual([0, 0, 0]);
  expect(command(['--help']).stdout).toMatch(/^Usage: /);
  expect(builds().filter((name) => !before.includes(name)).length).toBeLessThanOrEqual(1);
});

function together(): Promise<number | null> {
  const child = spawn(process.execPath, ['scripts/command.mjs', '--help'], { stdio: 'ignore' });
  return new Promise((resolve) => child.on('close', resolve));
}

function builds(): string[] {
  return existsSync('dist/built') ? readdirSync('dist/built') : [];
}

test('a job on standard input is solved as the same job in a file is', () => {
  const { file, ...piped } = json(['solve', '-'], readFileSync(example, 'utf8'));
  const { file: named, ...read } = json(['solve', example]);
  expect([file, named]).toEqual(['-', example]);
  expect(piped).toEqual(read);
});

test('many files give an array in their order, and one that is broken stands in it with its problems', () => {
  const { status, stdout, stderr } = command(['solve', sample, 'package.json', example, '--json']);
  const all = JSON.parse(stdout);
  expect(status).toBe(2);
  expect(stderr).toMatch(/^package\.json: format: /);
  expect(all.map(({ file }: { file: string }) => file)).toEqual([sample, 'package.json', example]);
  expect(all[1].problems).toEqual([
    { path: 'format', message: expect.stringContaining('not a Gentlebend job') },
  ]);
  expect(all[2]).toEqual(json(['solve', example]));
});

test('many files as text have a heading each', () => {
  const { status, stdout } = command(['solve', sample, example]);
  expect(status).toBe(0);
  expect(stdout.match(/^==> .* <==$/gm)).toEqual([`==> ${sample} <==`, `==> ${example} <==`]);
});

test('check tells findings and rules as they are, and fails where there is a danger', () => {
  const { status, stdout } = command(['check', example, '--json']);
  const job = exampleJob();
  const solution = solveScheme(job, 'roof');
  const scheme = JSON.parse(stdout).schemes[1];
  expect([status, scheme.id, scheme.failed]).toEqual([1, 'roof', true]);
  expect(scheme.findings).toEqual(JSON.parse(JSON.stringify(solution.findings)));
  expect(scheme.codes).toEqual(JSON.parse(JSON.stringify(checkCodes(job, solution))));
  for (const { message } of solution.findings) expect(command(['check', example]).stdout).toContain(message);
});

test('check lets a scheme pass that has no error and fails no rule, and is stricter when asked', () => {
  const { house: _, ...job } = exampleJob();
  const failing = checkCodes(job, solveScheme(job, 'wall')).filter(({ state }) => state === 'fails');
  const rules = Object.fromEntries(failing.map(({ rule }) => [rule, { off: true }]));
  const text = JSON.stringify({ ...job, profile: { rules } });
  const check = ['check', '-', '--scheme', 'wall'];
  expect(json(check, text).schemes[0].codes.map(({ state }: { state: string }) => state)).toContain(
    'cannot tell',
  );
  expect([command(check, text).status, json(check, text).schemes[0].failed]).toEqual([0, false]);
  expect(command([...check, '--strict'], text).status).toBe(1);
});

test('propose gives the proposals with the numbers of the solver, ranked by the goal', () => {
  const job = exampleJob();
  const found = proposals(job, 'roof');
  const need = requiredAirflow(job.kitchen).governing.flow;
  for (const goal of ['air', 'opening'] as const) {
    const [scheme] = json(['propose', example, '--scheme', 'roof', '--goal', goal]).schemes;
    const expected = ranked(found, goal, { need, flow: scheme.flow });
    const figures = ({ id, gain, cost, opening, fits }: (typeof found)[number]) => ({
      id,
      gain,
      cost,
      opening,
      fits,
    });
    expect(scheme.proposals.map(figures)).toEqual(expected.map(figures));
    expect(scheme.combinations).toEqual([]);
  }
});

test('propose together gives combinations that gain more than each of their members', () => {
  const [scheme] = json(['propose', example, '--scheme', 'roof', '--together']).schemes;
  const alone = new Map(scheme.proposals.map(({ id, gain }: { id: string; gain: number }) => [id, gain]));
  expect(scheme.combinations.length).toBeGreaterThan(0);
  for (const { gain, members } of scheme.combinations)
    for (const id of members) expect(gain).toBeGreaterThan((alone.get(id) as number | undefined) ?? 0);
});

test('parts gives the parts list, the cutting plans and their sums as they are', () => {
  const job = exampleJob();
  for (const scheme of json(['parts', example]).schemes) {
    const { cost, plans, run, bought, waste, weight } = totalsOf(job, scheme.id);
    expect(scheme).toMatchObject({ run, bought, waste, weight, total: cost.total, unpriced: cost.unpriced });
    expect(scheme.parts.map(({ key, amount }: { key: string; amount: number }) => [key, amount])).toEqual(
      cost.lines.map(({ part, amount }) => [part.key, amount]),
    );
    expect(scheme.plans.map(({ key, bars }: { key: string; bars: unknown }) => [key, bars])).toEqual(
      plans.map(({ key, bars }) => [key, JSON.parse(JSON.stringify(bars))]),
    );
    const text = command(['parts', example]).stdout;
    for (const { part } of cost.lines) expect(text).toContain(partWords(part, job.units));
  }
});

test('a table for spreadsheets is that of the job, on standard output or in a file', () => {
  const expected = csvText(partsTable(exampleJob(), ['wall', 'roof']));
  expect(command(['parts', example, '--csv', 'parts'])).toMatchObject({
    status: 0,
    stdout: expected,
    stderr: '',
  });
  const out = join(folder, 'parts.csv');
  const written = command(['parts', example, '--csv', 'parts', '--out', out]);
  expect([written.status, written.stdout, readFileSync(out, 'utf8')]).toEqual([0, '', expected]);
  expect(command(['solve', example, '--csv', 'route', '--decimal', 'comma', '--scheme', 'roof']).stdout).toBe(
    csvText(routeTable(exampleJob(), ['roof']), 'comma'),
  );
});

test('the tables of many jobs are one, with the file of each row, where their units are the same', () => {
  const { status, stdout } = command(['solve', example, sample, '--csv', 'results', '--units', 'metric']);
  const [heads, ...rows] = stdout.replace(/\r\n$/, '').split('\r\n');
  expect([status, heads?.split(',')[0]]).toEqual([0, '\uFEFFFile']);
  expect(rows.map((row) => row.split(',')[0])).toEqual([...Array<string>(8).fill(example), sample, sample]);
  const metric = join(folder, 'metric.gentlebend.json');
  writeFileSync(metric, JSON.stringify({ ...sampleJob(), units: 'metric' }));
  const mixed = command(['solve', example, metric, '--csv', 'results']);
  expect([mixed.status, mixed.stdout]).toEqual([2, '']);
  expect(mixed.stderr).toMatch(/different units/);
});

test('what cannot be written is told, with exit code 3', () => {
  const { status, stdout, stderr } = command(['parts', example, '--csv', 'parts', '--out', folder]);
  expect([status, stdout]).toEqual([3, '']);
  expect(stderr).toMatch(/could not be written: this is a folder/);
});

test('a speed or a scheme that the job has not is bad input', () => {
  const speed = command(['propose', example, '--speed', 'gale']);
  expect([speed.status, speed.stdout]).toEqual([2, '']);
  expect(speed.stderr).toMatch(/no fan speed "gale"; there are .*boost/);
  expect(command(['solve', example, '--scheme', 'cellar']).stderr).toMatch(/no scheme "cellar"/);
});

test('units are shown as asked for, in place of the job’s own', () => {
  expect(command(['solve', example, '--units', 'metric']).stdout).toMatch(/\d m³\/h/);
  expect(command(['solve', example]).stdout).not.toMatch(/m³\/h/);
});

test('validate tells sound files from broken ones, with the place of what is wrong', () => {
  const job = sampleJob();
  const [scheme] = job.schemes;
  if (scheme?.segments[1]) scheme.segments[1].to = 'n9';
  const broken = join(folder, 'broken.gentlebend.json');
  writeFileSync(broken, JSON.stringify(job));
  const { status, stdout } = command(['validate', example, broken, '--json']);
  const [sound, other] = JSON.parse(stdout);
  expect(status).toBe(1);
  expect(sound).toMatchObject({ file: example, valid: true, loads: true, problems: [], repairs: [] });
  expect(sound.schemes).toEqual(
    exampleJob().schemes.map(({ id, name, nodes, segments }) => ({
      id,
      name,
      nodes: nodes.length,
      segments: segments.length,
    })),
  );
  expect(other.valid).toBe(false);
  expect(other.problems[0]).toEqual({
    path: 'schemes[0].segments[1].to',
    message: expect.stringContaining('no node "n9"'),
  });
  expect(command(['validate', 'nowhere.json']).status).toBe(2);
});

test('--version is the version of the package', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  expect(command(['--version']).stdout).toBe(`${version}\n`);
});

test('Ctrl+C calls the work off after the file in hand, with code 130', async () => {
  const files = Array<string>(200).fill(example);
  const child = spawn(process.execPath, ['scripts/command.mjs', 'propose', ...files]);
  let written = '';
  let said = '';
  child.stdout.on('data', (chunk: Buffer) => {
    if (written === '') child.kill('SIGINT');
    written += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    said += chunk.toString();
  });
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  expect([code, said]).toEqual([130, 'Called off.\n']);
  expect(written.match(/^==> /gm)?.length).toBeLessThan(200);
});
