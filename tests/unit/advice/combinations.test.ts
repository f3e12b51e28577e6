import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { compatible } from '../../../src/advice/combinations/compatible.ts';
import { combinations } from '../../../src/advice/combinations/search.ts';
import { costOf } from '../../../src/advice/cost/price.ts';
import { byGoal, goals, type Judged, ranked } from '../../../src/advice/goals.ts';
import { proposals } from '../../../src/advice/proposals.ts';
import type { Job } from '../../../src/graph/document.ts';
import type { Solved } from '../../../src/graph/solution.ts';
import { solveScheme } from '../../../src/graph/solve.ts';
import { exampleJob } from '../../support/route-job.ts';

const job = exampleJob();
const singles = proposals(job, 'roof');
const best = combinations(job, 'roof', { singles });

function solvedAt(of: Job, speed = 3): Solved {
  const outcome = solveScheme(of, 'roof').speeds[speed]?.outcome;
  if (!outcome?.solved) throw new Error('no air');
  return outcome;
}

describe('for the bad way out of the example', () => {
  it('puts the larger duct carried through first, as an expert would', () => {
    expect(['larger diameter', 'no reducer']).toContain(singles[0]?.kind);
    const roof = job.schemes.find(({ id }) => id === 'roof');
    expect(singles[0]?.segments).toHaveLength(roof?.segments.length ?? 0);
  });

  it('combines it with gentle bends and a better cap', () => {
    const forAir = best[0]?.members.filter(({ remedy }) => !remedy) ?? [];
    expect(forAir.map(({ kind }) => kind).sort()).toEqual(['better cap', 'gentler bend', 'larger diameter']);
  });

  it('predicts exactly what making all of the changes gives: air, sound, house, cost', () => {
    for (const { recipe, gains, sound, house, cost } of best) {
      const applied = produce(job, recipe);
      expect(gains.map(({ after }) => after)).toEqual([0, 1, 2, 3].map((k) => solvedAt(applied, k).flow));
      expect(sound?.after).toBe(solvedAt(applied).sound.cook.level);
      expect(house?.after).toBe(solvedAt(applied).house?.pressure);
      expect(cost).toBe(costOf(applied, 'roof').total - costOf(job, 'roof').total);
    }
  });

  it('makes make-up air in the same step where the scheme then calls for it, and leaves nothing to call for', () => {
    const tight = produce(job, (draft) => {
      if (draft.house) draft.house.combustion = ['natural-draught water heater'];
    });
    const found = combinations(tight, 'roof');
    expect(found.length).toBeGreaterThan(0);
    for (const { recipe, members, remedies, calls, house, settles, brings } of found) {
      expect(members.slice(-remedies).map(({ kind }) => kind)).toContain('make-up air');
      expect(calls).toEqual([]);
      const after = produce(tight, recipe);
      expect(proposals(after, 'roof').filter(({ remedy }) => remedy)).toEqual([]);
      expect(house?.after).toBe(solvedAt(after).house?.pressure);
      expect(settles.map(({ rule }) => rule)).toContain('house-depressurization');
      expect(brings.map(({ rule }) => rule)).not.toContain('house-depressurization');
    }
  });

  it('wraps duct in the same step where it would drip, and it then does not', () => {
    const cold = { ...job, air: { ...job.air, outdoorTemperature: -10, humidity: 0.6 } };
    const [first] = combinations(cold, 'roof');
    expect(first?.members.slice(-(first?.remedies ?? 0)).map(({ kind }) => kind)).toContain('insulation');
    const after = solveScheme(produce(cold, first?.recipe ?? (() => {})), 'roof');
    expect(after.findings.map(({ rule }) => rule)).not.toContain('condensation');
    expect(first?.gains.map(({ after: flow }) => flow)).toEqual(
      after.speeds.map(({ outcome }) => (outcome.solved ? outcome.flow : null)),
    );
  });

  it('adds nothing beside air where nothing is called for', () => {
    const warm = produce(job, (draft) => {
      delete draft.house;
      draft.air.outdoorTemperature = 20;
    });
    const found = combinations(warm, 'roof');
    expect(found.length).toBeGreaterThan(0);
    for (const { members, remedies } of found) {
      expect(remedies).toBe(0);
      expect(members.every(({ remedy }) => !remedy)).toBe(true);
    }
  });

  it('gains more together than any of the changes alone', () => {
    const alone = new Map(singles.map(({ id, gain }) => [id, gain]));
    for (const { members, remedies, gain } of best)
      for (const { id } of members.slice(0, members.length - remedies))
        expect(gain).toBeGreaterThan(alone.get(id) ?? 0);
  });

  it('gives what fits its room, and the best pair among it', () => {
    expect(best.every(({ fits }) => fits)).toBe(true);
    expect(best.some(({ members, remedies }) => members.length - remedies === 2)).toBe(true);
  });

  it('does not make the same thing twice', () => {
    for (const { members } of best)
      members.forEach((one, i) => {
        for (const other of members.slice(i + 1)) expect(compatible(one, other)).toBe(true);
      });
  });

  it('finds the same again', () => {
    const again = combinations(structuredClone(job), 'roof');
    expect(again.map(({ id, gain }) => [id, gain])).toEqual(best.map(({ id, gain }) => [id, gain]));
  });

  it('is never beaten by a pair that it could have found: every pair is tried for the two best', () => {
    const [first, second] = singles.filter(({ remedy }) => !remedy);
    for (const one of [first, second]) {
      if (!one) continue;
      const changed = produce(job, one.recipe);
      for (const other of proposals(changed, 'roof')) {
        if (!other.fits || other.remedy || !compatible(one, other)) continue;
        const flow = solvedAt(produce(changed, other.recipe)).flow;
        expect(best[0]?.gains.at(-1)?.after ?? 0).toBeGreaterThanOrEqual(flow);
      }
    }
  });
});

