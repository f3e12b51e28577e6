import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readJob } from '../../../src/files/read.ts';
import type { Job } from '../../../src/graph/document.ts';
import type { Solved, SpeedResult } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { runCommand } from '../../support/command.ts';
import { sampleJob, sampleWith } from '../files/sample.ts';

const example = 'fixtures/example.gentlebend.json';
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gentlebend-command-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = (...args: string[]) => runCommand(args, folder);

function file(text: string): string {
  const path = join(folder, 'job.gentlebend.json');
  writeFileSync(path, text);
  return path;
}

function exampleJob(): Job {
  const read = readJob(readFileSync(example, 'utf8'), { repair: false });
  if (!read.ok) throw new Error('the example job is broken');
  return read.job;
}

function solvedOf(speed: SpeedResult | undefined): Solved {
  if (!speed?.outcome.solved) throw new Error('not solved');
  return speed.outcome;
}

test('--json gives every scheme, hood and speed with the numbers of the solver', async () => {
  const { code, stdout, stderr } = await run('solve', example, '--json');
  const job = exampleJob();
  const printed = JSON.parse(stdout);
  expect([code, stderr]).toEqual([0, '']);
  expect(printed.schemes.map((scheme: { id: string }) => scheme.id)).toEqual(job.schemes.map(({ id }) => id));
  for (const [i, { id, name }] of job.schemes.entries()) {
    const solution = solveScheme(job, id);
    const scheme = printed.schemes[i];
    expect(scheme.name).toBe(name);
    expect(scheme.findings.map((finding: { id: string }) => finding.id)).toEqual(
      solution.findings.map((f) => f.id),
    );
    expect(scheme.speeds).toHaveLength(solution.speeds.length);
    for (const [k, speed] of solution.speeds.entries()) {
      const solved = solvedOf(speed);
      expect(scheme.speeds[k]).toMatchObject({
        hood: speed.hood,
        name: speed.name,
        flow: solved.flow,
        ratedFlow: speed.ratedFlow,
        totalPressure: solved.totalPressure,
      });
      expect(scheme.speeds[k].segments).toHaveLength(solved.segments.size);
      expect(scheme.speeds[k].fittings).toHaveLength(solved.fittings.length);
    }
  }
});

test('--json names every segment and fitting with its numbers in SI', async () => {
  const [scheme] = JSON.parse((await run('solve', example, '--json')).stdout).schemes;
  const speed = scheme.speeds.at(-1);
  for (const segment of speed.segments) {
    expect(segment).toMatchObject({
      id: expect.any(String),
      flow: expect.any(Number),
      velocity: expect.any(Number),
    });
    expect(segment.frictionLoss).toBeCloseTo(segment.lossPerMetre * segment.frictionLength, 9);
  }
  for (const fitting of speed.fittings) {
    expect(fitting).toMatchObject({
      at: expect.any(String),
      kind: expect.any(String),
      c: expect.any(Number),
      loss: expect.any(Number),
      equivalentLength: expect.any(Number),
    });
  }
  const spent = [
    ...speed.segments.map((s: { frictionLoss: number }) => s.frictionLoss),
    ...speed.fittings.map((f: { loss: number }) => f.loss),
  ];
  expect(spent.reduce((sum: number, loss: number) => sum + loss, 0)).toBeCloseTo(
    speed.totalPressure + speed.house.pressure,
    4,
  );
});

test('the table has a row for every speed of every scheme, in the units of the job', async () => {
  const { code, stdout } = await run('solve', example);
  const job = exampleJob();
  const rows = stdout.split('\n').filter((line) => / % {2}/.test(line));
  expect(code).toBe(0);
  expect(rows).toHaveLength(job.schemes.length * (job.hoods[0]?.speeds.length ?? 0));
  expect(rows.every((row) => row.includes(job.units === 'imperial' ? 'cfm' : 'm³/h'))).toBe(true);
});

test('the cautions stand under the table and in the JSON', async () => {
  const table = await run('solve', example);
  const json = JSON.parse((await run('solve', example, '--json')).stdout);
  expect(table.stdout).toContain('Local codes');
  expect(table.stdout).toContain('Carbon monoxide');
  expect(json.cautions.join(' ')).toContain('licensed practitioner');
});

