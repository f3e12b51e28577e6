/** What is kept of the work: the file's text and its name, if it has one. */
export interface Saved {
  readonly text: string;
  readonly fileName: string | null;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
}

/** Where the work is kept between visits. */
export interface JobStore {
  load(): Promise<Saved | null>;
  save(saved: Saved): Promise<void>;
  /** Keeps it before returning, for a page that is being closed; false where that is not possible. */
  saveNow(saved: Saved): boolean;
}

export interface Autosave {
  /** Call after each committed change. `produce` runs only when it is time to write. */
  changed(produce: () => Omit<Saved, 'savedAt'>): void;
  /** Writes what is outstanding, and settles when it is kept. */
  flush(): Promise<void>;
  /** Writes what is outstanding without waiting: for `pagehide`. */
  flushNow(): void;
}

export interface AutosaveOptions {
  /** Quiet time before writing, ms. */
  readonly delay?: number;
  /** Longest time that a change stays unwritten while others follow it, ms. */
  readonly longest?: number;
  readonly now?: () => number;
  readonly onError?: (error: unknown) => void;
}

/**
 * Keeps the work after each committed change: a moment after the last one, and at once when the page
 * goes away. Writes never overlap, and the newest change always wins.
 */
export function startAutosave(store: JobStore, options: AutosaveOptions = {}): Autosave {
  const { delay = 300, longest = 2000, now = Date.now, onError = () => {} } = options;
  let pending: (() => Omit<Saved, 'savedAt'>) | null = null;
  let waitingSince = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  /** Given to the store, which has not said yet that it is kept. */
  let unconfirmed: Saved | null = null;

  function take(): Saved | null {
    clearTimeout(timer);
    if (pending === null) return null;
    const saved = { ...pending(), savedAt: now() };
    pending = null;
    return saved;
  }

  function write(saved: Saved): void {
    unconfirmed = saved;
    writing = writing
      .then(() => store.save(saved))
      .then(() => {
        if (unconfirmed === saved) unconfirmed = null;
      })
      .catch(onError);
  }

  function flush(): Promise<void> {
    const saved = take();
    if (saved !== null) write(saved);
    return writing;
  }

  return {
    changed(produce) {
      if (pending === null) waitingSince = now();
      pending = produce;
      clearTimeout(timer);
      const wait = Math.max(0, Math.min(delay, waitingSince + longest - now()));
      timer = setTimeout(() => void flush(), wait);
    },
    flush,
    flushNow() {
      const pendingNow = take();
      const saved = pendingNow ?? unconfirmed;
      if (saved !== null && !store.saveNow(saved) && pendingNow !== null) write(pendingNow);
    },
  };
}

/** A store in memory, for tests and for browsers that keep nothing. */
export function memoryStore(initial: Saved | null = null): JobStore {
  let kept = initial;
  return {
    load: () => Promise.resolve(kept),
    save: (saved) => {
      kept = saved;
      return Promise.resolve();
    },
    saveNow: (saved) => {
      kept = saved;
      return true;
    },
  };
}
