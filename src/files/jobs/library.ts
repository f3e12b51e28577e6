import type { Job } from '../../graph/document.ts';
import { readJob } from '../read.ts';
import { writeJob } from '../write.ts';
import { digestOf, freshId, type JobCard, type LinkedFile, type Portrait, portrayed } from './cards.ts';
import type { LastMoment, LastWords } from './last-moment.ts';
import { picturesIn, referredTo, withoutPictures, withPictures } from './pictures.ts';
import type { Change, Shelf } from './shelf.ts';
import { createVersions } from './versions.ts';

/** A job on its way to the shelf. */
export interface Work {
  readonly id: string;
  readonly job: Job;
  readonly file: LinkedFile | null;
  readonly fresh: boolean;
  /** When it was changed last, milliseconds since 1970. */
  readonly at: number;
  /** When the state that was worked on was read or written here; another tab's newer one is not written over. */
  readonly since: number;
  /** Pictures of underlays that lie on the shelf with it already. */
  readonly shelved?: ReadonlySet<string>;
  /** What its card shows, where that is at hand. */
  readonly portrait?: Portrait;
}

/** A job taken from the shelf: what its text is, whether or not it can still be read. */
export interface Kept {
  readonly card: JobCard;
  readonly text: string;
}

/** Another tab has written the job meanwhile. */
export class Overtaken extends Error {}

/** The jobs that this browser keeps. What is deleted can be brought back until it is thrown away. */
export interface Library {
  /** Newest change first; deleted ones among them. */
  cards(): Promise<JobCard[]>;
  open(id: string): Promise<Kept | null>;
  /** Rejects with `Overtaken` where another tab has written what this one does not know. */
  keep(work: Work): Promise<JobCard>;
  /**
   * Keeps it before returning, for a page that is being closed: small, since pictures that lie on the shelf are only
   * referred to. False where that is not possible, or only without a picture that lies nowhere yet.
   */
  keepNow(work: Work): boolean;
  /** Drops what this tab has kept of a job for the last moment: it is kept elsewhere. */
  forget(id: string): void;
  /** Puts a text as it is; what it says is read for its card. Null where it is no job. */
  add(text: string, more?: Partial<Pick<JobCard, 'id' | 'file' | 'changedAt'>>): Promise<JobCard | null>;
  rename(id: string, title: string): Promise<void>;
  duplicate(id: string, title: string): Promise<JobCard | null>;
  remove(id: string): Promise<void>;
  bringBack(id: string): Promise<void>;
  /** For good, with its versions. */
  throwAway(ids: readonly string[]): Promise<void>;
}

export interface LibraryOptions {
  readonly shelf: Shelf;
  readonly last: LastMoment;
  readonly tab: string;
  readonly now?: () => number;
}

/** What was deleted so long ago, ms, is thrown away: a month. */
const deletedFor = 30 * 24 * 3600_000;
/** A job that nobody has changed goes after a day. */
const freshFor = 24 * 3600_000;

