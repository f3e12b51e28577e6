/** A job's text as it was when a page went away; it may refer to pictures that lie on the shelf. */
export interface LastWords {
  readonly text: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** The tab that wrote it. */
  readonly by: string;
  /** When the state was kept that it was made from. */
  readonly since: number;
}

/**
 * What is written before a page is gone, when a database no longer answers in time: small, and at once. Each tab has
 * its own words about a job, so that none speaks over another's.
 */
export interface LastMoment {
  /** False where it was not kept. */
  put(job: string, words: LastWords): boolean;
  /** Oldest first. */
  of(job: string): LastWords[];
  drop(job: string, by: string): void;
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
  const keyOf = (job: string, by: string) => `${prefix}${job}/${by}`;
  const keys = (kept: Storage) =>
    Array.from({ length: kept.length }, (_, i) => kept.key(i) ?? '').filter((key) => key.startsWith(prefix));
  return {
    put: (job, words) =>
      trying((kept) => {
        kept.setItem(keyOf(job, words.by), JSON.stringify(words));
        return true;
      }, false),
    of: (job) =>
      trying(
        (kept) =>
          keys(kept)
            .filter((key) => key.startsWith(keyOf(job, '')))
            .flatMap((key) => wordsOf(kept.getItem(key)) ?? [])
            .sort((a, b) => a.at - b.at),
        [],
      ),
    drop: (job, by) => trying((kept) => kept.removeItem(keyOf(job, by)), undefined),
    jobs: () =>
      trying(
        (kept) => [...new Set(keys(kept).map((key) => key.slice(prefix.length).split('/')[0] ?? ''))],
        [],
      ),
  };
}

function wordsOf(kept: string | null): LastWords | null {
  try {
    const value = JSON.parse(kept ?? 'null') as Partial<LastWords> | null;
    if (typeof value?.text !== 'string' || typeof value.at !== 'number') return null;
    return { text: value.text, at: value.at, by: value.by ?? '', since: value.since ?? 0 };
  } catch {
    return null;
  }
}