test('--losses adds what every segment and fitting costs', async () => {
  const plain = await run('solve', example);
  const { stdout } = await run('solve', example, '--losses');
  const { fittings } = solvedOf(solveScheme(exampleJob(), exampleJob().schemes[0]?.id ?? '').speeds[0]);
  expect(fittings.length).toBeGreaterThan(0);
  for (const { label } of fittings) expect(stdout).toContain(label);
  expect(plain.stdout).not.toContain('where the pressure goes');
});

test('a scheme that leads nowhere has no flow, and says why', async () => {
  const path = file(sampleWith(['schemes', 0, 'segments'], []));
  const json = JSON.parse((await run('solve', path, '--json')).stdout);
  const speeds = json.schemes[0].speeds;
  expect(speeds.map((speed: { flow: unknown }) => speed.flow)).toEqual([null, null]);
  expect(speeds[0].reason).toMatch(/\w/);
  const table = await run('solve', path);
  expect([table.code, table.stdout.includes(speeds[0].reason)]).toEqual([0, true]);
});

test('a key that the format does not know is told on standard error, and the rest is solved', async () => {
  const { code, stdout, stderr } = await run('solve', file(sampleWith(['colour'], 'red')), '--json');
  expect(code).toBe(0);
  expect(stderr).toMatch(/colour: is not part of the format/);
  expect(JSON.parse(stdout).schemes).toHaveLength(1);
});

test.each([
  ['no command', []],
  ['another command', ['draw', example]],
  ['no file', ['solve']],
  ['a file that is not there', ['solve', 'no-such-file.gentlebend.json']],
  ['a folder', ['solve', 'fixtures']],
  ['an option of another command', ['solve', example, '--strict']],
  ['standard input twice', ['solve', '-', '-']],
  ['an option that does not exist', ['solve', example, '--fast']],
])('%s: a message on standard error, nothing on standard output, exit 2', async (_, args) => {
  const { code, stdout, stderr } = await run(...args);
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toMatch(/\w/);
});

test.each([
  ['text that is not JSON', '{', /line 1, column 2/],
  [
    'a node that is not there',
    sampleWith(['schemes', 0, 'segments', 1, 'to'], 'n9'),
    /schemes\[0\]\.segments\[1\]\.to: no node "n9"/,
  ],
  ['a newer version', sampleWith(['version'], 9), /version 9/],
  [
    'a length given as text',
    sampleWith(['kitchen', 'ceilingHeight'], '8 ft'),
    /kitchen\.ceilingHeight: must be a number, not text/,
  ],
])('%s is refused with its place: nothing on standard output, exit 2', async (_, text, place) => {
  const { code, stdout, stderr } = await run('solve', file(text), '--json');
  expect([code, stdout]).toEqual([2, '']);
  expect(stderr).toMatch(place);
});

test('two hoods have a row each, named', async () => {
  const job = sampleJob();
  const [hood] = job.hoods;
  const [scheme] = job.schemes;
  if (!hood || !scheme) throw new Error('the sample has a hood and a scheme');
  job.hoods.push({ ...hood, id: 'h2', name: 'Second hood' });
  scheme.nodes.push(
    { id: 'm1', at: [5, 0, 1.7], role: 'hood', hood: 'h2' },
    { id: 'm2', at: [5, 0, 3], role: 'cap', cap: 'roof-cap' },
  );
  scheme.segments.push({ id: 'e1', from: 'm1', to: 'm2' });
  const { stdout } = await run('solve', file(JSON.stringify(job)));
  expect(stdout.match(/^ +Wall hood +(low|high) /gm)).toHaveLength(2);
  expect(stdout.match(/^ +Second hood +(low|high) /gm)).toHaveLength(2);
});

test('a file may be named from the folder that npm was started in', async () => {
  file(JSON.stringify(sampleJob()));
  expect((await run('solve', 'job.gentlebend.json')).code).toBe(0);
});

