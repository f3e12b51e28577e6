/** A lock that this tab has. */
export interface Holding {
  release(): void;
  /** Settles when another tab has taken it by force; never where it was released. */
  readonly lost: Promise<void>;
}

/** Locks that the tabs of one browser share, each free again when its tab is gone. */
export interface Locks {
  /** Null where another tab has it. */
  take(name: string): Promise<Holding | null>;
  /** Takes it, whoever has it. */
  seize(name: string): Promise<Holding>;
  /** Takes it once it is free; null where the signal ends the wait. */
  wait(name: string, signal: AbortSignal): Promise<Holding | null>;
  /** The names that any tab has. */
  held(): Promise<string[]>;
}

/** The browser's own locks; leases in local storage where there are none, as on pages that are not secure. */
export function browserLocks(tab: string): Locks {
  const manager = navigator.locks as LockManager | undefined;
  return manager ? webLocks(manager) : leases({ storage: () => localStorage, tab });
}

const prefix = 'gentlebend.lock.';

function webLocks(manager: LockManager): Locks {
  const ask = (name: string, options: LockOptions) =>
    new Promise<Holding | null>((resolve) => {
      let lose = () => {};
      const lost = new Promise<void>((done) => {
        lose = done;
      });
      let granted = false;
      const hold = (lock: Lock | null) => {
        if (!lock) return resolve(null);
        granted = true;
        return new Promise<void>((release) => resolve({ release, lost }));
      };
      manager.request(prefix + name, options, hold).catch(() => {
        if (granted) lose();
        else resolve(null);
      });
    });
  const free: Holding = { release: () => {}, lost: new Promise(() => {}) };
  return {
    take: (name) => ask(name, { ifAvailable: true }),
    seize: async (name) => (await ask(name, { steal: true })) ?? free,
    wait: (name, signal) => ask(name, { signal }),
    held: async () => {
      const { held = [] } = await manager.query();
      return held.flatMap(({ name = '' }) => (name.startsWith(prefix) ? [name.slice(prefix.length)] : []));
    },
  };
}

interface LeaseOptions {
  readonly storage: () => Storage;
  readonly tab: string;
  readonly now?: () => number;
  /** How often a lease is renewed and, by those who wait, looked at, ms. */
  readonly beat?: number;
  /** A lease not renewed for so long is free, ms: more than the minute for which browsers still hidden tabs. */
  readonly stale?: number;
}

interface Lease {
  readonly tab: string;
  readonly at: number;
}

/**
 * Leases that are renewed for as long as a tab lives. Two tabs that ask in the same moment both write, and the one
 * whose name stands after a little while has it. Where nothing can be stored, every tab has what it asks for.
 */
export function leases({ storage, tab, now = Date.now, beat = 1000, stale = 70_000 }: LeaseOptions): Locks {
  const rest = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));
  const read = (name: string): Lease | null => {
    try {
      const lease = JSON.parse(storage().getItem(prefix + name) ?? 'null') as Partial<Lease> | null;
      if (typeof lease?.tab !== 'string' || typeof lease.at !== 'number') return null;
      return now() - lease.at < stale ? { tab: lease.tab, at: lease.at } : null;
    } catch {
      return null;
    }
  };
  const write = (name: string): boolean => {
    try {
      storage().setItem(prefix + name, JSON.stringify({ tab, at: now() }));
      return true;
    } catch {
      return false;
    }
  };

  const hold = (name: string): Holding => {
    let lose = () => {};
    const lost = new Promise<void>((done) => {
      lose = done;
    });
    const end = () => {
      clearInterval(timer);
      if (typeof window !== 'undefined') window.removeEventListener('pagehide', release);
    };
    const release = () => {
      end();
      if (read(name)?.tab !== tab) return;
      storage().removeItem(prefix + name);
    };
    const timer = setInterval(() => {
      const other = read(name);
      if (other === null || other.tab === tab) return void write(name);
      end();
      lose();
    }, beat);
    if (typeof window !== 'undefined') window.addEventListener('pagehide', release);
    return { release, lost };
  };

  const locks: Locks = {
    async take(name) {
      const other = read(name);
      if (other && other.tab !== tab) return null;
      if (!write(name)) return hold(name);
      await rest(beat / 10);
      return read(name)?.tab === tab ? hold(name) : null;
    },
    async seize(name) {
      write(name);
      return hold(name);
    },
    async wait(name, signal) {
      while (!signal.aborted) {
        const got = await locks.take(name);
        if (got) return got;
        await rest(beat);
      }
      return null;
    },
    async held() {
      try {
        const kept = storage();
        const keys = Array.from({ length: kept.length }, (_, i) => kept.key(i) ?? '');
        const names = keys.filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));
        return names.filter((name) => read(name) !== null);
      } catch {
        return [];
      }
    },
  };
  return locks;
}
