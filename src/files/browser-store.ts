import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { JobStore, Saved } from './autosave.ts';

interface WorkDatabase extends DBSchema {
  /** By the tab that the work was done in. */
  work: { key: string; value: Saved };
}

const databaseName = 'gentlebend';
const tabKey = 'gentlebend.tab';
const lastMomentPrefix = 'gentlebend.work.';

/** Works kept at most, the newest: enough for the tabs that one has open. */
const keptWorks = 8;

/**
 * The work in this browser: in IndexedDB, which takes files of any size, and, for the last moment of a
 * page, in local storage, which is written before the page is gone. Each tab keeps its own and loads
 * its own again; a new tab loads the newest there is.
 */
export function browserStore(): JobStore {
  const tab = thisTab();
  const database = openDB<WorkDatabase>(databaseName, 1, {
    upgrade: (db) => {
      db.createObjectStore('work');
    },
  });
  database.catch(() => {});

  return {
    async load() {
      const works = await allWorks(await database);
      const own = works.find((work) => work.tab === tab);
      return (own ?? works[0])?.saved ?? null;
    },
    async save(saved) {
      const db = await database;
      await db.put('work', saved, tab);
      const last = lastMoment(lastMomentPrefix + tab);
      if (last !== null && last.savedAt <= saved.savedAt) localStorage.removeItem(lastMomentPrefix + tab);
      for (const { tab: old } of (await allWorks(db)).slice(keptWorks)) {
        localStorage.removeItem(lastMomentPrefix + old);
        await db.delete('work', old);
      }
    },
    saveNow(saved) {
      try {
        localStorage.setItem(lastMomentPrefix + tab, JSON.stringify(saved));
        return true;
      } catch {
        return false;
      }
    },
  };
}

/** A name for this tab that it keeps when it is loaded again, where the browser keeps anything. */
function thisTab(): string {
  const fresh = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
  try {
    const tab = sessionStorage.getItem(tabKey) ?? fresh;
    sessionStorage.setItem(tabKey, tab);
    return tab;
  } catch {
    return fresh;
  }
}

interface Work {
  readonly tab: string;
  readonly saved: Saved;
}

/** The newest work of every tab, the newest tab first. */
async function allWorks(db: IDBPDatabase<WorkDatabase>): Promise<Work[]> {
  const newest = new Map<string, Saved>();
  const see = ({ tab, saved }: Work) => {
    const other = newest.get(tab);
    if (other === undefined || saved.savedAt >= other.savedAt) newest.set(tab, saved);
  };
  for (const tab of await db.getAllKeys('work')) {
    const saved = await db.get('work', tab);
    if (saved !== undefined) see({ tab, saved });
  }
  for (const key of Object.keys(localStorage)) {
    const saved = key.startsWith(lastMomentPrefix) ? lastMoment(key) : null;
    if (saved !== null) see({ tab: key.slice(lastMomentPrefix.length), saved });
  }
  return [...newest]
    .map(([tab, saved]) => ({ tab, saved }))
    .sort((a, b) => b.saved.savedAt - a.saved.savedAt);
}

function lastMoment(key: string): Saved | null {
  try {
    const value = JSON.parse(localStorage.getItem(key) ?? 'null') as Partial<Saved> | null;
    if (typeof value?.text !== 'string' || typeof value.savedAt !== 'number') return null;
    return { text: value.text, savedAt: value.savedAt, fileName: value.fileName ?? null };
  } catch {
    return null;
  }
}
