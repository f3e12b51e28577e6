import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job, Scheme, Vec3 } from '../../src/graph/document.ts';
import { inferRoute, schemeOf } from '../../src/graph/infer.ts';
import { planOf } from '../../src/graph/plan.ts';
import type { Solved } from '../../src/graph/solution.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { partDrop } from '../../src/hydraulics/element.ts';
import { runThrough, solvedAtFull, withScheme } from '../support/route-job.ts';

const runs = 100;

const step = fc.tuple(
  fc.double({ min: -2, max: 2, noNaN: true }),
  fc.double({ min: -2, max: 2, noNaN: true }),
  fc.double({ min: -2, max: 2, noNaN: true }),
);
const section = fc.constantFrom<Scheme['defaults']['duct']>(
  { shape: 'round', diameter: 0.1524 },
  { shape: 'round', diameter: 0.2032 },
  { shape: 'rectangular', width: 0.254, height: 0.08255 },
  { shape: 'oval', width: 0.254, height: 0.1524 },
);
const bend = fc.constantFrom('smooth', 'five-piece', 'adjustable', 'mitred');
const material = fc.constantFrom('galvanized', 'flexible', 'stainless');

/** A run of up to seven legs in any direction, of one size. */
const drawn = fc
  .record({ steps: fc.array(step, { minLength: 1, maxLength: 7 }), duct: section, bend, material })
  .map(({ steps, duct, bend, material }): Job => {
    const points: Vec3[] = [[0, 0, 0]];
    for (const [x, y, z] of steps) {
      const [a, b, c] = points.at(-1) as Vec3;
      points.push([a + x, b + y, c + z]);
    }
    return runThrough(points, { duct, bend, material });
  })
  .filter((job) => [...inferRoute(job, 'scheme-1').segments.values()].every((leg) => leg.length > 0.05));

function solve(job: Job): Solved {
  return solvedAtFull(solveScheme(job, 'scheme-1'));
}

function moved(job: Job, move: (at: Vec3) => Vec3): Job {
  return withScheme(job, (scheme) => ({
    ...scheme,
    nodes: scheme.nodes.map((node) => ({ ...node, at: move(node.at) })),
  }));
}

function expectSameAir(a: Solved, b: Solved, tolerance: number): void {
  expect(Math.abs(b.flow / a.flow - 1)).toBeLessThan(tolerance);
  for (const [id, segment] of a.segments) {
    const other = b.segments.get(id);
    expect(Math.abs((other?.frictionLoss ?? 0) - segment.frictionLoss)).toBeLessThan(
      tolerance * a.totalPressure,
    );
  }
  a.fittings.forEach((fitting, i) => {
    expect(b.fittings[i]?.id).toBe(fitting.id);
    expect(Math.abs((b.fittings[i]?.loss ?? 0) - fitting.loss)).toBeLessThan(tolerance * a.totalPressure);
  });
}

describe('the air in a run does not depend on', () => {
  it('which way round the kitchen is: a mirrored run loses the same', () => {
    fc.assert(
      fc.property(drawn, (job) =>
        expectSameAir(solve(job), solve(moved(job, ([x, y, z]) => [-x, y, z])), 1e-9),
      ),
      { numRuns: runs },
    );
  });

  it('which way north is: a run turned about the vertical loses the same', () => {
    fc.assert(
      fc.property(drawn, fc.double({ min: 0, max: 6.2, noNaN: true }), (job, angle) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const turned = moved(job, ([x, y, z]) => [c * x - s * y, s * x + c * y, z]);
        const stable = [...inferRoute(job, 'scheme-1').nodes.values()].every((node) => {
          const other = inferRoute(turned, 'scheme-1').nodes.get(node.id);
          return other?.kind === node.kind && other.bend?.inPlane === node.bend?.inPlane;
        });
        fc.pre(stable || job.schemes[0]?.defaults.duct.shape === 'round');
        expectSameAir(solve(job), solve(turned), 1e-7);
      }),
      { numRuns: runs },
    );
  });

  it('which way its segments were drawn or in what order they are stored', () => {
    fc.assert(
      fc.property(drawn, fc.array(fc.boolean(), { minLength: 7, maxLength: 7 }), (job, flips) => {
        const shuffled = withScheme(job, (scheme) => ({
          ...scheme,
          nodes: [...scheme.nodes].reverse(),
          segments: scheme.segments
            .map((segment, i) => (flips[i] ? { ...segment, from: segment.to, to: segment.from } : segment))
            .reverse(),
        }));
        const [a, b] = [solve(job), solve(shuffled)];
        expect(b.flow).toBe(a.flow);
        expect(b.fittings).toEqual(a.fittings);
        expect(b.profile).toEqual(a.profile);
      }),
      { numRuns: runs },
    );
  });
});

describe('friction', () => {
  it('doubles with the length of a straight run at the same flow', () => {
    const length = fc.double({ min: 0.5, max: 20, noNaN: true });
    const flow = fc.double({ min: 0.001, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(length, flow, section, material, (metres, q, duct, material) => {
        const of = (z: number): number => {
          const job = runThrough(
            [
              [0, 0, 0],
              [0, 0, z],
            ],
            { duct, material },
          );
          const fitted = { ...job, hoods: job.hoods.map((hood) => ({ ...hood, collar: duct })) };
          const { route, air } = solveScheme(fitted, 'scheme-1');
          const [leg] = planOf(route, schemeOf(fitted, 'scheme-1')).legs;
          return leg ? partDrop(leg.duct, q, air) : Number.NaN;
        };
        expect(of(2 * metres) / of(metres)).toBeCloseTo(2, 9);
      }),
      { numRuns: runs },
    );
  });
});

describe('losses', () => {
  it('add up to what the fan gives on any run', () => {
    fc.assert(
      fc.property(drawn, (job) => {
        const solved = solve(job);
        const friction = [...solved.segments.values()].reduce(
          (sum, segment) => sum + segment.frictionLoss,
          0,
        );
        const all = solved.fittings.reduce((sum, fitting) => sum + fitting.loss, friction);
        expect(Math.abs(all / solved.totalPressure - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: runs },
    );
  });
});
