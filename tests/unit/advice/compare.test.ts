import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { compareSchemes } from '../../../src/advice/compare/compare.ts';
import { budgetOf, figuresOf } from '../../../src/advice/compare/figures.ts';
import { prefer, type Standing, standingOf } from '../../../src/advice/compare/standing.ts';
import { type Catching, winning } from '../../../src/advice/compare/winning.ts';
import { duplicateScheme } from '../../../src/graph/edits/index.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob, solvedAtFull } from '../../support/route-job.ts';

const job = exampleJob();
const compared = compareSchemes(job, ['wall', 'roof'], { speed: 3 });

describe('a comparison of the example’s two ways out', () => {
  const row = (id: string) => compared.rows.find((one) => one.id === id);

  it('shows the air at each speed as it is solved, short of what is required', () => {
    const flows = compared.schemes.map(({ air }) => air.map(({ flow }) => flow));
    const solved = ['wall', 'roof'].map((id) =>
      solveScheme(job, id).speeds.map(({ outcome }) => (outcome.solved ? outcome.flow : null)),
    );
    expect(flows).toEqual(solved);
    expect(row('air/hood-1/3')?.cells.map(({ text, short }) => [text, short])).toEqual([
      ['496 cfm', true],
      ['229 cfm', true],
    ]);
  });

  it('accounts for the whole of the fan’s pressure', () => {
    for (const id of ['wall', 'roof']) {
      const solved = solvedAtFull(solveScheme(job, id));
      const sum = [...budgetOf(solved).values()].reduce((a, b) => a + b, 0);
      expect(sum).toBeCloseTo(solved.totalPressure, 4);
    }
  });

  it('marks the best of a row, and none where the schemes do not differ', () => {
    expect(row('turns')?.cells.map(({ best }) => best)).toEqual([true, false]);
    expect(row('cost')?.cells.map(({ best }) => best)).toEqual([true, false]);
    const same = compareSchemes(
      produce(job, (draft) => void duplicateScheme(draft, 'wall')),
      ['wall', 's1'],
      {
        speed: 3,
      },
    );
    expect(same.rows.some(({ differs, cells }) => differs || cells.some(({ best }) => best))).toBe(false);
  });

  it('recommends the gentle way out, with its numbers', () => {
    expect(compared.recommendation.winner).toBe('wall');
    expect(compared.recommendation.because).toContain(
      'It delivers 496 cfm at boost, 267 cfm more than Up through the roof.',
    );
    expect(compared.recommendation.because.join(' ')).toMatch(/does not reach the 601 cfm/);
  });

  it('names what is dangerous in the recommended scheme before any reason for it', () => {
    const grave = produce(job, (draft) => {
      if (draft.house) draft.house.combustion = ['natural-draught water heater'];
    });
    const { danger, because } = compareSchemes(grave, ['wall', 'roof'], { speed: 3 }).recommendation;
    expect(danger).toMatch(/^Danger, to be put right first: .*carbon monoxide/);
    expect(because[0]).toMatch(/^It delivers/);
  });

  it('says nothing of danger where none is found', () => {
    const calm = produce(job, (draft) => {
      delete draft.house;
    });
    const { danger, because } = compareSchemes(calm, ['wall', 'roof'], { speed: 3 }).recommendation;
    expect(danger).toBeNull();
    expect(because[0]).toMatch(/^It delivers/);
  });

  it('recommends none of two that are alike', () => {
    const twice = produce(job, (draft) => void duplicateScheme(draft, 'wall'));
    expect(compareSchemes(twice, ['wall', 's1'], { speed: 3 }).recommendation.winner).toBeNull();
  });

  it('takes two to four schemes', () => {
    expect(() => compareSchemes(job, ['wall'], { speed: 3 })).toThrow(RangeError);
    expect(() => compareSchemes(job, ['wall', 'nowhere'], { speed: 3 })).toThrow(RangeError);
  });
});

describe('what would make the loser win', () => {
  const winner = figuresOf(job, solveScheme(job, 'wall'), 3);
  const search = winning(job, 'roof', winner, { speed: 3, goal: 'air' });
  let found: Catching | null = null;
  for (let step = search.next(); ; step = search.next())
    if (step.done) {
      found = step.value;
      break;
    }

  it('is found, and really wins when it is made', () => {
    const changed = produce(job, found?.recipe ?? (() => {}));
    expect(found?.wins).toBe(true);
    expect(compareSchemes(changed, ['wall', 'roof'], { speed: 3 }).recommendation.winner).toBe('roof');
    expect(solvedAtFull(solveScheme(changed, 'roof')).flow).toBe(found?.figures.solved?.flow);
  });

  it('holds no change that it would win without', () => {
    const members = found?.members ?? [];
    for (const left of members.slice(0, -1)) {
      const rest = produce(job, (draft) => {
        for (const member of members) if (member !== left) member.recipe(draft);
      });
      const standing = standingOf(figuresOf(rest, solveScheme(rest, 'roof'), 3));
      expect(prefer(standing, standingOf(winner), 'air')).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('preference', () => {
  const usual: Standing = {
    delivers: true,
    errors: 0,
    dangers: 0,
    meets: true,
    flow: 0.2,
    sound: 60,
    cost: 300,
  };
  const first = (a: Partial<Standing>, b: Partial<Standing>, goal: 'air' | 'quiet' | 'cheap' = 'air') =>
    prefer({ ...usual, ...a }, { ...usual, ...b }, goal);

  it('counts a danger before any air', () => {
    expect(first({ flow: 0.1 }, { dangers: 1, flow: 0.3 })).toBeLessThan(0);
  });

  it('counts enough air before the goal', () => {
    expect(first({ cost: 900 }, { meets: false, cost: 10 }, 'cheap')).toBeLessThan(0);
  });

  it('follows the goal', () => {
    const loud = { flow: 0.3, sound: 70, cost: 500 };
    expect(first(loud, {}, 'air')).toBeLessThan(0);
    expect(first(loud, {}, 'quiet')).toBeGreaterThan(0);
    expect(first(loud, {}, 'cheap')).toBeGreaterThan(0);
  });

  it('takes a hundredth of the air for no difference', () => {
    expect(first({ flow: 0.2001, cost: 400 }, {})).toBeGreaterThan(0);
  });
});
