import { describe, expect, it } from 'vitest';
import { askedFigure, lessonStates } from '../../../../src/advice/lessons/lesson.ts';
import { lessons } from '../../../../src/advice/lessons/lessons.ts';
import { readJob } from '../../../../src/files/read.ts';
import { writeJob } from '../../../../src/files/write.ts';

const flowsOf = (id: string) => {
  const lesson = lessons.find((each) => each.id === id);
  if (!lesson) throw new Error(`no lesson ${id}`);
  return lessonStates(lesson, 'imperial').map(({ outcome }) => Math.round(outcome.flow / 0.000471947));
};

describe.each(lessons.map((lesson) => [lesson.id, lesson] as const))('the lesson %s', (_, lesson) => {
  it('has four to six steps', () => {
    expect(lesson.steps.length).toBeGreaterThanOrEqual(4);
    expect(lesson.steps.length).toBeLessThanOrEqual(6);
  });

  it.each(['imperial', 'metric'] as const)('solves at every step in %s units', (units) => {
    const states = lessonStates(lesson, units);
    expect(states).toHaveLength(lesson.steps.length + 1);
    lesson.steps.forEach((step, i) => {
      const state = states[i + 1];
      expect(state && askedFigure(step.ask, state)).toBeGreaterThan(0);
    });
  });

  it('draws nothing that cannot be built', () => {
    for (const { solution } of lessonStates(lesson, 'imperial'))
      expect(solution.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('says in its drawing that it is invented', () => {
    expect(lesson.job('imperial').title).toMatch(/^Invented/);
  });

  it('points only at places that its drawing has', () => {
    const states = lessonStates(lesson, 'imperial');
    lesson.steps.forEach(({ nodes, segments }, i) => {
      const { route } = (states[i + 1] ?? states[0])?.solution ?? {};
      for (const id of nodes) expect(route?.nodes.has(id), id).toBe(true);
      for (const id of segments) expect(route?.segments.has(id), id).toBe(true);
    });
  });

  it('is a job that can be saved and opened again', () => {
    for (const { job } of lessonStates(lesson, 'imperial')) expect(readJob(writeJob(job)).ok).toBe(true);
  });
});

describe('what the lessons show', () => {
  it('tighter turns let less air out, and each one mended gives some back', () => {
    const [, gentle, tight, mitred, one, shared] = flowsOf('tight-turns') as number[];
    expect(tight).toBeLessThan(gentle as number);
    expect(mitred).toBeLessThan(tight as number);
    expect(one).toBeGreaterThan(mitred as number);
    expect(shared).toBeGreaterThan(one as number);
  });

  it('squeezing more of the run lets less air out', () => {
    const [, full, last, whole, , first] = flowsOf('squeezed-duct') as number[];
    expect(last).toBeLessThan(full as number);
    expect(whole).toBeLessThan(last as number);
    expect(first).toBeLessThan(full as number);
    expect(first).toBeGreaterThan(whole as number);
  });

  it('a wider duct behind the same small cap brings less than a better cap', () => {
    const [, fair, small, , wide, stuck, cured] = flowsOf('small-cap') as number[];
    expect(small).toBeLessThan(fair as number);
    expect(wide).toBeLessThan(fair as number);
    expect(stuck).toBeLessThan(small as number);
    expect(cured).toBe(fair);
  });
});
