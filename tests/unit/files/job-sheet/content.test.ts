import { describe, expect, it } from 'vitest';
import { checkCodes } from '../../../../src/advice/codes/check.ts';
import { totalsOf } from '../../../../src/advice/parts/totals.ts';
import { requiredAirflow } from '../../../../src/advice/required.ts';
import { jobSheetNow, jobSheetOf } from '../../../../src/files/job-sheet/content.ts';
import type { JobSheet, SheetBlock, SheetCell, SheetTable } from '../../../../src/files/job-sheet/types.ts';
import type { Job } from '../../../../src/graph/document.ts';
import type { Solved } from '../../../../src/graph/solution.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { emptyJob } from '../../../../src/graph/templates.ts';
import { plainChoice, quantity, styleOf } from '../../../../src/units/index.ts';
import { exampleJob, runThrough, withScheme } from '../../../support/route-job.ts';
import { twoHoods } from '../../../support/two-hoods.ts';

const date = new Date('2026-11-25T12:00:00Z');
const job = exampleJob();

const blocksOf = (sheet: JobSheet): SheetBlock[] => sheet.sections.flatMap(({ blocks }) => blocks);

function tableOf(sheet: JobSheet, id: string): SheetTable {
  const found = blocksOf(sheet).find((block) => block.kind === 'table' && block.id === id);
  if (found?.kind !== 'table') throw new Error(`no table "${id}"`);
  return found;
}

/** A cell by row and column. */
function cell(table: SheetTable, row: string, column: string): SheetCell {
  const at = table.columns.findIndex(({ id }) => id === column);
  const found = table.rows.find(({ id }) => id === row)?.cells[at];
  if (!found) throw new Error(`no cell "${row}" "${column}"`);
  return found;
}

const full = (scheme: string): { solved: Solved; speeds: ReturnType<typeof solveScheme>['speeds'] } => {
  const { speeds } = solveScheme(job, scheme);
  const outcome = speeds.at(-1)?.outcome;
  if (!outcome?.solved) throw new Error('the example is solved');
  return { solved: outcome, speeds };
};

