/** Where the work is kept between visits. */
export interface WorkStore<T> {
  save(work: T): Promise<unknown>;
  /** Keeps it before returning, for a page that is being closed; false where that is not possible. */
  saveNow(work: T): boolean;
}

export interface Autosave<T> {
  /** Call after each committed change. `produce` runs only when it is time to write. */
  changed(produce: () => T): void;
  /** Writes what is outstanding, and settles when it is kept or could not be. */
  flush(): Promise<void>;
  /** Writes what is outstanding without waiting, for `pagehide`; false where it may be lost with the page. */
  flushNow(): boolean;
  /** True from a change until it is kept. */
  outstanding(): boolean;
  /** Forgets what is outstanding: it is kept elsewhere. */
  drop(): void;
}

export interface AutosaveOptions {
  /** Quiet time before writing, ms. */
  readonly delay?: number;
  /** Longest time that a change stays unwritten while others follow it, ms. */
  readonly longest?: number;
  /** Time after which a write that failed is tried again, ms. */
  readonly again?: number;
  readonly now?: () => number;
  readonly onError?: (error: unknown) => void;
  /** Told after each write that was kept. */
  readonly onKept?: () => void;
}

/**
 * Keeps the work after each committed change: a moment after the last one, and at once when the page
 * goes away. Writes never overlap, and the newest change always wins. What could not be written is
 * written for the last moment instead, and tried again.
 */
export function startAutosave<T>(store: WorkStore<T>, options: AutosaveOptions = {}): Autosave<T> {
  const { delay = 300, longest = 2000, again = 5000, now = Date.now } = options;
  const { onError = () => {}, onKept = () => {} } = options;
  let pending: (() => T) | null = null;
  let waitingSince = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  /** Given to the store, which has not said yet that it is kept, or has said that it is not. */
  let unconfirmed: T | null = null;
  let failed = false;

  function take(): T | null {
    clearTimeout(timer);
    if (pending === null) return null;
    const work = pending();
    pending = null;
    return work;
  }

  function write(work: T): void {
    unconfirmed = work;
    failed = false;
    writing = writing.then(async () => {
      if (unconfirmed === null) return;
      try {
        await store.save(work);
        if (unconfirmed === work) unconfirmed = null;
        onKept();
      } catch (error) {
        if (unconfirmed === work) {
          failed = true;
          store.saveNow(work);
          if (pending === null) timer = setTimeout(() => void flush(), again);
        }
        onError(error);
      }
    });
  }

  function flush(): Promise<void> {
    const work = take() ?? (failed ? unconfirmed : null);
    if (work !== null) write(work);
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
      const fresh = take();
      const work = fresh ?? unconfirmed;
      const safe = work === null || store.saveNow(work);
      if (work !== null && (fresh !== null || failed)) write(work);
      return safe;
    },
    outstanding: () => pending !== null || unconfirmed !== null,
    drop() {
      clearTimeout(timer);
      pending = null;
      unconfirmed = null;
      failed = false;
    },
  };
}
