import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { memoryShelf, type Room, rooms, type Shelf, type Stored } from './shelf.ts';

type Database = DBSchema & { [R in Room]: { key: string; value: Stored[R] } };

/** Time that a database may take to open before the page goes on without it, ms. */
const patience = 5000;

/**
 * The shelf of this browser, in IndexedDB; in memory where there is none, as in some private windows, or
 * where it does not answer.
 */
export async function browserShelf(): Promise<Shelf> {
  let db: IDBPDatabase<Database>;
  try {
    db = await inTime(connect());
  } catch {
    return memoryShelf();
  }
  return {
    lasting: true,
    get: async (room, id) => (await db.get(room, id)) as Stored[typeof room] | undefined,
    all: async (room) => (await db.getAll(room)) as Stored[typeof room][],
    async write(changes) {
      const transaction = db.transaction(rooms, 'readwrite', { durability: 'strict' });
      const made = changes.map((change) => {
        const store = transaction.objectStore(change.room);
        return 'put' in change ? store.put(change.put) : store.delete(change.drop);
      });
      await Promise.all([...made, transaction.done]);
    },
  };
}

function connect(): Promise<IDBPDatabase<Database>> {
  return openDB<Database>('gentlebend.jobs', 1, {
    upgrade(db) {
      for (const room of rooms) db.createObjectStore(room, { keyPath: 'id' });
    },
    // A newer program in another tab must not wait for this one.
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
  });
}

function inTime<T>(work: Promise<T>): Promise<T> {
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new Error('the database does not answer')), patience);
  });
  return Promise.race([work, late]);
}