describe.each(['wall', 'roof'])('the sheet of the example, scheme %s,', (scheme) => {
  const sheet = jobSheetOf(job, scheme, { date });

  it('gives at every speed the numbers of the solver', async () => {
    const table = tableOf(await sheet, 'speeds');
    const { speeds } = full(scheme);
    const need = requiredAirflow(job.kitchen).governing.flow;
    expect(table.rows.length).toBe(speeds.length);
    for (const { hood, speed, ratedFlow, outcome } of speeds) {
      if (!outcome.solved) throw new Error('solved');
      const row = (column: string) => cell(table, `${hood}/${speed}`, column).si;
      expect(row('delivered')).toBe(outcome.flow);
      expect(row('rated')).toBe(ratedFlow);
      expect(row('of rated')).toBe(outcome.flow / ratedFlow);
      expect(row('of required')).toBe(outcome.flow / need);
      expect(row('total')).toBe(outcome.totalPressure);
      expect(row('static')).toBe(outcome.staticPressure);
      expect(row('fastest')).toBe(outcome.fastest?.velocity);
      expect(row('cook')).toBe(outcome.sound.cook.level);
      expect(row('outside')).toBe(outcome.sound.outside.level);
      expect(row('house')).toBe(outcome.house?.pressure);
    }
  });

  it('writes each number as the job shows it, with its unit in the head', async () => {
    const table = tableOf(await sheet, 'speeds');
    for (const { hood, speed, outcome } of full(scheme).speeds) {
      if (!outcome.solved) throw new Error('solved');
      const { figure, unit } = quantity('flow', outcome.flow, job.units);
      expect(cell(table, `${hood}/${speed}`, 'delivered').text).toBe(figure);
      expect(table.columns.find(({ id }) => id === 'delivered')?.unit).toBe(unit);
    }
  });

  it('lists each leg with its true length, and losses that add up to the whole path', async () => {
    const table = tableOf(await sheet, 'route');
    const { solved } = full(scheme);
    const { route } = solveScheme(job, scheme);
    for (const leg of route.segments.values()) {
      expect(cell(table, leg.id, 'length').si).toBe(leg.length);
      expect(cell(table, leg.id, 'loss').si).toBe(solved.segments.get(leg.id)?.frictionLoss);
    }
    for (const fitting of solved.fittings) {
      expect(cell(table, fitting.id, 'loss').si).toBe(fitting.loss);
      expect(cell(table, fitting.id, 'equivalent').si).toBe(fitting.equivalentLength);
    }
    const losses = table.columns.findIndex(({ id }) => id === 'loss');
    const parts = table.rows.filter(({ total }) => !total).map(({ cells }) => cells[losses]?.si ?? 0);
    const whole = table.rows.find(({ total }) => total)?.cells[losses]?.si;
    expect(parts.reduce((sum, loss) => sum + loss, 0)).toBeCloseTo(whole ?? 0, 9);
    expect(whole).toBeCloseTo(solved.totalPressure + (solved.house?.pressure ?? 0), 6);
  });

  it('splits the pressure of the fan into parts that add up to it', async () => {
    const { columns, rows } = tableOf(await sheet, 'budget');
    columns.slice(1).forEach((_, k) => {
      const figures = rows.map(({ cells }) => cells[k + 1]?.si ?? 0);
      const sum = figures.at(-1) ?? 0;
      expect(figures.slice(0, -1).reduce((total, part) => total + part, 0)).toBeCloseTo(sum, 6);
    });
  });

  it('tells every finding and every rule that is broken or open, with what to do', async () => {
    const told = blocksOf(await sheet).flatMap((block) => (block.kind === 'findings' ? block.findings : []));
    const solution = solveScheme(job, scheme);
    for (const finding of solution.findings) {
      const found = told.find(({ id }) => id === finding.id);
      expect(found).toMatchObject({ message: finding.message, remedy: finding.remedy ?? '' });
    }
    const open = checkCodes(job, solution).filter(
      ({ state }) => state === 'fails' || state === 'cannot tell',
    );
    expect(told.length).toBe(solution.findings.length + open.length);
    for (const { rule, remedy } of open)
      expect(told.find(({ id }) => id === `rule/${rule}`)?.remedy).toBe(remedy);
  });

  it('lists what is bought with the sum of the price list', async () => {
    const table = tableOf(await sheet, 'parts');
    const { cost } = totalsOf(job, scheme);
    expect(table.rows.map(({ id }) => id)).toEqual([...cost.lines.map(({ part }) => part.key), 'total']);
    expect(cell(table, 'total', 'amount').si).toBe(cost.total);
  });
});

it('warns of carbon monoxide beside the figure, and of grease, before any number', async () => {
  const { sections } = await jobSheetOf(job, 'wall', { date });
  const [first] = sections;
  const cautions = first?.blocks
    .flatMap((block) => (block.kind === 'cautions' ? block.cautions : []))
    .join(' ');
  expect(cautions).toMatch(/Carbon monoxide/);
  expect(cautions).toMatch(/Grease burns/);
  expect(cautions).toMatch(/licensed/);
  const results = sections.find(({ id }) => id === 'results')?.blocks ?? [];
  const drawnDown = results.findIndex((block) => block.kind === 'cautions');
  expect(results[drawnDown + 1]).toMatchObject({ kind: 'table', id: 'house' });
});

it('marks what falls short of what is asked, and nothing else', async () => {
  const table = tableOf(await jobSheetOf(job, 'wall', { date }), 'speeds');
  const need = requiredAirflow(job.kitchen).governing.flow;
  for (const { hood, speed, outcome } of full('wall').speeds) {
    const short = outcome.solved && outcome.flow < need;
    expect(cell(table, `${hood}/${speed}`, 'of required').poor === true).toBe(short);
  }
});

