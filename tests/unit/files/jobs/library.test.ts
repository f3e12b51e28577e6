import { describe, expect, it } from 'vitest';
import { type Library, Overtaken, type Work } from '../../../../src/files/jobs/library.ts';
import { readJob } from '../../../../src/files/read.ts';
import { writeJob } from '../../../../src/files/write.ts';
import type { Job } from '../../../../src/graph/document.ts';
import { fillable, freshLastMoment, keepingOf, memoryStorage } from '../../../support/kept-jobs.ts';
import { exampleJob } from '../../../support/route-job.ts';

const day = 24 * 3600_000;

function kept(most?: number) {
  const clock = { now: 1000 };
  const { shelf, state: disk } = fillable();
  const last = freshLastMoment(memoryStorage(most));
  const of = (tab: string) => keepingOf(tab, shelf, last, () => clock.now).library;
  const work = (more: Partial<Work> = {}): Work => ({
    id: 'one',
    job: exampleJob(),
    file: null,
    fresh: false,
    at: clock.now,
    since: 0,
    ...more,
  });
  const { versions } = keepingOf('a', shelf, last);
  return { clock, disk, last, of, library: of('a'), versions, work };
}

const titled = (title: string) => ({ ...exampleJob(), title });

describe('the jobs of a browser', () => {
  it('are listed by their last change, with what can be told of them', async () => {
    const { library, work } = kept();
    await library.keep(work({ id: 'one', job: titled('One'), at: 1 }));
    await library.keep(work({ id: 'two', job: titled('Two'), at: 2 }));
    const cards = await library.cards();
    expect(cards.map(({ title }) => title)).toEqual(['Two', 'One']);
    const [card] = cards;
    expect(card?.summary.map(({ name, legs }) => [name, legs])).toEqual([
      ['Out the north wall', 3],
      ['Up through the roof', 6],
    ]);
    expect(card?.summary[0]?.flow).toBeGreaterThan(0.2);
    expect(card?.sketch?.parts.length).toBeGreaterThan(5);
  });

  it('give back the very text that was kept', async () => {
    const { library, work } = kept();
    await library.keep(work());
    expect((await library.open('one'))?.text).toBe(writeJob(exampleJob()));
  });

  it('keep when they were made and the file that they are tied to', async () => {
    const { library, work } = kept();
    const file = { name: 'a.json', handle: null, holds: 'x' };
    await library.keep(work({ at: 5, file }));
    await library.keep(work({ at: 9, file, job: titled('Later') }));
    expect((await library.open('one'))?.card).toMatchObject({ createdAt: 5, changedAt: 9, file });
  });

  it('can be renamed without being opened', async () => {
    const { library, work } = kept();
    await library.keep(work());
    await library.rename('one', 'Another name');
    const found = await library.open('one');
    const read = readJob(found?.text ?? '');
    expect([found?.card.title, read.ok && read.job.title]).toEqual(['Another name', 'Another name']);
  });

  it('can be duplicated; what is done to the copy leaves the first alone', async () => {
    const { library, work } = kept();
    await library.keep(work());
    const copy = await library.duplicate('one', 'Copy');
    await library.rename(copy?.id ?? '', 'Changed');
    expect((await library.cards()).map(({ title }) => title).sort()).toEqual(['Changed', exampleJob().title]);
  });

  it('are brought back after they were deleted', async () => {
    const { library, work } = kept();
    await library.keep(work());
    await library.remove('one');
    expect((await library.cards())[0]?.deletedAt).toBe(1000);
    await library.bringBack('one');
    expect((await library.cards())[0]?.deletedAt).toBeNull();
    expect((await library.open('one'))?.text).toBe(writeJob(exampleJob()));
  });

  it('are thrown away a month after they were deleted, and not before', async () => {
    const { clock, library, work } = kept();
    await library.keep(work());
    await library.remove('one');
    clock.now += 29 * day;
    expect(await library.cards()).toHaveLength(1);
    clock.now += 2 * day;
    expect([await library.cards(), await library.open('one')]).toEqual([[], null]);
  });

  it('go after a day where nobody has changed them', async () => {
    const { clock, library, work } = kept();
    await library.keep(work({ fresh: true }));
    clock.now += 2 * day;
    expect(await library.cards()).toEqual([]);
  });
});

