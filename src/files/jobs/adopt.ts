import { deleteDB, openDB } from 'idb';
import type { Library } from './library.ts';

/** Before there were several jobs in a browser, each tab kept one work under its own name. */
interface OldWork {
  readonly text: string;
  readonly savedAt: number;
}

const database = 'gentlebend';
const prefix = 'gentlebend.work.';

/** Makes jobs of what earlier versions of the program have kept, and then removes it. What cannot be read is left. */
export async function adoptOldWorks(library: Library): Promise<void> {
  const found = new Map<string, OldWork>();
  const see = (tab: string, value: Partial<OldWork> | null | undefined) => {
    if (typeof value?.text !== 'string' || typeof value.savedAt !== 'number') return;
    const other = found.get(tab);
    if (!other || value.savedAt >= other.savedAt)
      found.set(tab, { text: value.text, savedAt: value.savedAt });
  };
  const databases = (await indexedDB.databases?.()) ?? [];
  const known = databases.some(({ name }) => name === database);
  if (known) {
    const db = await openDB(database);
    if (db.objectStoreNames.contains('work'))
      for (const key of await db.getAllKeys('work')) see(String(key), await db.get('work', key));
    db.close();
  }
  const keys = Object.keys(localStorage).filter((key) => key.startsWith(prefix));
  for (const key of keys) see(key.slice(prefix.length), parsed(localStorage.getItem(key)));

  let all = true;
  for (const [tab, { text, savedAt }] of found)
    all = (await library.add(text, { id: `job-of-${tab}`, changedAt: savedAt })) !== null && all;
  if (!all) return;
  for (const key of keys) localStorage.removeItem(key);
  // A tab of the earlier version may still be open; it ends this when it is closed.
  if (known) void deleteDB(database).catch(() => {});
}

function parsed(text: string | null): Partial<OldWork> | null {
  try {
    return JSON.parse(text ?? 'null') as Partial<OldWork> | null;
  } catch {
    return null;
  }
}
