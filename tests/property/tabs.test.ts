import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createKeeper } from '../../src/app/jobs/keeper.ts';
import { createBoard } from '../../src/app/store.ts';
import { memoryShelf, type Shelf } from '../../src/files/jobs/shelf.ts';
import { readJob } from '../../src/files/read.ts';
import type { Job, Underlay } from '../../src/graph/document.ts';
import type { SchemeSolution } from '../../src/graph/solution.ts';
import { solveScheme } from '../../src/graph/solve.ts';
import { emptyJob } from '../../src/graph/templates.ts';
import {
  freshLastMoment,
  keepingOf,
  memoryStorage,
  sharedChannel,
  sharedLocks,
} from '../support/kept-jobs.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const blank = emptyJob('metric');
const solution: SchemeSolution = solveScheme(blank, 'scheme-1');

type Step =
  | {
      readonly do: 'edit' | 'addPicture' | 'dropPicture' | 'takeOver' | 'close' | 'crash' | 'freeze' | 'open';
      readonly tab: number;
    }
  | { readonly do: 'wait'; readonly ms: number };

const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: fc.record({ do: fc.constant('edit' as const), tab: fc.nat(2) }) },
    {
      weight: 2,
      arbitrary: fc.record({
        do: fc.constantFrom('addPicture' as const, 'addPicture' as const, 'dropPicture' as const),
        tab: fc.nat(2),
      }),
    },
    {
      weight: 3,
      arbitrary: fc.record({
        do: fc.constantFrom(
          'takeOver' as const,
          'takeOver' as const,
          'close' as const,
          'crash' as const,
          'open' as const,
          'open' as const,
        ),
        tab: fc.nat(2),
      }),
    },
    { weight: 2, arbitrary: fc.record({ do: fc.constant('freeze' as const), tab: fc.nat(2) }) },
    {
      weight: 4,
      arbitrary: fc.record({ do: fc.constant('wait' as const), ms: fc.constantFrom(20, 250, 1450, 2500) }),
    },
  ),
  { minLength: 4, maxLength: 40, size: 'max' },
);

/** Of a picture more than a small local storage takes. */
const pictureSize = 9000;
const smallRoom = 8000;

const underlayOf = (mark: string): Underlay => ({
  id: `picture-${mark}`,
  sheet: 'floor',
  image: `data:image/png;base64,${mark}${'x'.repeat(pictureSize)}`,
  at: [0, 0],
  scale: 0.01,
  opacity: 0.5,
});

/**
 * A browser with up to three tabs on one job; each edit writes a mark of its own into the job's notes, or puts a
 * picture under it. The last moment takes anything, or texts without pictures only.
 */
function browser(roomy: boolean) {
  const kept = memoryShelf();
  const shelf: Shelf = { ...kept, lasting: true };
  const last = freshLastMoment(memoryStorage(roomy ? undefined : smallRoom));
  const locks = sharedLocks();
  const channel = sharedChannel();
  const tabs = new Map<number, Awaited<ReturnType<typeof open>>>();
  let named = 0;
  let marks = 0;

  async function open() {
    named += 1;
    const name = `tab-${named}`;
    const keeping = keepingOf(name, shelf, last);
    const found = await keeping.library.open('job');
    const read = found && readJob(found.text);
    const job = read?.ok ? read.job : blank;
    const board = createBoard(job, { solve: () => solution });
    let dead = false;
    // Nothing that a dead tab has begun may still reach the shelf.
    const deaf =
      <A extends unknown[], R>(work: (...args: A) => Promise<R>) =>
      async (...args: A): Promise<R> =>
        dead ? new Promise<R>(() => {}) : work(...args);
    const own = { ...shelf, write: deaf(shelf.write) };
    const library = keepingOf(name, own, last).library;
    const keeper = createKeeper({
      ...keeping,
      library,
      versions: keepingOf(name, own, last).versions,
      board,
      lasting: true,
      locks: locks.of(name),
      channel: channel.of(name),
      first: {
        id: 'job',
        job,
        file: null,
        fresh: false,
        unsaved: true,
        keptAt: found?.card.changedAt ?? null,
        asKept: true,
      },
      onRefused: () => {},
    });
    const die = () => {
      dead = true;
      locks.kill(name);
      channel.silence(name);
    };
    return { name, board, keeper, die };
  }

  const nextMark = () => {
    marks += 1;
    return `[${marks}]`;
  };
  return { shelf, last, locks, channel, tabs, open, nextMark };
}

