import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proposals } from '../../src/advice/proposals.ts';
import type { Hood, Job, Node, Segment, Vec3 } from '../../src/graph/document.ts';
import { inferRoute } from '../../src/graph/infer.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { jobOf } from '../support/route-job.ts';

/** Points of a coarse grid, so that nodes often fall on one another and legs on one line. */
const at = fc.tuple(
  fc.integer({ min: 0, max: 2 }),
  fc.integer({ min: 0, max: 2 }),
  fc.integer({ min: 0, max: 2 }),
);
const role = fc.constantFrom<Node['role']>('hood', 'turn', 'turn', 'turn', 'cap', 'fan');
const name = (...known: string[]) => fc.option(fc.constantFrom(...known, 'unheard-of'), { nil: undefined });
const duct = fc.option(
  fc.constantFrom<NonNullable<Segment['duct']>>(
    { shape: 'round', diameter: 0.15 },
    { shape: 'rectangular', width: 0.254, height: 0.083 },
    { shape: 'oval', width: 0.1, height: 0.3 },
  ),
  { nil: undefined },
);
const part = fc.record({
  kind: fc.constantFrom('backdraught-damper', 'balancing-damper', 'screen', 'user', 'unheard-of'),
  at: fc.double({ min: 0, max: 3, noNaN: true }),
});

/** The first node is always a hood that the job knows: without one nothing would be solved. */
const anchor = { role: 'hood', hood: 'hood-1' } as const;

/** Leaves out what is undefined, as a file does. */
function compact<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as T;
}

const house = fc.record<NonNullable<Job['house']>>({
  volume: fc.constant(300),
  ach50: fc.double({ min: 0.1, max: 30, noNaN: true }),
  leakageExponent: fc.constantFrom(0.5, 0.65, 1),
  storeys: fc.constantFrom(1, 2),
  otherExhaust: fc.constantFrom([], [{ name: 'dryer', flow: 0.07 }]),
  makeUpAir: fc.constantFrom<NonNullable<Job['house']>['makeUpAir']>(
    null,
    { kind: 'opening', area: 0.02 },
    { kind: 'fan', flow: 0.1 },
  ),
  combustion: fc.constantFrom([], ['wood stove'], ['unheard-of']),
});

/** Any scheme that a file may hold, sensible or not. */
const anyJob: fc.Arbitrary<Job> = fc
  .record({
    nodes: fc.array(
      fc.record({
        at,
        role,
        hood: name('hood-1'),
        fan: name('booster'),
        cap: name('wall-flap', 'gooseneck'),
        bend: fc.option(fc.constantFrom('smooth', 'mitred', 'rectangular-smooth', 'unheard-of'), {
          nil: undefined,
        }),
      }),
      { minLength: 2, maxLength: 7 },
    ),
    legs: fc.array(
      fc.record({
        from: fc.integer({ min: 0, max: 6 }),
        to: fc.integer({ min: 0, max: 7 }),
        duct,
        material: name('flexible', 'stainless'),
        stretch: fc.option(fc.double({ min: 0.5, max: 1, noNaN: true }), { nil: undefined }),
        fittings: fc.array(part, { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 9 },
    ),
    house: fc.option(house, { nil: undefined }),
  })
  .map(({ nodes, legs, house }) => {
    const job = jobOf(
      nodes.map(
        ({ bend, ...node }, i) =>
          compact({
            ...node,
            ...(i === 0 && anchor),
            at: [...node.at] as Vec3,
            id: `n${i}`,
            ...(bend && { bend: { kind: bend } }),
          }) as Node,
      ),
      legs.map(
        ({ from, to, ...leg }, i) =>
          compact({ ...leg, id: `d${i}`, from: `n${from}`, to: `n${to}` }) as Segment,
      ),
    );
    const [hood] = job.hoods as [Hood];
    const hoods = [hood, { ...hood, id: 'booster', speeds: hood.speeds.slice(0, 2) }];
    const exits = [
      { id: 'x', name: 'wall', kind: 'wall' as const, min: [1.4, 0, 0], max: [1.6, 2, 2] },
    ] as Job['exits'];
    return { ...job, hoods, exits, ...(house && { house }) };
  });

describe('any drawing, sensible or not', () => {
  it('gets a route and never an exception: every segment that has two ends is in it once', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const route = inferRoute(job, 'scheme-1');
        const ids = new Set(job.schemes[0]?.nodes.map((node) => node.id));
        const whole = (job.schemes[0]?.segments ?? []).filter(
          ({ from, to }) => from !== to && ids.has(from) && ids.has(to),
        );
        expect([...route.order].sort()).toEqual(whole.map(({ id }) => id).sort());
        expect(route.nodes.size).toBe(ids.size);
        expect(new Set(route.findings.map(({ id }) => id)).size).toBe(route.findings.length);
      }),
      { numRuns: 500 },
    );
  });

  it('gets numbers that are numbers, or a reason why there are none', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { speeds, findings } = solveScheme(job, 'scheme-1');
        expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length);
        for (const { outcome } of speeds) {
          if (!outcome.solved) {
            expect(outcome.reason).toMatch(/\.$/);
            expect(outcome.reason).not.toMatch(/settle/);
            continue;
          }
          expect(Number.isFinite(outcome.sound.cook.level)).toBe(true);
          expect(Number.isFinite(outcome.sound.outside.level)).toBe(true);
          if (outcome.house) expect(Number.isFinite(outcome.house.pressure)).toBe(true);
          for (const { wallTemperature } of outcome.segments.values())
            expect(Number.isFinite(wallTemperature)).toBe(true);
          expect(Number.isFinite(outcome.flow)).toBe(true);
          for (const segment of outcome.segments.values())
            expect(Number.isFinite(segment.frictionLoss)).toBe(true);
          for (const fitting of outcome.fittings) expect(Number.isFinite(fitting.loss)).toBe(true);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('gets proposals that gain', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const { gain, remedy } of proposals(job, 'scheme-1')) expect(remedy || gain > 0).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
