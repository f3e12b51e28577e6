import type { Draft } from 'immer';
import { describe, expect, test } from 'vitest';
import { checkCodes } from '../../../../src/advice/codes/check.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { drawn, edited } from '../../../support/drawn.ts';

type Edit = (job: Draft<Job>) => void;

function resultOf(rule: string, edit: Edit) {
  const { job } = edited(edit, drawn());
  const found = checkCodes(job, solveScheme(job, 's1')).find((one) => one.rule === rule);
  if (!found) throw new Error(`no result for ${rule}`);
  return found;
}

function capOf(job: Draft<Job>) {
  const cap = job.schemes[0]?.nodes.find(({ id }) => id === 'n4');
  if (!cap) throw new Error('the small job has a cap');
  return cap;
}

describe('what stands around a cap, drawn', () => {
  /** A box 0.2 m thick beside the cap of the small job, its near side `gap` east of the rim of the duct. */
  const rim = 0.2032 / 2 + 0.0006;
  const beside =
    (kind: Job['blocks'][number]['kind'], gap: number, top = 3): Edit =>
    (job) => {
      const [x, y, z] = capOf(job).at;
      const west = x + rim + gap;
      job.blocks.push({
        id: `drawn ${kind}`,
        name: `kitchen ${kind}`,
        kind,
        min: [west, y - 1, z - 1],
        max: [west + 0.2, y + 1, top],
      });
    };
  const both =
    (...edits: readonly Edit[]): Edit =>
    (job) => {
      for (const each of edits) each(job);
    };
  const high = 10;

  test.each([
    ['clear-property-line', 'lot line', 0.9144],
    ['clear-opening', 'window', 0.9144],
    ['clear-intake', 'intake', 3.048],
  ] as const)('%s reads its distance from a drawn %s, on both sides of its limit', (rule, kind, least) => {
    expect(resultOf(rule, beside(kind, least + 1e-6, high)).state).toBe('meets');
    const broken = resultOf(rule, beside(kind, least - 0.001, high));
    expect(broken.state).toBe('fails');
    expect(broken.message).toContain(`kitchen ${kind}, as drawn`);
    expect(broken.nodes).toEqual(['n4']);
  });

  test('an intake drawn nearer may stand 3 ft below the cap, and not an inch less', () => {
    const below =
      (metres: number): Edit =>
      (job) =>
        beside('intake', 1, capOf(job).at[2] - rim - metres)(job);
    expect(resultOf('clear-intake', below(0.9144)).state).toBe('meets');
    expect(resultOf('clear-intake', below(0.889)).state).toBe('fails');
  });

  test('a distance that was measured on site takes the place of the drawn one, and says so', () => {
    const found = resultOf(
      'clear-opening',
      both(beside('window', 0.1, high), (job) => {
        capOf(job).clearances = { opening: 2 };
      }),
    );
    expect(found.state).toBe('meets');
    expect(found.message).toContain('as measured on site');
  });

  test('of several windows the one that is too near is told', () => {
    const far = resultOf('clear-opening', both(beside('window', 5, high), beside('window', 0.5, high)));
    expect(far.state).toBe('fails');
  });

  test('what is neither drawn nor entered cannot be told', () => {
    expect(resultOf('clear-opening', beside('intake', 5, high)).state).toBe('cannot tell');
  });

  test('nothing of it is in the way of duct', () => {
    const through: Edit = (job) => {
      for (const kind of ['window', 'intake', 'lot line'] as const)
        job.blocks.push({ id: kind, name: '', kind, min: [0, 0.5, 0], max: [3, 0.9, 4] });
    };
    const { job } = edited((draft) => {
      through(draft);
    }, drawn());
    expect(solveScheme(job, 's1').findings.filter(({ rule }) => rule.startsWith('fit'))).toEqual([]);
  });
});