export function createLibrary({ shelf, last, tab, now = Date.now }: LibraryOptions): Library {
  const versions = createVersions(shelf);

  const store = async (card: JobCard, text: string | null): Promise<void> => {
    const changes: Change[] = [{ room: 'jobs', put: card }];
    if (text !== null) changes.push({ room: 'jobTexts', put: { id: card.id, text } });
    await shelf.write(changes);
  };

  /** What the last moments of pages have left of a job, with the pictures that it refers to; oldest first. */
  const leftOf = async (id: string): Promise<Left[]> => {
    const left = last.of(id).flatMap((said): Left[] => {
      const read = readJob(said.text);
      return read.ok ? [{ ...said, job: read.job }] : [];
    });
    const wanted = [...new Set(left.flatMap(({ job }) => referredTo(job)))];
    if (wanted.length === 0) return left;
    const found = new Map(left.flatMap(({ job }) => [...picturesIn(job)]));
    const missing = () => wanted.some((digest) => !found.has(digest));
    const look = (text = '') => {
      const read = readJob(text);
      if (read.ok) for (const [digest, image] of picturesIn(read.job)) found.set(digest, image);
    };
    look((await shelf.get('jobTexts', id))?.text);
    const older = missing() ? await versions.of(id) : [];
    for (const version of older) {
      if (!missing()) break;
      look((await versions.text(version.id)) ?? '');
    }
    return left.map((said) => {
      const job = withPictures(said.job, found);
      return job === said.job ? said : { ...said, job, text: writeJob(job) };
    });
  };

  /**
   * Takes over what the last moments of pages have left. Where another tab has written the job since, it becomes a
   * version and not the job.
   */
  const takeOver = async (id: string): Promise<void> => {
    for (const { text, job, at, by, since } of await leftOf(id)) {
      const card = await shelf.get('jobs', id);
      if (follows({ by, since }, card)) {
        if (at > (card?.changedAt ?? 0))
          await store(cardOf(text, job, { id, card, at, fresh: false, by }), text);
      } else if (digestOf(text) !== card?.digest) {
        await versions.note(job, { job: id, reason: 'elsewhere', at });
      }
      const now = last.of(id).find((words) => words.by === by);
      if (shelf.lasting && now && now.at <= at) last.drop(id, by);
    }
  };

  const change = async (id: string, recipe: (card: JobCard) => JobCard): Promise<void> => {
    const card = await shelf.get('jobs', id);
    if (card) await store(recipe(card), null);
  };

  const library: Library = {
    async cards() {
      for (const id of last.jobs()) await takeOver(id).catch(() => {});
      const cards = await shelf.all('jobs');
      const gone = cards.filter(
        ({ deletedAt, fresh, changedAt }) =>
          (deletedAt !== null && now() - deletedAt > deletedFor) || (fresh && now() - changedAt > freshFor),
      );
      if (gone.length > 0) await library.throwAway(gone.map(({ id }) => id));
      return cards.filter((card) => !gone.includes(card)).sort((a, b) => b.changedAt - a.changedAt);
    },

    async open(id) {
      // A shelf that takes nothing more must not keep the last moment from being read.
      const failed = await takeOver(id).then(
        () => false,
        () => true,
      );
      const [card, kept] = await Promise.all([shelf.get('jobs', id), shelf.get('jobTexts', id)]);
      const left = failed ? (await leftOf(id)).findLast((one) => follows(one, card)) : undefined;
      if (left && left.at > (card?.changedAt ?? 0)) {
        const { text, job, at, by } = left;
        return { card: cardOf(text, job, { id, card, at, fresh: false, by }), text };
      }
      return card && kept ? { card, text: kept.text } : null;
    },

    async keep({ id, job, file, fresh, at, since, portrait }) {
      const text = writeJob(job);
      const before = await shelf.get('jobs', id);
      const card = { ...cardOf(text, job, { id, card: before, at, fresh, by: tab, portrait }), file };
      if (before && before.by !== tab && before.changedAt > since && before.digest !== card.digest)
        throw new Overtaken();
      await store(card, text);
      const words = last.of(id).find(({ by }) => by === tab);
      if (shelf.lasting && words && words.at <= at) last.drop(id, tab);
      return card;
    },

    keepNow({ id, job, at, since, shelved }) {
      const put = (lies: (image: string) => boolean) =>
        last.put(id, { text: writeJob(withoutPictures(job, lies)), at, by: tab, since });
      if (put((image) => shelf.lasting && (shelved?.has(image) ?? false))) return true;
      // The work without a new picture is better than no work.
      if (job.underlays.length > 0) put(() => true);
      return false;
    },

    forget: (id) => last.drop(id, tab),

    async add(text, more = {}) {
      const read = readJob(text);
      if (!read.ok) return null;
      const id = more.id ?? freshId('job');
      const at = more.changedAt ?? now();
      const card = {
        ...cardOf(text, read.job, { id, card: undefined, at, fresh: false, by: tab }),
        file: more.file ?? null,
      };
      await store(card, text);
      return card;
    },

    async rename(id, title) {
      const kept = await library.open(id);
      const read = kept && readJob(kept.text);
      if (!kept || !read?.ok) return;
      const text = writeJob({ ...read.job, title });
      await store(
        {
          ...kept.card,
          title,
          digest: digestOf(text),
          size: text.length,
          fresh: false,
          changedAt: now(),
          by: tab,
        },
        text,
      );
    },

    async duplicate(id, title) {
      const kept = await library.open(id);
      const read = kept && readJob(kept.text);
      return read?.ok ? library.add(writeJob({ ...read.job, title })) : null;
    },

    remove: (id) => change(id, (card) => ({ ...card, deletedAt: now() })),
    bringBack: (id) => change(id, (card) => ({ ...card, deletedAt: null })),

    async throwAway(ids) {
      if (ids.length === 0) return;
      const versions = await shelf.all('versions');
      await shelf.write([
        ...ids.flatMap((id): Change[] => [
          { room: 'jobs', drop: id },
          { room: 'jobTexts', drop: id },
        ]),
        ...versions
          .filter(({ job }) => ids.includes(job))
          .flatMap(({ id }): Change[] => [
            { room: 'versions', drop: id },
            { room: 'versionTexts', drop: id },
          ]),
      ]);
      for (const id of ids) for (const { by } of last.of(id)) last.drop(id, by);
    },
  };
  return library;
}

/** A job as the last moment of a page left it. */
interface Left extends LastWords {
  readonly job: Job;
}

/** True where words were made from what lies on the shelf, and no other tab has written since. */
function follows({ by, since }: Pick<LastWords, 'by' | 'since'>, card: JobCard | undefined): boolean {
  return !card || card.by === by || since >= card.changedAt;
}

interface Told {
  readonly id: string;
  /** The card that it takes the place of. */
  readonly card: JobCard | undefined;
  readonly at: number;
  readonly fresh: boolean;
  readonly by: string;
  readonly portrait?: Portrait | undefined;
}

function cardOf(text: string, job: Job, { id, card, at, fresh, by, portrait }: Told): JobCard {
  return {
    ...(portrait ?? portrayed(job)),
    id,
    size: text.length,
    digest: digestOf(text),
    createdAt: card?.createdAt ?? at,
    changedAt: at,
    file: card?.file ?? null,
    fresh,
    deletedAt: null,
    by,
  };
}
