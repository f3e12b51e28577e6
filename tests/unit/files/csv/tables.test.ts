import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { costOf } from '../../../../src/advice/cost/price.ts';
import { cuttingOf } from '../../../../src/advice/parts/plan.ts';
import { partWords } from '../../../../src/advice/parts.ts';
import { requiredAirflow } from '../../../../src/advice/required.ts';
import { joined } from '../../../../src/files/csv/columns.ts';
import { csvText } from '../../../../src/files/csv/csv.ts';
import { cuttingTable, partsTable } from '../../../../src/files/csv/parts.ts';
import { resultsTable, routeTable } from '../../../../src/files/csv/run.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { CFM, FOOT, INCH, INCH_OF_WATER } from '../../../../src/units/index.ts';
import { exampleJob, solvedAtFull } from '../../../support/route-job.ts';

const both = ['wall', 'roof'];

/** Rows by their heads, read back by a reader of its own. */
function rows(table: Parameters<typeof csvText>[0], style: 'point' | 'comma' = 'point') {
  return parse(csvText(table, style), {
    bom: true,
    columns: true,
    delimiter: style === 'comma' ? ';' : ',',
  }) as Record<string, string>[];
}

const near = (text: string | undefined, value: number) =>
  expect(Math.abs(Number(text) - value)).toBeLessThan(1e-5 * Math.max(1, Math.abs(value)));

describe('the parts list as a table', () => {
  it('has every part of every scheme with its amount, weight and price in the units of its heads', () => {
    const job = exampleJob();
    const read = rows(partsTable(job, both));
    const lines = both.flatMap((id) => costOf(job, id).lines);
    expect(read.map(({ Key }) => Key)).toEqual(lines.map(({ part }) => part.key));
    lines.forEach(({ part, price, amount }, i) => {
      const row = read[i] ?? {};
      expect(row.Part).toBe(partWords(part, 'imperial'));
      if (part.unit === 'piece') near(row.Pieces, part.quantity);
      if (part.unit === 'm') near(row['Length in the run (ft)'], part.quantity / FOOT);
      if (part.stock) near(row['Stock length (ft)'], part.stock.length / FOOT);
      expect(row['Stock lengths to buy']).toBe(part.stock ? String(part.stock.count) : '');
      if (part.weight === undefined) expect(row['Weight (lb)']).toBe('');
      else near(row['Weight (lb)'], part.weight / 0.45359237);
      if (part.unit === 'piece' && price) near(row['Price ($)'], price.each);
      near(row['Amount ($)'], amount ?? 0);
    });
    const total = read.reduce((sum, row) => sum + Number(row['Amount ($)']), 0);
    near(String(total), costOf(job, 'wall').total + costOf(job, 'roof').total);
  });

  it('is metric for a metric job, and reads with a decimal comma as with a point', () => {
    const job: Job = { ...exampleJob(), units: 'metric' };
    const point = rows(partsTable(job, both));
    const comma = rows(partsTable(job, both), 'comma');
    expect(Object.keys(point[0] ?? {})).toContain('Length in the run (m)');
    expect(comma.map((row) => row['Weight (kg)']?.replace(',', '.'))).toEqual(
      point.map((row) => row['Weight (kg)']),
    );
    expect(comma.some((row) => row['Weight (kg)']?.includes(','))).toBe(true);
  });
});

describe('the cutting plan as a table', () => {
  it('has every cut of every stock length', () => {
    const job = exampleJob();
    const read = rows(cuttingTable(job, ['wall']));
    const cuts = cuttingOf(job, 'wall').plans.flatMap(({ bars }) => bars.flatMap((bar) => bar.cuts));
    expect(read).toHaveLength(cuts.length);
    cuts.forEach((cut, i) => {
      near(read[i]?.['Cut (in)'], cut.length / INCH);
      near(read[i]?.['Covers (in)'], cut.covers / INCH);
      expect(read[i]?.['Where it goes']).toMatch(/^the leg from /);
    });
  });
});

describe('the route as a table', () => {
  it('has every leg with its length, air and losses at the highest speed', () => {
    const job = exampleJob();
    const solution = solveScheme(job, 'roof');
    const solved = solvedAtFull(solution);
    const read = rows(routeTable(job, ['roof']));
    expect(read.map(({ Id }) => Id)).toEqual(solution.route.order);
    for (const row of read) {
      const leg = solution.route.segments.get(row.Id ?? '');
      const result = solved.segments.get(row.Id ?? '');
      near(row['Length (ft)'], (leg?.length ?? 0) / FOOT);
      near(row['Air (cfm)'], (result?.flow ?? 0) / CFM);
      near(row['Friction (in w.g.)'], (result?.frictionLoss ?? 0) / INCH_OF_WATER);
    }
    const losses = read.reduce((sum, row) => sum + Number(row['Its fittings (in w.g.)']), 0);
    near(String(losses), solved.fittings.reduce((sum, { loss }) => sum + loss, 0) / INCH_OF_WATER);
  });
});

describe('the results as a table', () => {
  it('has every speed of every scheme, with signs where the house is drawn down', () => {
    const job = exampleJob();
    const read = rows(resultsTable(job, both));
    const speeds = both.flatMap((id) => solveScheme(job, id).speeds);
    expect(read).toHaveLength(speeds.length);
    speeds.forEach(({ name, outcome }, i) => {
      const row = read[i];
      if (!outcome.solved) throw new Error(outcome.reason);
      expect(row?.Speed).toBe(name);
      near(row?.['Delivered (cfm)'], outcome.flow / CFM);
      near(row?.['Total pressure (in w.g.)'], outcome.totalPressure / INCH_OF_WATER);
      near(row?.['House against outdoors (in w.g.)'], (outcome.house?.pressure ?? 0) / INCH_OF_WATER);
      near(row?.['Asked for by the cooktop (cfm)'], requiredAirflow(job.kitchen).governing.flow / CFM);
    });
    expect(read.some((row) => row['House against outdoors (in w.g.)']?.startsWith('-'))).toBe(true);
  });

  it('says why where there is no number, and leaves the figures empty', () => {
    const job = exampleJob();
    for (const scheme of job.schemes) scheme.segments = [];
    const [row] = rows(resultsTable(job, ['wall']));
    expect(row).toMatchObject({ 'Delivered (cfm)': '', 'Not solved because': expect.stringMatching(/\w/) });
  });
});

describe('tables of several jobs', () => {
  it('are put under one another where their heads are alike, and not where their units differ', () => {
    const job = exampleJob();
    const one = resultsTable(job, ['wall']);
    expect(joined([one, resultsTable(job, ['roof'])])?.rows).toEqual(resultsTable(job, both).rows);
    expect(joined([one, resultsTable({ ...job, units: 'metric' }, ['wall'])])).toBeNull();
  });
});