describe('what a change does beside the air', () => {
  it('says that a straight cut settles the flexible duct', () => {
    const smooth = singles.find(({ kind }) => kind === 'smooth duct');
    expect(smooth?.settles.map(({ rule }) => rule)).toContain('flexible-duct');
  });

  it('brings the house to its limit with make-up air', () => {
    const makeUp = proposals(job, 'wall').find(({ kind }) => kind === 'make-up air');
    expect(makeUp?.settles.map(({ rule }) => rule)).toContain('house-depressurization');
    expect(makeUp?.house?.after).toBeGreaterThan(-15.05);
  });

  it('says so where the larger duct meets a beam, and ranks it last for air', () => {
    const beam = {
      id: 'low',
      name: 'low beam',
      kind: 'beam' as const,
      min: [1.6, 0, 2.39] as [number, number, number],
      max: [1.7, 0.6, 2.44] as [number, number, number],
    };
    const all = proposals({ ...job, blocks: [...job.blocks, beam] }, 'roof');
    const larger = all.filter(({ kind }) => kind === 'larger diameter');
    expect(larger.map(({ fits }) => fits)).toEqual([false, false]);
    const rank = (fits: boolean) => all.flatMap((one, i) => (one.fits === fits ? [i] : []));
    expect(Math.max(...rank(true))).toBeLessThan(Math.min(...rank(false)));
  });

  it('wraps a duct that would drip, and then it does not', () => {
    const cold = { ...job, air: { ...job.air, outdoorTemperature: -10, humidity: 0.6 } };
    const wrap = proposals(cold, 'roof').find(({ kind }) => kind === 'insulation');
    expect(wrap?.settles.map(({ rule }) => rule)).toContain('condensation');
  });
});

describe('goals', () => {
  const change = (id: string, more: Partial<Judged>): Judged => ({
    id,
    gain: 0.1,
    gains: [],
    sound: { before: 60, after: 60 },
    cost: 100,
    opening: 1,
    fits: true,
    ...more,
  });
  const order = (goal: (typeof goals)[number]['id'], all: readonly Judged[]) =>
    ranked(all, goal, { need: 0.3, flow: 0.15 }).map(({ id }) => id);

  it('rank by air, by sound, and by what has to be opened up', () => {
    const all = [
      change('loud', { gain: 0.3, sound: { before: 60, after: 66 }, opening: 3 }),
      change('quiet', { gain: 0.2, sound: { before: 60, after: 55 }, opening: 2 }),
      change('easy', { gain: 0.05, opening: 0 }),
    ];
    expect(order('air', all)).toEqual(['loud', 'quiet', 'easy']);
    expect(order('quiet', all)).toEqual(['quiet', 'easy', 'loud']);
    expect(order('opening', all)).toEqual(['easy', 'quiet', 'loud']);
  });

  it('put the cheapest that meets the required airflow before what is cheaper and does not', () => {
    const all = [
      change('cheap', { cost: 10, gain: 0.1 }),
      change('dear', { cost: 500, gain: 0.2 }),
      change('enough', { cost: 200, gain: 0.16 }),
    ];
    expect(order('cheap', all)).toEqual(['enough', 'dear', 'cheap']);
  });

  it('put what does not fit last, whatever it gains', () => {
    const all = [change('clash', { gain: 1, fits: false }), change('fits', {})];
    for (const { id } of goals) expect(order(id, all)).toEqual(['fits', 'clash']);
  });

  it('order any two changes one way only', () => {
    const compare = byGoal('air', { need: 0, flow: 0 });
    for (const a of singles)
      for (const b of singles) if (a !== b) expect(Math.sign(compare(a, b))).toBe(-Math.sign(compare(b, a)));
  });
});
