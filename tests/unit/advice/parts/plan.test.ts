import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makes } from '../../../../src/advice/parts/makes.ts';
import { firstFit } from '../../../../src/advice/parts/packing.ts';
import { type CuttingPlan, cuttingOf, piecesOf } from '../../../../src/advice/parts/plan.ts';
import type { Job, Vec3 } from '../../../../src/graph/document.ts';
import { inferRoute } from '../../../../src/graph/infer.ts';
import { materials } from '../../../../src/hydraulics/catalogue.ts';
import { exampleJob, jobOf, runThrough, withScheme } from '../../../support/route-job.ts';

const spiral = makes.find(({ id }) => id === 'spiral');
const crimped = makes.find(({ id }) => id === 'crimped');
if (!spiral || !crimped) throw new Error('the list of makes has pipe');

const straight = (length: number, material = 'galvanized') =>
  runThrough(
    [
      [0, 0, 0],
      [0, length, 0],
    ],
    { material },
  );

function plansOf(job: Job): readonly CuttingPlan[] {
  return cuttingOf(job, job.schemes[0]?.id ?? '').plans;
}

const cutsOf = ({ bars }: CuttingPlan) => bars.flatMap(({ cuts }) => cuts);

describe('a cutting plan', () => {
  it('covers each leg with its pieces, and no piece is longer than the stock', () => {
    const job = exampleJob();
    for (const { id } of job.schemes) {
      const { plans, spans } = cuttingOf(job, id);
      for (const plan of plans) {
        const mine = spans.filter(({ key }) => key === plan.key);
        const covered = cutsOf(plan).reduce((sum, { covers }) => sum + covers, 0);
        expect(covered).toBeCloseTo(
          mine.reduce((sum, { length }) => sum + length, 0),
          9,
        );
        for (const { length } of cutsOf(plan)) expect(length).toBeLessThanOrEqual(plan.stock + 1e-9);
      }
    }
  });

  it('gives a crimped piece its lap, so that 5 ft of pipe do not cover 5 ft', () => {
    const [plan] = plansOf(straight(1.524));
    expect(plan?.bars).toHaveLength(2);
    for (const { length, covers } of cutsOf(plan as CuttingPlan))
      expect(length - covers).toBeCloseTo(0.0381, 9);
    const [one] = plansOf(straight(1.524 - 0.0381));
    expect(one).toMatchObject({ bars: [{ cuts: [{ segments: ['d1'] }], offcut: 0 }], waste: 0 });
  });

  it('cuts no sliver: what is left of a leg takes from the length before it', () => {
    const pieces = piecesOf(
      {
        key: '',
        section: { shape: 'round', diameter: 0.2 },
        material: 'spiral',
        make: spiral,
        length: 3.06,
        legs: [],
      },
      3.048,
    );
    expect(pieces.map(({ covers }) => covers)).toEqual([
      expect.closeTo(2.9584, 9),
      expect.closeTo(0.1016, 9),
    ]);
  });

  it('uses what one leg leaves for another, and counts what the saw takes', () => {
    // 1.8 + 1.2 + 0.045 m and two cuts of 3 mm come out of one length of 3.048 m only where the cuts are thinner.
    const legs = (lengths: readonly number[]): Job => {
      const nodes = lengths.flatMap((length, i) => [
        { id: `a${i}`, at: [i, 0, 0] as Vec3, role: 'turn' as const },
        { id: `b${i}`, at: [i, length, 0] as Vec3, role: 'turn' as const },
      ]);
      return jobOf(
        nodes,
        lengths.map((_, i) => ({ id: `d${i}`, from: `a${i}`, to: `b${i}` })),
        { material: 'spiral' },
      );
    };
    expect(plansOf(legs([1.8, 1.2]))[0]?.bars).toHaveLength(1);
    expect(plansOf(legs([1.8, 1.2]))[0]?.bars[0]?.offcut).toBeCloseTo(3.048 - 3 - 2 * 0.003, 9);
    expect(plansOf(legs([1.848, 1.2]))[0]?.bars).toHaveLength(2);
    expect(plansOf(legs([1.845, 1.2]))[0]).toMatchObject({ bars: [{ offcut: 0 }], proved: true });
  });

  it('runs on through a plain joint of the drawing, and names both legs of the piece that lies in both', () => {
    const job = runThrough([
      [0, 0, 0],
      [0, 0.5, 0],
      [0, 1.2, 0],
    ]);
    expect(inferRoute(job, 'scheme-1').nodes.get('n1')?.kind).toBe('joint');
    const [plan] = plansOf(job);
    expect(plan && cutsOf(plan)).toMatchObject([{ covers: 1.2, segments: ['d1', 'd2'] }]);
  });

  it('is parted by a part in line', () => {
    const job = withScheme(straight(1.2), (scheme) => ({
      ...scheme,
      segments: scheme.segments.map((segment) => ({
        ...segment,
        fittings: [{ kind: 'backdraught-damper', at: 0.4 }],
      })),
    }));
    const [plan] = plansOf(job);
    expect(plan && cutsOf(plan).map(({ covers }) => covers)).toEqual([
      expect.closeTo(0.8, 9),
      expect.closeTo(0.4, 9),
    ]);
  });

  it('takes the stock length that the job says', () => {
    const job = straight(4);
    const own = { ...job, stock: { 'duct/galvanized/round-203': 1 } };
    expect(plansOf(job)[0]).toMatchObject({ stock: 1.524, own: false, bars: { length: 3 } });
    expect(plansOf(own)[0]).toMatchObject({ stock: 1, own: true, bars: { length: 5 } });
  });

  it('tells the share that is bought and lies in no piece', () => {
    for (const { bars, bought, used, waste, stock } of plansOf(exampleJob())) {
      expect(bought).toBeCloseTo(bars.length * stock, 9);
      expect(waste).toBeCloseTo(1 - used / bought, 9);
    }
  });

  it('knows how every material of the catalogue is sold', () => {
    for (const { id } of materials) {
      const [plan] = plansOf(straight(3, id));
      expect([id, plan?.make.materials.includes(id)]).toEqual([id, true]);
    }
  });

  it('is the same whatever units it is shown in', () => {
    const job = exampleJob();
    const metric: Job = { ...job, units: 'metric' };
    expect(cuttingOf(metric, 'roof').plans).toEqual(cuttingOf(job, 'roof').plans);
  });

  it('never takes more stock lengths than first-fit decreasing, for any run of legs', () => {
    const lengths = fc.array(fc.double({ min: 0.05, max: 5, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(lengths, fc.constantFrom('galvanized', 'spiral', 'flexible'), (all, material) => {
        const nodes = all.flatMap((length, i) => [
          { id: `a${i}`, at: [i, 0, 0] as Vec3, role: 'turn' as const },
          { id: `b${i}`, at: [i, length, 0] as Vec3, role: 'turn' as const },
        ]);
        const segments = all.map((_, i) => ({ id: `d${i}`, from: `a${i}`, to: `b${i}` }));
        const [plan] = plansOf(jobOf(nodes, segments, { material }));
        if (!plan) throw new Error('duct is cut');
        const kerf = plan.make.kerf;
        const sizes = cutsOf(plan).map(({ length }) => Math.round((length + kerf) * 1e4));
        const first = firstFit(
          sizes.sort((a, b) => b - a),
          Math.round((plan.stock + kerf) * 1e4),
        );
        expect(plan.bars.length).toBeLessThanOrEqual(first.length);
        expect(cutsOf(plan).reduce((sum, { covers }) => sum + covers, 0)).toBeCloseTo(
          all.reduce((sum, length) => sum + length, 0),
          6,
        );
        for (const { cuts, offcut } of plan.bars) {
          const taken = cuts.reduce((sum, { length }) => sum + length, 0) + kerf * (cuts.length - 1);
          expect(taken + offcut).toBeLessThanOrEqual(plan.stock + 1e-3);
        }
      }),
      { numRuns: 60 },
    );
  });
});