it('says why there are no numbers where a scheme has none', async () => {
  const empty = emptyJob('metric');
  const sheet = await jobSheetOf(empty, empty.schemes[0]?.id ?? '', { date });
  const table = tableOf(sheet, 'speeds');
  expect(table.notes.join(' ')).toMatch(/not on the sheets of this scheme yet/);
  expect(table.rows.every(({ cells }) => cells.some(({ text }) => text === '–'))).toBe(true);
  const texts = blocksOf(sheet).flatMap((block) => (block.kind === 'text' ? [block.text] : []));
  expect(texts).toContain('No duct is drawn in this scheme yet.');
});

it('lists a leg without a solution with its length and no loss', async () => {
  const dead = withScheme(twoHoods(false), (scheme) => ({
    ...scheme,
    nodes: scheme.nodes.filter(({ id }) => id !== 'a'),
    segments: scheme.segments.filter(({ id }) => id === 'out'),
  }));
  const table = tableOf(await jobSheetOf(dead, dead.schemes[0]?.id ?? '', { date }), 'route');
  expect(cell(table, 'out', 'length').si).toBe(3);
  expect(cell(table, 'out', 'loss').text).toBe('–');
});

it('gives each of several hoods its rows, its charts and its path', async () => {
  const two = twoHoods();
  const sheet = await jobSheetOf(two, two.schemes[0]?.id ?? '', { date });
  const hoods = new Set(tableOf(sheet, 'speeds').rows.map(({ id }) => id.split('/')[0]));
  expect(hoods).toEqual(new Set(['hood-1', 'hood-2']));
  expect(tableOf(sheet, 'route').rows.filter(({ total }) => total)).toHaveLength(2);
  expect(blocksOf(sheet).filter((block) => block.kind === 'chart')).toHaveLength(6);
});

it('has a cell for every column in every row of every table', async () => {
  const tables = blocksOf(await jobSheetOf(job, 'roof', { date })).flatMap((block) =>
    block.kind === 'table' ? [block] : block.kind === 'formula' ? block.tables : [],
  );
  expect(tables.length).toBeGreaterThan(30);
  for (const { id, columns, rows } of tables)
    for (const row of rows) expect(row.cells.length, `${id} ${row.id}`).toBe(columns.length);
});

it('writes day and figures in the style that is asked for', async () => {
  const style = styleOf({ ...plainChoice, locale: 'de-DE' });
  const metric: Job = { ...job, units: 'metric' };
  const sheet = await jobSheetOf(metric, 'wall', { date, style });
  expect(sheet.title.date).toBe('25.11.2026');
  expect(cell(tableOf(sheet, 'speeds'), `${job.hoods[0]?.id}/0`, 'fastest').text).toMatch(/^\d,\d$/);
});

it('refuses a scheme that is not there', async () => {
  await expect(jobSheetOf(job, 'nowhere', { date })).rejects.toThrow(RangeError);
});

it('keeps the style that each of two sheets is written in, made at the same time', async () => {
  const style = styleOf({ ...plainChoice, locale: 'de-DE' });
  const alone = [await jobSheetOf(job, 'wall', { date }), await jobSheetOf(job, 'wall', { date, style })];
  const together = await Promise.all([
    jobSheetOf(job, 'wall', { date }),
    jobSheetOf(job, 'wall', { date, style }),
  ]);
  expect(together).toEqual(alone);
});

it('stops where it is called off', async () => {
  const control = new AbortController();
  const making = jobSheetOf(job, 'wall', { date, signal: control.signal });
  control.abort(new DOMException('enough', 'AbortError'));
  await expect(making).rejects.toThrow('enough');
});

it('is the same when it is made at once', async () => {
  expect(jobSheetNow(job, 'wall', date)).toEqual(await jobSheetOf(job, 'wall', { date }));
});

it('is not made at once of a route that would hold the page for seconds', () => {
  const long = runThrough(Array.from({ length: 700 }, (_, i) => [i, 0, 2]));
  expect(jobSheetNow(long, long.schemes[0]?.id ?? '', date)).toBeNull();
});
