import { beforeAll, describe, expect, it } from 'vitest';
import { jobSheetOf } from '../../../../src/files/job-sheet/content.ts';
import type { Hood, Job } from '../../../../src/graph/document.ts';
import { casesOf, formulasOf, type PrintedCase } from '../../../support/appendix-cases.ts';
import { type Given, workByHand } from '../../../support/by-hand.ts';
import { readPrinted, roundingOf } from '../../../support/formula.ts';
import { exampleJob, jobOf, runThrough, withScheme } from '../../../support/route-job.ts';
import { twoHoods } from '../../../support/two-hoods.ts';

/** Significant figures that the appendix prints. */
const DIGITS = 6;

const date = new Date('2026-11-25T12:00:00Z');

/** A run with every kind of part whose coefficient has a form of its own. */
function everyKind(): Job {
  const round = (diameter: number) => ({ shape: 'round', diameter }) as const;
  const job = jobOf(
    [
      { id: 'h', role: 'hood', hood: 'hood-1', at: [0, 0, 2] },
      { id: 'a', role: 'turn', at: [0, 0, 3], bend: { kind: 'mitred' } },
      { id: 'b', role: 'turn', at: [2, 0, 3], bend: { kind: 'smooth', radiusRatio: 1.5 } },
      { id: 'c', role: 'turn', at: [2, 2, 3], transition: { kind: 'conical', angle: 30 } },
      { id: 'd', role: 'turn', at: [2, 3, 3], transition: { kind: 'abrupt' } },
      { id: 'x', role: 'cap', cap: 'wall-flap-small', at: [2, 5, 3] },
    ],
    [
      { id: 'd1', from: 'h', to: 'a', fittings: [{ kind: 'backdraught-damper', at: 0.3 }] },
      {
        id: 'd2',
        from: 'a',
        to: 'b',
        insulation: 0.025,
        fittings: [
          { kind: 'user', name: 'Silencer by its sheet', at: 0.5, user: { loss: 12, atFlow: 0.1 } },
          { kind: 'user', name: 'Part by its length', at: 1, user: { equivalentLength: 3 } },
          { kind: 'user', name: 'Part by its C', at: 1.4, user: { c: 0.35 } },
        ],
      },
      { id: 'd3', from: 'b', to: 'c', material: 'flexible', stretch: 0.9 },
      { id: 'd4', from: 'c', to: 'd', duct: round(0.25), fittings: [{ kind: 'screen', at: 0.4 }] },
      { id: 'd5', from: 'd', to: 'x', duct: round(0.18) },
    ],
  );
  return { ...job, air: { ...job.air, elevation: 850 }, kitchen: { ...job.kitchen, ceilingHeight: 2.4 } };
}

/** A fan in a run, no rated sound, a make-up fan that blows the house up. */
function helped(): Job {
  const job = withScheme(
    runThrough([
      [0, 0, 2],
      [6, 0, 2],
      [12, 0, 2],
    ]),
    (scheme) => ({
      ...scheme,
      nodes: scheme.nodes.map((node) => (node.id === 'n1' ? { ...node, role: 'fan', fan: 'booster' } : node)),
    }),
  );
  const [hood] = job.hoods as [Hood];
  const silent = hood.speeds.map(({ sound: _, ...speed }) => speed);
  return {
    ...job,
    hoods: [
      { ...hood, speeds: silent },
      { ...hood, id: 'booster', name: 'Booster' },
    ],
    house: {
      volume: 400,
      ach50: 3,
      leakageExponent: 0.65,
      storeys: 1,
      otherExhaust: [],
      makeUpAir: { kind: 'fan', flow: 0.5 },
      combustion: [],
    },
  };
}

const jobs: readonly (readonly [name: string, job: Job, scheme: string])[] = [
  ['the example out the wall', exampleJob(), 'wall'],
  ['the example through the roof', exampleJob(), 'roof'],
  ['every kind of part', everyKind(), everyKind().schemes[0]?.id ?? ''],
  ['two hoods whose ducts join', twoHoods(), twoHoods().schemes[0]?.id ?? ''],
  ['a fan in the run of a house under pressure', helped(), helped().schemes[0]?.id ?? ''],
];

/** Formulas that give no number from inputs: what is read off a curve. */
const lookedUp = /^Q_r = the flow at which/;

describe.each(jobs)('the appendix of %s', (_, job, scheme) => {
  let cases: PrintedCase[] = [];
  let notes: string[] = [];
  beforeAll(async () => {
    const sheet = await jobSheetOf(job, scheme, { date });
    cases = casesOf(sheet);
    notes = formulasOf(sheet).flatMap((block) => block.notes);
  });

  it('gives every printed result again from the printed inputs, within their rounding', () => {
    const off = cases
      .filter(({ formula }) => !lookedUp.test(formula))
      .flatMap((one) => disagreement(one, notes));
    expect(off).toEqual([]);
    expect(cases.length).toBeGreaterThan(50);
  });

  it('prints figures with their sources: every formula but plain arithmetic names one', () => {
    const bare = new Set(
      cases.filter(({ block }) => block.sources.length === 0).map(({ block }) => block.title),
    );
    for (const title of bare)
      expect([
        'Velocity',
        'Velocity pressure',
        'Reynolds number',
        'Length charged with friction',
        "Share of the fan's pressure",
        'Rated flow',
        'Share of the rated flow',
        "Total pressure of the hood's fan",
      ]).toContain(title);
  });

  it('refers from an input to a formula that gives that very figure', () => {
    const numbers = new Map(cases.map(({ block }) => [block.number, block]));
    for (const { block } of cases)
      for (const { from, name } of block.inputs)
        for (const number of from?.split(', ') ?? [])
          expect(numbers.has(number), `${block.number} ${name}`).toBe(true);
  });
});

/** What a reader finds who works a formula again: nothing where it comes out as printed. */
function disagreement({ formula, inputs, result, name }: PrintedCase, notes: readonly string[]): string[] {
  const given: Given = inputs.map(([symbol, text]) => [symbol, readPrinted(text)] as const);
  try {
    const worked = workByHand(formula, given, notes);
    const slack = given.reduce((sum, [, value], i) => {
      const nudged = given.map((one, k): Given[number] =>
        k === i ? [one[0], value + roundingOf(value, DIGITS)] : one,
      );
      return sum + Math.abs(workByHand(formula, nudged, notes) - worked);
    }, 0);
    const printed = formula.startsWith('Q is the flow') ? 0 : readPrinted(result);
    const allowed = 1.1 * slack + 1.1 * roundingOf(printed, DIGITS) + 1e-9;
    return Math.abs(worked - printed) <= allowed
      ? []
      : [`${name}: gives ${worked}, printed ${result} (±${allowed})`];
  } catch (error) {
    return [`${name}: ${error instanceof Error ? error.message : String(error)}`];
  }
}
