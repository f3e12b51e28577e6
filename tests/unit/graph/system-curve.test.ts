import { expect, it } from 'vitest';
import { solveScheme } from '../../../src/graph/solve.ts';
import { systemCurve } from '../../../src/graph/system-curve.ts';
import { exampleJob } from '../app/kitchen.ts';

const job = exampleJob();
const solutions = job.schemes.map(({ id }) => solveScheme(job, id));

it('the system curve passes through the point where the fan works', () => {
  for (const solution of solutions)
    solution.speeds.forEach(({ outcome }, speed) => {
      if (!outcome.solved) throw new Error('the example is solved');
      const [[, pressure] = [0, 0]] = systemCurve(job, solution, speed, [outcome.flow]);
      expect(pressure / outcome.totalPressure).toBeCloseTo(1, 5);
    });
});

it('the system asks for more pressure the more air it is to pass', () => {
  for (const solution of solutions) {
    const pressures = systemCurve(job, solution, 0, [0.02, 0.05, 0.1, 0.2, 0.3]).map(([, p]) => p);
    expect(pressures).toEqual([...pressures].sort((a, b) => a - b));
    expect(new Set(pressures).size).toBe(pressures.length);
  }
});

it('an unsolved speed has no system curve', () => {
  const bare = { ...job, schemes: job.schemes.map((s) => ({ ...s, nodes: [], segments: [] })) };
  const solution = solveScheme(bare, bare.schemes[0]?.id ?? '');
  expect(systemCurve(bare, solution, 0, [0.1])).toEqual([]);
});
