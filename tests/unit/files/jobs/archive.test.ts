import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { type Everything, gathered, packed, unpacked } from '../../../../src/files/jobs/archive.ts';
import { merge } from '../../../../src/files/jobs/merge.ts';
import { readSettings, writeSettings } from '../../../../src/files/jobs/settings.ts';
import { memoryShelf, rooms, type Shelf } from '../../../../src/files/jobs/shelf.ts';
import { readJob } from '../../../../src/files/read.ts';
import { writeJob } from '../../../../src/files/write.ts';
import { fillable, keepingOf, memoryStorage } from '../../../support/kept-jobs.ts';
import { exampleJob } from '../../../support/route-job.ts';

const titled = (title: string) => ({ ...exampleJob(), title });
const beside = (title: string) => `${title} (imported)`;
const theme = { 'gentlebend.theme': 'dark' };

/** A browser with two jobs, two versions and a template. */
async function filled(shelf: Shelf = memoryShelf()) {
  const { library, versions, templates } = keepingOf('a', shelf);
  const at = Date.now();
  const work = { file: null, fresh: false, since: 0 };
  await library.keep({ ...work, id: 'one', job: titled('One'), at: at - 2 });
  await library.keep({ ...work, id: 'two', job: titled('Two'), at: at - 1 });
  await versions.note(titled('Early'), { job: 'one', reason: 'named', name: 'as quoted', at: 10 });
  await versions.note(titled('Late'), { job: 'one', reason: 'working', at: 20 });
  await templates.save(titled('Usual'), { title: 'Usual', withRoute: true });
  return { shelf, library, versions, templates };
}

const allOf = (shelf: Shelf): Promise<Everything> => gathered(shelf, theme, 1000);

async function carried(shelf: Shelf): Promise<Everything> {
  const read = unpacked(packed(await allOf(shelf)));
  if (!read.ok) throw new Error(read.message);
  return read.all;
}

const textsOf = async (shelf: Shelf) =>
  (await Promise.all((['jobTexts', 'versionTexts', 'templateTexts'] as const).map((room) => shelf.all(room))))
    .flat()
    .sort((a, b) => (a.id < b.id ? -1 : 1));

describe('an export of everything', () => {
  it('comes out of its file as it went in', async () => {
    const { shelf } = await filled();
    expect(await carried(shelf)).toEqual(await allOf(shelf));
  });

  it('fills an empty browser with the same jobs, versions and templates', async () => {
    const { shelf } = await filled();
    const other = memoryShelf();
    const merged = await merge(other, await carried(shelf), {}, beside);
    expect(merged).toMatchObject({
      added: ['Two', 'One'].sort(),
      versions: 2,
      templates: 1,
      settings: theme,
    });
    expect(await textsOf(other)).toEqual(await textsOf(shelf));
    for (const room of ['jobs', 'versions', 'templates'] as const) {
      const plain = (cards: readonly object[]) => cards.map((card) => ({ ...card, by: '' }));
      expect(plain(await other.all(room))).toEqual(plain(await shelf.all(room)));
    }
  });

  it('taken in twice adds nothing the second time', async () => {
    const { shelf } = await filled();
    const before = await textsOf(shelf);
    const merged = await merge(shelf, await carried(shelf), theme, beside);
    expect(merged).toMatchObject({ added: [], both: [], versions: 0, templates: 0, settings: {} });
    expect(merged.same).toHaveLength(2);
    expect(await textsOf(shelf)).toEqual(before);
  });

  it('leaves out what is deleted', async () => {
    const { shelf, library } = await filled();
    await library.remove('one');
    const all = await carried(shelf);
    expect([all.jobs.map(({ id }) => id), all.versions]).toEqual([['two'], []]);
  });

  it('holds each job as a file that can be opened alone', async () => {
    const { shelf } = await filled();
    const { jobs } = await carried(shelf);
    const read = readJob(jobs.find(({ id }) => id === 'one')?.text ?? '');
    expect(read.ok && read.job).toEqual(titled('One'));
  });
});

