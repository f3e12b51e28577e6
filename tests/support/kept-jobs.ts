import type { Channel, Message } from '../../src/files/jobs/channel.ts';
import { type LastMoment, lastMomentIn } from '../../src/files/jobs/last-moment.ts';
import { createLibrary } from '../../src/files/jobs/library.ts';
import type { Holding, Locks } from '../../src/files/jobs/locks.ts';
import { memoryShelf, type Shelf } from '../../src/files/jobs/shelf.ts';
import { createTemplates } from '../../src/files/jobs/templates.ts';
import { createVersions } from '../../src/files/jobs/versions.ts';

/** A storage as browsers have one, in memory; it takes no text of more than `most` characters. */
export function memoryStorage(most = Number.POSITIVE_INFINITY): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    clear: () => kept.clear(),
    getItem: (key) => kept.get(key) ?? null,
    key: (i) => [...kept.keys()][i] ?? null,
    removeItem: (key) => void kept.delete(key),
    setItem: (key, value) => {
      if (value.length > most) throw new DOMException('There is no room.', 'QuotaExceededError');
      kept.set(key, value);
    },
  };
}

/** Locks shared by the tabs of one test, as a browser's are, and how a tab of them dies. */
export function sharedLocks() {
  interface Ask {
    readonly tab: string;
    readonly grant: (holding: Holding) => void;
    readonly signal: AbortSignal;
  }
  const held = new Map<string, { tab: string; lose: () => void }>();
  const queues = new Map<string, Ask[]>();

  const grant = (name: string, tab: string): Holding => {
    let lose = () => {};
    const lost = new Promise<void>((done) => {
      lose = done;
    });
    const entry = { tab, lose };
    held.set(name, entry);
    return {
      lost,
      release: () => {
        if (held.get(name) === entry) free(name);
      },
    };
  };
  const free = (name: string) => {
    held.delete(name);
    const queue = queues.get(name) ?? [];
    for (let next = queue.shift(); next; next = queue.shift()) {
      if (next.signal.aborted) continue;
      next.grant(grant(name, next.tab));
      return;
    }
  };

  const of = (tab: string): Locks => ({
    take: async (name) => (held.has(name) ? null : grant(name, tab)),
    seize: async (name) => {
      held.get(name)?.lose();
      return grant(name, tab);
    },
    wait: (name, signal) =>
      new Promise((resolve) => {
        if (!held.has(name)) return resolve(grant(name, tab));
        signal.addEventListener('abort', () => resolve(null));
        queues.set(name, [...(queues.get(name) ?? []), { tab, grant: resolve, signal }]);
      }),
    held: async () => [...held.keys()],
  });

  return {
    of,
    holder: (name: string) => held.get(name)?.tab ?? null,
    /** The tab is gone: what it had is free, and what it waited for it waits for no more. */
    kill: (tab: string) => {
      for (const [name, queue] of queues)
        queues.set(
          name,
          queue.filter((ask) => ask.tab !== tab),
        );
      for (const [name, entry] of [...held]) if (entry.tab === tab) free(name);
    },
  };
}

/** A way between the tabs of one test; a silent tab neither hears nor is heard. */
export function sharedChannel() {
  const ears = new Map<string, ((message: Message) => void)[]>();
  const silent = new Set<string>();
  const of = (tab: string): Channel => ({
    post: (message) => {
      if (silent.has(tab)) return;
      for (const [other, hears] of ears)
        if (other !== tab && !silent.has(other)) for (const hear of hears) hear(message);
    },
    listen: (hear) => void ears.set(tab, [...(ears.get(tab) ?? []), hear]),
  });
  return { of, silence: (tab: string) => void silent.add(tab) };
}

/** A shelf whose writes fail, as a full disk's do, for as long as it is told to. */
export function fillable(shelf: Shelf = memoryShelf()) {
  const state = { full: false };
  const filled: Shelf = {
    ...shelf,
    lasting: true,
    write: (changes) =>
      state.full
        ? Promise.reject(new DOMException('The disk is full.', 'QuotaExceededError'))
        : shelf.write(changes),
  };
  return { shelf: filled, state };
}

export function freshLastMoment(storage: Storage = memoryStorage()): LastMoment {
  return lastMomentIn(() => storage);
}

/** What a tab of a browser has, on a shelf and a last moment that its other tabs may share. */
export function keepingOf(
  tab: string,
  shelf: Shelf,
  last: LastMoment = freshLastMoment(),
  now: () => number = Date.now,
) {
  return {
    tab,
    shelf,
    library: createLibrary({ shelf, last, tab, now }),
    versions: createVersions(shelf),
    templates: createTemplates(shelf, now),
  };
}