test('--help says how to use it', async () => {
  expect(await run('--help')).toMatchObject({
    code: 0,
    stdout: expect.stringMatching(/^Usage: gentlebend COMMAND FILE/),
  });
});

test('--json carries sound, house pressure, temperatures and the airflow that the cooktop asks for', async () => {
  const { required, schemes } = JSON.parse((await run('solve', example, '--json')).stdout);
  const speed = schemes[0].speeds.at(-1);
  const solved = solvedOf(solveScheme(exampleJob(), 'wall').speeds.at(-1));
  expect(required).toMatchObject({ governing: 'heat-input', flow: expect.closeTo(0.2834, 3) });
  expect(required.rules.length).toBeGreaterThan(2);
  expect(speed.house.pressure).toBe(solved.house?.pressure);
  expect(speed.house.limit).toMatchObject({ value: 15, source: expect.stringMatching(/limit table/) });
  expect(speed.house.makeUpNeeded.flow).toBeGreaterThan(0);
  expect(speed.sound.cook.level).toBe(solved.sound.cook.level);
  expect(Object.keys(speed.sound.cook.byCause)).toEqual([...solved.sound.cook.byCause.keys()]);
  expect(speed.sound).toMatchObject({ uncertainty: 5, assumptions: expect.any(Array) });
  for (const segment of speed.segments)
    expect(segment).toMatchObject({
      inletTemperature: expect.any(Number),
      outletTemperature: expect.any(Number),
      wallTemperature: expect.any(Number),
      condensation: { risk: expect.any(Boolean) },
    });
});

test('the table carries sound with its uncertainty, house pressure, and the required airflow with its source', async () => {
  const { stdout } = await run('solve', example);
  expect(stdout).toMatch(/The cooktop asks for \d+ cfm \(.*;.*\)\. Other rules/);
  expect(stdout).toMatch(/\d ±5 dBA/);
  expect(stdout).toMatch(/sones .*house/);
  expect(stdout).toMatch(/−0\.0\d+ in w\.g\./);
  expect(stdout).toMatch(/danger: .*carbon monoxide/);
});

test('a kitchen without a house around it has no house pressure, in the table or in JSON', async () => {
  const { house: _, ...job } = exampleJob();
  const path = file(JSON.stringify(job));
  expect((await run('solve', path)).stdout).not.toMatch(/\bhouse {2}/);
  expect(JSON.parse((await run('solve', path, '--json')).stdout).schemes[0].speeds[0].house).toBeNull();
});