describe('an import', () => {
  it('puts a job that differs from the one here beside it, and changes nothing here', async () => {
    const [{ shelf }, here] = [await filled(), await filled()];
    await here.library.rename('one', 'One, changed here');
    const before = await here.library.open('one');
    const merged = await merge(here.shelf, await carried(shelf), theme, beside);
    expect([merged.both, merged.same]).toEqual([['One'], ['Two']]);
    expect(await here.library.open('one')).toEqual(before);
    expect((await here.library.cards()).map(({ title }) => title).sort()).toEqual([
      'One (imported)',
      'One, changed here',
      'Two',
    ]);
    const again = await merge(here.shelf, await carried(shelf), theme, beside);
    expect([again.both, again.same.length]).toEqual([[], 2]);
  });

  it('brings back a job that was deleted here', async () => {
    const [{ shelf }, here] = [await filled(), await filled()];
    await here.library.remove('one');
    expect((await merge(here.shelf, await carried(shelf), theme, beside)).added).toEqual(['One']);
    expect((await here.library.cards()).every(({ deletedAt }) => deletedAt === null)).toBe(true);
  });

  it('takes what can be read and names what cannot', async () => {
    const all = await allOf((await filled()).shelf);
    const broken = all.jobs.map((job) =>
      job.id === 'one' ? { ...job, text: job.text.replace('"version": 1', '"version": 99') } : job,
    );
    const merged = await merge(memoryShelf(), { ...all, jobs: broken }, {}, beside);
    expect(merged.added).toEqual(['Two']);
    expect(merged.refused).toEqual([{ name: 'one', problems: [expect.stringMatching(/version 99/)] }]);
  });

  it('takes all of it or nothing where the disk is full', async () => {
    const { shelf, state } = fillable();
    const all = await allOf((await filled()).shelf);
    state.full = true;
    await expect(merge(shelf, all, {}, beside)).rejects.toThrow('full');
    for (const room of rooms) expect(await shelf.all(room)).toEqual([]);
  });

  it('refuses what is no export, with a sentence', async () => {
    const other = zipSync({ 'a.txt': strToU8('hello') });
    const newer = zipSync({ 'manifest.json': strToU8('{"format":"gentlebend-archive","version":2}') });
    const says = (bytes: Uint8Array) => {
      const read = unpacked(bytes);
      return read.ok ? '' : read.message;
    };
    expect(says(strToU8(writeJob(exampleJob())))).toMatch(/no zip file/);
    expect(says(other)).toMatch(/not one that Gentlebend has exported/);
    expect(says(newer)).toMatch(/newer Gentlebend/);
  });

  it('names a file that its list has and it lacks', async () => {
    const all = packed(await allOf((await filled()).shelf));
    const { unzipSync } = await import('fflate');
    const files = unzipSync(all);
    delete files['jobs/0001.gentlebend.json'];
    const read = unpacked(zipSync(files));
    expect(read.ok && [read.missing, read.all.jobs.length]).toEqual([['jobs/0001.gentlebend.json'], 1]);
  });
});

describe('settings', () => {
  it('are the program’s own, without locks and last moments', () => {
    const storage = memoryStorage();
    storage.setItem('gentlebend.theme', 'dark');
    storage.setItem('gentlebend.last.job-1', '{}');
    storage.setItem('gentlebend.lock.job-1', '{}');
    storage.setItem('another', 'x');
    expect(readSettings(() => storage)).toEqual(theme);
  });

  it('of an archive cannot write jobs or another program’s keys', () => {
    const storage = memoryStorage();
    writeSettings(() => storage, { ...theme, 'gentlebend.last.job-1': '{}', another: 'x' });
    expect([storage.length, storage.getItem('gentlebend.theme')]).toEqual([1, 'dark']);
  });
});
