import { adoptOldWorks } from './adopt.ts';
import { freshId } from './cards.ts';
import { browserChannel, type Channel } from './channel.ts';
import { browserShelf } from './idb-shelf.ts';
import { lastMomentIn } from './last-moment.ts';
import { createLibrary, type Library } from './library.ts';
import { browserLocks, type Locks } from './locks.ts';
import { browserRoom, type StorageRoom } from './room.ts';
import type { Shelf } from './shelf.ts';
import { createTemplates, type Templates } from './templates.ts';
import { createVersions, type Versions } from './versions.ts';

/** All that this browser keeps, and what its tabs share. */
export interface Keeping {
  readonly tab: string;
  readonly shelf: Shelf;
  readonly library: Library;
  readonly versions: Versions;
  readonly templates: Templates;
  readonly locks: Locks;
  readonly channel: Channel;
  readonly room: StorageRoom;
}

/** Opens what this browser keeps. Where it keeps nothing, all of it works for as long as the page is open. */
export async function browserKeeping(): Promise<Keeping> {
  const tab = freshId('tab');
  const shelf = await browserShelf();
  const channel = browserChannel();
  const last = lastMomentIn(() => localStorage);
  const library = createLibrary({ shelf, last, tab });
  if (shelf.lasting) await adoptOldWorks(library).catch(() => {});
  return {
    tab,
    shelf,
    library,
    versions: createVersions(shelf),
    templates: createTemplates(shelf),
    locks: browserLocks(tab),
    channel,
    room: browserRoom(),
  };
}

const key = 'gentlebend.tab';

/** The job that this tab had before it was loaded again; another tab has its own. */
export const tabMemory = {
  read: (): string | null => {
    try {
      return sessionStorage.getItem(key);
    } catch {
      return null;
    }
  },
  write: (job: string): void => {
    try {
      sessionStorage.setItem(key, job);
    } catch {
      // Then a reload brings back the job that was changed last.
    }
  },
};
