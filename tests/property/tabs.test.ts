import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createKeeper } from '../../src/app/jobs/keeper.ts';
import { createBoard } from '../../src/app/store.ts';
import { memoryShelf, type Shelf } from '../../src/files/jobs/shelf.ts';
import { readJob } from '../../src/files/read.ts';
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
  | { readonly do: 'edit' | 'takeOver' | 'close' | 'crash' | 'freeze' | 'open'; readonly tab: number }
  | { readonly do: 'wait'; readonly ms: number };

const steps: fc.Arbitrary<Step[]> = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: fc.record({ do: fc.constant('edit' as const), tab: fc.nat(2) }) },
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

/** A browser with up to three tabs on one job; each edit writes a mark of its own into the job's notes. */
function browser() {
  const kept = memoryShelf();
  const shelf: Shelf = { ...kept, lasting: true };
  const last = freshLastMoment(memoryStorage());
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

async function everythingKept(shelf: Shelf, last: ReturnType<typeof browser>['last']): Promise<string> {
  const texts = [
    (await shelf.get('jobTexts', 'job'))?.text ?? '',
    ...last.of('job').map(({ text }) => text),
    ...(await shelf.all('versionTexts')).map(({ text }) => text),
  ];
  return texts
    .map((text) => {
      const read = readJob(text);
      return read.ok ? read.job.notes : '';
    })
    .join('\n');
}

test('whatever tabs do with one job, one has it at a time, and no edit is lost', async () => {
  await fc.assert(
    fc.asyncProperty(steps, async (list) => {
      const { shelf, last, locks, channel, tabs, open, nextMark } = browser();
      /** Marks that must be found in the end. */
      const due = new Set<string>();
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
        if (step.do === 'edit') {
          const mark = nextMark();
          const before = tab.board.stats.commits;
          tab.board.dispatch('mark', (job) => {
            job.notes += mark;
          });
          if (tab.board.stats.commits > before) due.add(mark);
        }
        if (step.do === 'takeOver') void tab.keeper.takeOver();
        if (step.do === 'freeze') channel.silence(tab.name);
        if (step.do === 'close') {
          expect(tab.keeper.leave()).toBe(true);
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
        for (const { name } of owners) expect(locks.holder('job')).toBe(name);
      }
      await settle(10_000);
      const found = await everythingKept(shelf, last);
      for (const mark of due) expect(found).toContain(mark);
    }),
    { numRuns: 400 },
  );
});
