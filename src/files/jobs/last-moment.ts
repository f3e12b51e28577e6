/** A job's text as it was when a page went away. */
export interface LastWords {
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/**
 * What is written before a page is gone, when a database no longer answers in time: small, and at once.
 * `put` is false where it was not kept.
 */
export interface LastMoment {
  put(job: string, words: LastWords): boolean;
  get(job: string): LastWords | null;
  drop(job: string): void;
  jobs(): string[];
}

const prefix = 'gentlebend.last.';

/** The last moment in local storage, or in anything that is used like it. */
export function lastMomentIn(storage: () => Storage): LastMoment {
  const trying = <T>(what: (kept: Storage) => T, otherwise: T): T => {
    try {
      return what(storage());
    } catch {
      return otherwise;
    }
  };
  return {
    put: (job, words) =>
      trying((kept) => {
        kept.setItem(prefix + job, JSON.stringify(words));
        return true;
      }, false),
    get: (job) => trying((kept) => wordsOf(kept.getItem(prefix + job)), null),
    drop: (job) => trying((kept) => kept.removeItem(prefix + job), undefined),
    jobs: () =>
      trying((kept) => {
        const keys = Array.from({ length: kept.length }, (_, i) => kept.key(i) ?? '');
        return keys.filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
      }, []),
  };
}

function wordsOf(kept: string | null): LastWords | null {
  const value = JSON.parse(kept ?? 'null') as Partial<LastWords> | null;
  return typeof value?.text === 'string' && typeof value.at === 'number'
    ? { text: value.text, at: value.at }
    : null;
}