describe('the last moment of a page', () => {
  it('is taken over where it is newer than what was kept', async () => {
    const { library, work } = kept();
    await library.keep(work({ at: 1 }));
    library.keepNow(work({ at: 2, job: titled('Last moment') }));
    expect((await library.open('one'))?.card.title).toBe('Last moment');
  });

  it('is left where what was kept is newer', async () => {
    const { library, work } = kept();
    library.keepNow(work({ at: 1, job: titled('Last moment') }));
    await library.keep(work({ at: 2, job: titled('Kept') }));
    expect((await library.open('one'))?.card.title).toBe('Kept');
  });

  it('makes a job of work that was never kept otherwise', async () => {
    const { library, work } = kept();
    library.keepNow(work({ job: titled('Only once') }));
    expect((await library.cards()).map(({ title }) => title)).toEqual(['Only once']);
  });

  it('is read even where the shelf takes nothing more', async () => {
    const { disk, library, work } = kept();
    await library.keep(work({ at: 1 }));
    disk.full = true;
    library.keepNow(work({ at: 2, job: titled('Last moment') }));
    expect((await library.open('one'))?.card.title).toBe('Last moment');
  });
});

describe('the last moment of a job with pictures', () => {
  const picture = (mark: string) => `data:image/png;base64,${mark}${'x'.repeat(200_000)}`;
  const over = (title: string, ...images: readonly string[]): Job => ({
    ...titled(title),
    underlays: images.map((image, i) => ({
      id: `u${i}`,
      sheet: 'floor',
      image,
      at: [0, 0],
      scale: 0.01,
      opacity: 1,
    })),
  });
  const small = 20_000;
  const opened = async (library: Library) => {
    const read = readJob((await library.open('one'))?.text ?? '');
    return read.ok ? read.job : null;
  };

  it('is small, and gives the pictures back that lie on the shelf', async () => {
    const { library, last, work } = kept(small);
    await library.keep(work({ at: 1, job: over('Kept', picture('a')) }));
    const job = over('Last moment', picture('a'));
    expect(library.keepNow(work({ at: 2, job, shelved: new Set([picture('a')]) }))).toBe(true);
    expect(last.of('one')[0]?.text.length).toBeLessThan(small);
    expect(await opened(library)).toEqual(job);
  });

  it('finds a picture among the versions where another tab has taken it away', async () => {
    const { of, work, versions } = kept(small);
    const [a, b] = [of('a'), of('b')];
    const before = over('Kept', picture('a'));
    await versions.note(before, { job: 'one', reason: 'opened', at: 1 });
    await a.keep(work({ at: 2, job: before }));
    const job = over('By a', picture('a'));
    a.keepNow(work({ at: 3, since: 2, job, shelved: new Set([picture('a')]) }));
    await b.keep(work({ at: 4, since: 2, job: over('By b') }));
    expect((await opened(b))?.title).toBe('By b');
    const [newest] = await versions.of('one');
    expect(await versions.text(newest?.id ?? '')).toBe(writeJob(job));
  });

  it('keeps the work where there is no room for a new picture, and tells that it is not all', async () => {
    const { library, work } = kept(small);
    await library.keep(work({ at: 1, job: over('Kept', picture('a')) }));
    const job = over('Last moment', picture('a'), picture('b'));
    expect(library.keepNow(work({ at: 2, job, shelved: new Set([picture('a')]) }))).toBe(false);
    expect(await opened(library)).toEqual(over('Last moment', picture('a')));
  });

  it('takes a new picture with it where there is room', async () => {
    const { library, work } = kept();
    await library.keep(work({ at: 1, job: over('Kept', picture('a')) }));
    const job = over('Last moment', picture('a'), picture('b'));
    expect(library.keepNow(work({ at: 2, job, shelved: new Set([picture('a')]) }))).toBe(true);
    expect(await opened(library)).toEqual(job);
  });
});

describe('two tabs', () => {
  it('never write over what the other has written since', async () => {
    const { of, work } = kept();
    const [a, b] = [of('a'), of('b')];
    const { changedAt } = await a.keep(work({ at: 1 }));
    await b.keep(work({ at: 2, since: changedAt, job: titled('By b') }));
    await expect(a.keep(work({ at: 3, since: changedAt, job: titled('By a') }))).rejects.toBeInstanceOf(
      Overtaken,
    );
    expect((await a.open('one'))?.card.title).toBe('By b');
  });
});

describe('a full disk', () => {
  it('leaves what was kept as it was', async () => {
    const { disk, library, work } = kept();
    await library.keep(work({ at: 1 }));
    disk.full = true;
    await expect(library.keep(work({ at: 2, job: titled('Too much') }))).rejects.toThrow('full');
    expect((await library.open('one'))?.text).toBe(writeJob(exampleJob()));
  });
});
