import type { JobCard, TemplateCard, VersionCard } from './cards.ts';

/** A text under the id of the job, version or template that it is of. */
export interface KeptText {
  readonly id: string;
  readonly text: string;
}

/** What lies on the shelf, room by room. Cards are what lists are made of; the texts are fetched one by one. */
export interface Stored {
  readonly jobs: JobCard;
  readonly jobTexts: KeptText;
  readonly versions: VersionCard;
  readonly versionTexts: KeptText;
  readonly templates: TemplateCard;
  readonly templateTexts: KeptText;
}

export type Room = keyof Stored;

export const rooms = [
  'jobs',
  'jobTexts',
  'versions',
  'versionTexts',
  'templates',
  'templateTexts',
] as const satisfies readonly Room[];

/** One thing put in a room, over what has its id there, or taken out of it. */
export type Change = {
  [R in Room]: { readonly room: R; readonly put: Stored[R] } | { readonly room: R; readonly drop: string };
}[Room];

/** Where jobs are kept: as little of a database as the library needs of one. */
export interface Shelf {
  /** False where nothing outlives the page. */
  readonly lasting: boolean;
  get<R extends Room>(room: R, id: string): Promise<Stored[R] | undefined>;
  all<R extends Room>(room: R): Promise<Stored[R][]>;
  /** Makes all of the changes or, where it rejects, none. */
  write(changes: readonly Change[]): Promise<void>;
}

/** A shelf in memory, for tests and for browsers that keep nothing. */
export function memoryShelf(): Shelf {
  const kept: { [R in Room]: Map<string, Stored[R]> } = {
    jobs: new Map(),
    jobTexts: new Map(),
    versions: new Map(),
    versionTexts: new Map(),
    templates: new Map(),
    templateTexts: new Map(),
  };
  return {
    lasting: false,
    get: async (room, id) => kept[room].get(id),
    all: async (room) => [...kept[room].values()],
    write: async (changes) => {
      for (const change of changes) {
        const room = kept[change.room] as Map<string, Stored[Room]>;
        if ('put' in change) room.set(change.put.id, change.put);
        else room.delete(change.drop);
      }
    },
  };
}