/** What can be had of the job in the end: its notes and pictures, and those of its versions. */
async function everythingKept({ shelf, last }: ReturnType<typeof browser>) {
  const { library } = keepingOf('reader', shelf, last);
  const found = await library.open('job');
  expect(last.of('job')).toEqual([]);
  const texts = [found?.text ?? '', ...(await shelf.all('versionTexts')).map(({ text }) => text)];
  const jobs = texts.flatMap((text) => {
    const read = readJob(text);
    return read.ok ? [read.job] : [];
  });
  return {
    notes: jobs.map(({ notes }) => notes).join('\n'),
    pictures: new Set(jobs.flatMap(({ underlays }) => underlays.map(({ image }) => image))),
  };
}

test('whatever tabs do with one job, one has it at a time, and no edit is lost', async () => {
  await fc.assert(
    fc.asyncProperty(steps, fc.boolean(), async (list, roomy) => {
      const world = browser(roomy);
      const { locks, channel, tabs, open, nextMark } = world;
      /** Marks, and pictures, that must be found in the end. */
      const due = new Set<string>();
      const duePictures = new Set<string>();
      const dropped = new Set<string>();
      const made = new Set<string>();
      const settle = (ms: number) => vi.advanceTimersByTimeAsync(ms);
      tabs.set(0, await open());
      await settle(10);

      for (const step of list) {
        if (step.do === 'wait') {
          await settle(step.ms);
          continue;
        }
        const tab = tabs.get(step.tab);
        if (step.do === 'open') {
          if (!tab) tabs.set(step.tab, await open());
          await settle(10);
          continue;
        }
        if (!tab) continue;
        const edited = (recipe: (job: Job) => void) => {
          const before = tab.board.stats.commits;
          tab.board.dispatch('mark', recipe);
          return tab.board.stats.commits > before;
        };
        if (step.do === 'edit') {
          const mark = nextMark();
          const done = edited((job) => {
            job.notes += mark;
          });
          if (done) due.add(mark);
        }
        if (step.do === 'addPicture') {
          const underlay = underlayOf(nextMark());
          made.add(underlay.image);
          const done = edited((job) => {
            job.underlays.push(underlay);
          });
          if (done && roomy) duePictures.add(underlay.image);
        }
        if (step.do === 'dropPicture') {
          const image = tab.board.getState().job.underlays[0]?.image;
          const done = edited((job) => {
            job.underlays.shift();
          });
          if (done && image !== undefined) dropped.add(image);
        }
        if (step.do === 'takeOver') void tab.keeper.takeOver();
        if (step.do === 'freeze') channel.silence(tab.name);
        if (step.do === 'close') {
          const safe = tab.keeper.leave();
          if (roomy) expect(safe).toBe(true);
          tab.die();
          tabs.delete(step.tab);
        }
        if (step.do === 'crash') {
          tab.die();
          tabs.delete(step.tab);
        }
        await settle(1);
        const owners = [...tabs.values()].filter(({ keeper }) => keeper.getState().hold === 'mine');
        expect(owners.length).toBeLessThanOrEqual(1);
        for (const { name, board, keeper } of owners) {
          expect(locks.holder('job')).toBe(name);
          // Where there is little room, a picture is safe from when it lies on the shelf.
          if (!keeper.outstanding())
            for (const { image } of board.getState().job.underlays) duePictures.add(image);
        }
      }
      await settle(10_000);
      const { notes, pictures } = await everythingKept(world);
      for (const mark of due) expect(notes).toContain(mark);
      for (const image of duePictures) if (!dropped.has(image)) expect(pictures).toContain(image);
      for (const image of pictures) expect(made).toContain(image);
    }),
    { numRuns: 250 },
  );
});
