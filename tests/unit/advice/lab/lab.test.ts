import { describe, expect, it } from 'vitest';
import { labScene, RUN_LENGTH, runOfBends } from '../../../../src/advice/lab/bench.ts';
import { judgeGuess } from '../../../../src/advice/lab/guess.ts';
import { kindsFor, tryBend, tryEveryKind, tryRuns, tryTwoBends } from '../../../../src/advice/lab/trial.ts';
import { inferRoute } from '../../../../src/graph/infer.ts';
import { solveScheme } from '../../../../src/graph/solve.ts';
import { partDrop } from '../../../../src/hydraulics/element.ts';
import { bendLoss } from '../../../../src/hydraulics/losses/bends.ts';
import { area } from '../../../../src/hydraulics/section.ts';

const scene = labScene('imperial');
const top = 3;
const at = (radiusRatio: number) => tryBend(scene, { kind: 'smooth', radiusRatio }, top);
const flowOf = (trial: ReturnType<typeof at>) => trial.outcome?.flow ?? Number.NaN;

describe('a turn tried on the bench', () => {
  it('costs less, delivers more and is not louder for a larger radius', () => {
    const [tight, gentle] = [at(0.5), at(2)];
    expect(gentle.fitting?.c).toBeLessThan(tight.fitting?.c as number);
    expect(gentle.fitting?.equivalentLength).toBeLessThan(tight.fitting?.equivalentLength as number);
    expect(flowOf(gentle)).toBeGreaterThan(flowOf(tight));
  });

  it('is the very solution of the changed job', () => {
    const trial = at(1.5);
    const solved = solveScheme(trial.job, scene.schemeId).speeds[top]?.outcome;
    expect(solved?.solved && solved.flow).toBe(flowOf(trial));
  });

  it('leaves the job that it was made from as it was', () => {
    const before = JSON.stringify(scene.job);
    at(0.5);
    expect(JSON.stringify(scene.job)).toBe(before);
  });

  it('says that an arc longer than its leg does not fit', () => {
    expect(at(2.5).fits).toBe(true);
    expect(at(9).fits).toBe(false);
  });
});

describe('every kind side by side', () => {
  const rows = tryEveryKind(scene, top);

  it('has each kind of bend that is made for the duct and the angle, once', () => {
    const ids = rows.map(({ row }) => row.id).sort();
    expect(ids).toEqual(
      kindsFor({ shape: 'round', diameter: 0.2 }, 90)
        .map(({ id }) => id)
        .sort(),
    );
    expect(ids).toContain('smooth');
    expect(ids).toContain('mitred');
    expect(ids).not.toContain('rectangular-smooth');
    expect(ids).not.toContain('three-piece-shallow');
    expect(kindsFor({ shape: 'round', diameter: 0.2 }, 45).map(({ id }) => id)).toContain(
      'three-piece-shallow',
    );
  });

  it.each(rows.map(({ row, trial }) => [row.id, row, trial] as const))(
    'gives %s the coefficient that its table gives',
    (_, row, trial) => {
      const { fitting, solution } = trial;
      if (!fitting) throw new Error('it was solved');
      const loss = bendLoss({
        kind: row.id,
        angle: 90,
        radiusRatio: row.defaultRadiusRatio,
        section: fitting.section,
      });
      const drop = loss.parts.reduce((sum, part) => sum + partDrop(part, fitting.flow, solution.air), 0);
      const velocity = fitting.flow / area(fitting.section);
      expect(fitting.c).toBeCloseTo(drop / (0.5 * solution.air.density * velocity ** 2), 9);
    },
  );

  it('stands from the least loss to the most', () => {
    const cs = rows.map(({ trial }) => trial.fitting?.c ?? Number.NaN);
    expect(cs).toEqual([...cs].sort((a, b) => a - b));
  });
});

describe('two bends of half the angle', () => {
  const shared = (kind: string, radiusRatio: number) => {
    const found = tryTwoBends(scene, { kind, radiusRatio }, top);
    if (!found) throw new Error('the bench has a turn');
    return { found, one: found.one.fitting?.c as number };
  };

  it('cost far less than a mitred corner and deliver more', () => {
    const { found, one } = shared('mitred', 0);
    expect(found.both.c).toBeLessThan(0.6 * one);
    expect(flowOf(found.two)).toBeGreaterThan(flowOf(found.one));
  });

  it('cost more than one bend that is smooth already, for half the angle has more than half the loss', () => {
    const { found, one } = shared('smooth', 1);
    expect(found.both.c).toBeGreaterThan(one);
    expect(found.both.c).toBeLessThan(2 * one);
  });

  it('are two, each of 45°', () => {
    const shared = tryTwoBends(scene, { kind: 'mitred' }, top);
    const angles = [...(shared?.two.solution.route.nodes.values() ?? [])].flatMap((node) =>
      node.bend ? [node.bend.angle] : [],
    );
    expect(angles.map((angle) => Math.round(angle * 1e6) / 1e6)).toEqual([45, 45]);
  });
});

describe('a run of bends', () => {
  it('has as much duct however many bends are on it', () => {
    for (const count of [0, 1, 4, 6]) {
      const job = runOfBends('imperial', count, { kind: 'smooth', radiusRatio: 1 });
      const { nodes, segments } = inferRoute(job, 'bench');
      expect([...segments.values()].reduce((sum, leg) => sum + leg.length, 0)).toBeCloseTo(RUN_LENGTH, 9);
      expect([...nodes.values()].filter(({ bend }) => bend)).toHaveLength(count);
    }
  });

  it('delivers less with each bend, and each takes less than the one before', () => {
    const flows = tryRuns('metric', { kind: 'mitred' }, top).map(({ trial }) => flowOf(trial));
    const taken = flows.slice(1).map((flow, i) => (flows[i] as number) - flow);
    expect(taken).toHaveLength(6);
    for (const each of taken) expect(each).toBeGreaterThan(0);
    expect(taken).toEqual([...taken].sort((a, b) => b - a));
  });
});

describe('a guess', () => {
  it('close to the truth is told so', () => {
    expect(judgeGuess(0.2, 0.201, 0.25)).toMatchObject({
      rightWay: true,
      words: expect.stringMatching(/^Spot on/),
    });
    expect(judgeGuess(0.19, 0.201, null).words).toMatch(/^Very close: 5 %/);
  });

  it('far off but the right way is told what was right about it first', () => {
    expect(judgeGuess(0.1, 0.2, 0.25)).toMatchObject({
      rightWay: true,
      words: expect.stringMatching(/^The right way/),
    });
  });

  it('the other way is told so without blame', () => {
    const judged = judgeGuess(0.3, 0.2, 0.25);
    expect(judged.rightWay).toBe(false);
    expect(judged.words).toMatch(/surprises most people/);
  });

  it('that nothing changes is not praised for lying near', () => {
    const judged = judgeGuess(0.249, 0.24, 0.25);
    expect(judged.off).toBeLessThan(0.1);
    expect(judged).toMatchObject({ rightWay: null, words: expect.stringMatching(/hardly any change/) });
  });

  it('has no way to go where the figure hardly changed', () => {
    expect(judgeGuess(0.3, 0.2501, 0.25).rightWay).toBeNull();
  });
});
