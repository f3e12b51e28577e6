import fc from 'fast-check';
import { type Draft, produce } from 'immer';
import { expect, test } from 'vitest';
import type { Job, Node, Vec3 } from '../../src/graph/document.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { planOf } from '../../src/graph/plan.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { exampleJob, runThrough } from '../support/route-job.ts';
import { twoHoods } from '../support/two-hoods.ts';

type Step = (job: Draft<Job>) => void;

const index = fc.nat({ max: 40 });
const coordinate = fc.integer({ min: -30, max: 30 }).map((n) => n / 10);
const of = <Item>(items: Item[], i: number): Item | undefined => items[i % Math.max(items.length, 1)];

const node = (change: (node: Draft<Node>, value: number) => void) =>
  fc.tuple(index, index, coordinate).map(([scheme, at, value]): Step => {
    return (job) => {
      const chosen = of(of(job.schemes, scheme)?.nodes ?? [], at);
      if (chosen) change(chosen, value);
    };
  });

const steps: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: node(({ at }, value) => (at[0] += value)) },
  { weight: 6, arbitrary: node(({ at }, value) => (at[2] += value)) },
  node((one, value) => (one.bend = value > 0 ? { kind: 'mitred' } : { kind: 'smooth', radiusRatio: 1.5 })),
  node((one, value) => (one.role = one.role === 'turn' && value > 1 ? 'cap' : one.role)),
  fc.tuple(index, index, fc.boolean()).map(([scheme, at, round]): Step => {
    return (job) => {
      const leg = of(of(job.schemes, scheme)?.segments ?? [], at);
      if (!leg) return;
      leg.duct = round
        ? { shape: 'round', diameter: 0.25 }
        : { shape: 'rectangular', width: 0.254, height: 0.083 };
      leg.insulation = round ? 0.025 : 0;
    };
  }),
  fc.tuple(index, index).map(([scheme, at]): Step => {
    return (job) => {
      of(job.schemes, scheme)?.segments.splice(at % 7, 1);
    };
  }),
  coordinate.map(
    (value): Step =>
      (job) => {
        job.air.outdoorTemperature = 10 * value;
      },
  ),
  coordinate.map(
    (value): Step =>
      (job) => {
        for (const exit of job.exits) exit.max[1] += value / 10;
      },
  ),
);

/** The same job with no object in common with what was solved before. */
const afresh = (job: Job): Job => structuredClone(job);

test('solving after edits equals solving from nothing, to the last bit', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(exampleJob, twoHoods),
      fc.array(steps, { minLength: 1, maxLength: 6 }),
      (start, recipes) => {
        let job = start();
        for (const recipe of recipes) {
          job = produce(job, recipe);
          for (const { id } of job.schemes) solveScheme(job, id);
        }
        for (const { id } of job.schemes) {
          expect(solveScheme(job, id)).toEqual(solveScheme(afresh(job), id));
        }
      },
    ),
    { numRuns: 12 },
  );
});

test('a move works out anew only the legs and nodes beside it', () => {
  const points = Array.from({ length: 201 }, (_, i): Vec3 => [Math.ceil(i / 2), Math.floor(i / 2), 2.3]);
  const before = runThrough(points);
  const after = produce(before, (job) => {
    const moved = job.schemes[0]?.nodes[100];
    if (moved) moved.at[2] += 0.1;
  });
  const id = before.schemes[0]?.id ?? '';
  const [one, other] = [inferRoute(before, id), inferRoute(after, id)];
  const differ = <T>(some: Iterable<T>, others: Iterable<T>) => {
    const known = new Set(some);
    return [...others].filter((each) => !known.has(each)).length;
  };
  expect(differ(one.nodes.values(), other.nodes.values())).toBe(3);
  expect(differ(one.segments.values(), other.segments.values())).toBe(4);
  const [scheme, changed] = [before.schemes[0], after.schemes[0]];
  if (!scheme || !changed) throw new Error('a job has a scheme');
  expect(differ(planOf(one, scheme).legs, planOf(other, changed).legs)).toBeLessThanOrEqual(4);
});
