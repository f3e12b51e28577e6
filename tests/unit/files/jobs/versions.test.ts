import { describe, expect, it } from 'vitest';
import { losesMuch } from '../../../../src/files/jobs/risk.ts';
import { memoryShelf } from '../../../../src/files/jobs/shelf.ts';
import { createTemplates } from '../../../../src/files/jobs/templates.ts';
import { usualThinning } from '../../../../src/files/jobs/thin.ts';
import { createVersions } from '../../../../src/files/jobs/versions.ts';
import { writeJob } from '../../../../src/files/write.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { exampleJob, withScheme } from '../../../support/route-job.ts';

const titled = (title: string): Job => ({ ...exampleJob(), title });
const first = { job: 'one', reason: 'working' } as const;

describe('versions', () => {
  it('are listed newest first, each job its own', async () => {
    const versions = createVersions(memoryShelf());
    await versions.note(titled('a'), { ...first, at: 1 });
    await versions.note(titled('b'), { ...first, at: 2 });
    await versions.note(titled('c'), { ...first, job: 'other', at: 3 });
    expect((await versions.of('one')).map(({ at }) => at)).toEqual([2, 1]);
  });

  it('give back the very text', async () => {
    const versions = createVersions(memoryShelf());
    const card = await versions.note(exampleJob(), { ...first, at: 1 });
    expect(await versions.text(card?.id ?? '')).toBe(writeJob(exampleJob()));
  });

  it('are not kept twice where nothing has changed', async () => {
    const versions = createVersions(memoryShelf());
    await versions.note(exampleJob(), { ...first, at: 1 });
    expect(await versions.note(exampleJob(), { ...first, at: 2 })).toBeNull();
    expect(await versions.of('one')).toHaveLength(1);
  });

  it('that are the same as the newest give it their name', async () => {
    const versions = createVersions(memoryShelf());
    await versions.note(exampleJob(), { ...first, at: 1 });
    await versions.note(exampleJob(), { job: 'one', reason: 'named', name: 'as quoted', at: 2 });
    expect((await versions.of('one')).map(({ name, reason, at }) => [name, reason, at])).toEqual([
      ['as quoted', 'named', 1],
    ]);
  });

  it('stay in the order in which they were kept, even where the clock goes back', async () => {
    const versions = createVersions(memoryShelf());
    await versions.note(titled('a'), { ...first, at: 100 });
    await versions.note(titled('b'), { ...first, at: 50 });
    const texts = await Promise.all((await versions.of('one')).map(({ id }) => versions.text(id)));
    expect(texts).toEqual([writeJob(titled('b')), writeJob(titled('a'))]);
  });

  it('are thinned as they are kept, those with a name never', async () => {
    const versions = createVersions(memoryShelf(), { ...usualThinning, most: 3 });
    await versions.note(titled('named'), { job: 'one', reason: 'named', name: 'mine', at: 0 });
    for (let at = 1; at <= 9; at += 1) await versions.note(titled(`${at}`), { ...first, at });
    expect((await versions.of('one')).map(({ at }) => at)).toEqual([9, 8, 7, 0]);
  });
});

describe('what takes much away', () => {
  it('is a scheme less, a hood less, or more than a few legs at once', () => {
    const job = exampleJob();
    const without = (n: number) =>
      withScheme(job, (scheme) => ({ ...scheme, segments: scheme.segments.slice(n) }));
    expect(losesMuch(job, { ...job, schemes: job.schemes.slice(1) })).toBe(true);
    expect(losesMuch(job, { ...job, hoods: [] })).toBe(true);
    expect(losesMuch(job, without(6))).toBe(true);
    expect(losesMuch(job, without(2))).toBe(false);
    expect(losesMuch(job, titled('renamed'))).toBe(false);
  });
});

describe('a template', () => {
  it('with its route is the job itself under another name', async () => {
    const templates = createTemplates(memoryShelf());
    const { id } = await templates.save(exampleJob(), { title: 'Usual', withRoute: true });
    expect(await templates.open(id)).toEqual(titled('Usual'));
  });

  it('without its route keeps hoods, house, kitchen, air, prices and rules, and nothing of the place', async () => {
    const profile = { rules: { 'duct-length': { off: true } } };
    const job: Job = { ...exampleJob(), prices: { 'bend:smooth': 40 }, profile };
    const templates = createTemplates(memoryShelf());
    const { id } = await templates.save(job, { title: 'Usual', withRoute: false });
    const begun = await templates.open(id);
    const { hoods, house, kitchen, air, prices } = job;
    expect(begun).toMatchObject({ hoods, house, kitchen, air, prices, profile });
    expect(begun).toMatchObject({ blocks: [], exits: [], underlays: [] });
    expect(begun?.schemes).toHaveLength(1);
    expect(begun?.schemes[0]).toMatchObject({ nodes: [], segments: [], defaults: job.schemes[0]?.defaults });
  });
});