test('--explain prints how every figure comes about: formula, inputs, sources', async () => {
  const { stdout } = await run('solve', example, '--explain');
  expect(stdout).toMatch(/formula {2}p_s = p_t − ρ/);
  expect(stdout).toMatch(/Pressure of the house against outdoors, boost: p_room = −\d/);
  expect(stdout).toMatch(/Sound at the cook's head by fan, boost: L = /);
  expect(stdout).toMatch(/Wall temperature, the leg from .*: T_w = /);
  expect(stdout).toMatch(/Airflow that the cooktop asks for: Q_need = /);
  expect(stdout).toMatch(/source {3}.*\(from memory; limits\/induced-draught\)/);
  expect((await run('solve', example)).stdout).not.toContain('formula');
});

test('--json --explain gives every speed the derivations of all its figures', async () => {
  const { schemes } = JSON.parse((await run('solve', example, '--json', '--explain')).stdout);
  const { derivations } = schemes[1].speeds.at(-1);
  expect(derivations.length).toBeGreaterThan(100);
  for (const found of derivations)
    expect(found).toMatchObject({
      ref: { figure: expect.any(String) },
      title: expect.any(String),
      value: expect.any(Number),
      formula: expect.any(String),
      inputs: expect.any(Array),
      sources: expect.any(Array),
      notes: expect.any(Array),
    });
  const plain = JSON.parse((await run('solve', example, '--json')).stdout);
  expect(plain.schemes[0].speeds[0].derivations).toBeUndefined();
});

/** The document of the format's description, with its gaps filled in; what it has in common with the sample is the sample's. */
const { format, version, units, kitchen, house, hoods, exits } = sampleJob();
const described = {
  format,
  version,
  title: 'As the format is described, invented',
  notes: '',
  units,
  air: { elevation: 0, temperature: 20, humidity: 0.5, outdoorTemperature: 0 },
  kitchen,
  house,
  hoods: hoods.map((hood) => ({ ...hood, speeds: hood.speeds.filter(({ name }) => name === 'high') })),
  blocks: [{ id: 'b1', name: 'joist 4', kind: 'obstacle', min: [0, 0, 2.2], max: [0.04, 4, 2.44] }],
  exits,
  underlays: [],
  prices: {},
  schemes: [
    {
      id: 's1',
      name: 'Out the north wall',
      defaults: {
        duct: { shape: 'round', diameter: 0.2032 },
        material: 'galvanized',
        bend: 'three-piece',
      },
      nodes: [
        { id: 'n1', at: [1.2, 0.4, 1.75], role: 'hood', hood: 'h1' },
        { id: 'n2', at: [1.2, 0.4, 2.3], role: 'turn', bend: { kind: 'smooth', radiusRatio: 1.5 } },
        { id: 'n3', at: [1.2, 3, 2.3], role: 'cap', cap: 'wall-flap' },
      ],
      segments: [
        {
          id: 'd1',
          from: 'n1',
          to: 'n2',
          duct: { shape: 'round', diameter: 0.2032 },
          material: 'galvanized',
          stretch: 1,
          insulation: 0,
          fittings: [{ kind: 'backdraught-damper', at: 0.3 }],
        },
        { id: 'd2', from: 'n2', to: 'n3' },
      ],
    },
  ],
};

test('a job written as the format describes it is solved without a word', async () => {
  const { code, stdout, stderr } = await run('solve', file(JSON.stringify(described)), '--json');
  expect([code, stderr]).toEqual([0, '']);
  const [speed] = JSON.parse(stdout).schemes[0].speeds;
  expect(speed).toMatchObject({ hood: 'h1', name: 'high' });
  expect(speed.fittings.map(({ kind }: { kind: string }) => kind)).toEqual([
    'backdraught-damper',
    'bend',
    'cap',
  ]);
  expect(speed.fittings[1].label).toMatch(/smooth/i);
});

test('a job says no more than it must: without air, kitchen, house, blocks, exits it is taken as usual', async () => {
  const { title, hoods, schemes } = described;
  const least = await run(
    'solve',
    file(JSON.stringify({ format, version, title, units, hoods, schemes })),
    '--json',
  );
  expect([least.code, least.stderr]).toEqual([0, '']);
  const given = await run(
    'solve',
    file(JSON.stringify({ ...described, house: undefined, kitchen: {} })),
    '--json',
  );
  const flowIn = ({ stdout }: { stdout: string }) => JSON.parse(stdout).schemes[0].speeds[0].flow;
  expect(flowIn(least)).toBe(flowIn(given));
});

test('--json has every field that is promised, in SI', async () => {
  const { stdout } = await run('solve', example, '--json');
  for (const scheme of JSON.parse(stdout).schemes) {
    expect(scheme).toMatchObject({
      id: expect.any(String),
      name: expect.any(String),
      findings: expect.any(Array),
    });
    for (const speed of scheme.speeds) {
      expect(speed).toMatchObject({
        hood: expect.any(String),
        name: expect.any(String),
        flow: expect.any(Number),
        ratedFlow: expect.any(Number),
        totalPressure: expect.any(Number),
      });
      expect(speed.segments.length * speed.fittings.length).toBeGreaterThan(0);
      for (const { id, ...figures } of speed.segments) {
        const { flow, velocity, frictionLoss, lossPerMetre } = figures;
        expect([typeof id, ...[flow, velocity, frictionLoss, lossPerMetre].map(Number.isFinite)]).toEqual([
          'string',
          true,
          true,
          true,
          true,
        ]);
      }
      for (const { at, kind, c, loss, equivalentLength } of speed.fittings) {
        expect([typeof at, typeof kind, ...[c, loss, equivalentLength].map(Number.isFinite)]).toEqual([
          'string',
          'string',
          true,
          true,
          true,
        ]);
      }
    }
  }
});
