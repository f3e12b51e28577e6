import { type DBSchema, openDB } from 'idb';
import type { JobStore, Saved } from './autosave.ts';

interface WorkDatabase extends DBSchema {
  work: { key: string; value: Saved };
}

const databaseName = 'gentlebend';
const key = 'current';
const lastMomentKey = 'gentlebend.current';

/**
 * The work in this browser: in IndexedDB, which takes files of any size, and, for the last moment of a
 * page, in local storage, which is written before the page is gone. The newer of the two is loaded.
 */
export function browserStore(): JobStore {
  const database = openDB<WorkDatabase>(databaseName, 1, {
    upgrade: (db) => {
      db.createObjectStore('work');
    },
  });
  database.catch(() => {});

  return {
    async load() {
      const kept = (await (await database).get('work', key)) ?? null;
      const lastMoment = readLastMoment();
      if (lastMoment === null) return kept;
      return kept === null || lastMoment.savedAt >= kept.savedAt ? lastMoment : kept;
    },
    async save(saved) {
      await (await database).put('work', saved, key);
      const lastMoment = readLastMoment();
      if (lastMoment !== null && lastMoment.savedAt <= saved.savedAt) localStorage.removeItem(lastMomentKey);
    },
    saveNow(saved) {
      try {
        localStorage.setItem(lastMomentKey, JSON.stringify(saved));
        return true;
      } catch {
        return false;
      }
    },
  };
}

function readLastMoment(): Saved | null {
  try {
    const value = JSON.parse(localStorage.getItem(lastMomentKey) ?? 'null') as Partial<Saved> | null;
    if (typeof value?.text !== 'string' || typeof value.savedAt !== 'number') return null;
    return { text: value.text, savedAt: value.savedAt, fileName: value.fileName ?? null };
  } catch {
    return null;
  }
}
