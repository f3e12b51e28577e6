import type { Job } from '../../graph/document.ts';
import { writeJob } from '../write.ts';
import { digestOf, freshId, portrayed, type VersionCard, type VersionReason } from './cards.ts';
import type { Change, Shelf } from './shelf.ts';
import { type Thinning, thinned, usualThinning } from './thin.ts';

/** What to keep a version of. */
export interface Noted {
  readonly job: string;
  readonly reason: VersionReason;
  /** What it is called, or what it was kept before. */
  readonly name?: string;
  /** When the job was like that, milliseconds since 1970. */
  readonly at: number;
}

/** Earlier states of jobs. */
export interface Versions {
  /** Newest first. */
  of(job: string): Promise<VersionCard[]>;
  text(id: string): Promise<string | null>;
  /**
   * Keeps a job as it is, and thins what was kept before. Where the newest version is the same, nothing is added:
   * one that is named by hand gives it its name.
   */
  note(job: Job, noted: Noted): Promise<VersionCard | null>;
  /** An empty name makes it one that may be thinned out again. */
  rename(id: string, name: string): Promise<void>;
  drop(ids: readonly string[]): Promise<void>;
}

export function createVersions(shelf: Shelf, thinning: Thinning = usualThinning): Versions {
  const of = async (job: string) =>
    (await shelf.all('versions')).filter((version) => version.job === job).sort((a, b) => b.at - a.at);

  return {
    of,
    text: async (id) => (await shelf.get('versionTexts', id))?.text ?? null,

    async note(job, { job: id, reason, name = '', at }) {
      const text = writeJob(job);
      const digest = digestOf(text);
      const before = await of(id);
      const [newest] = before;
      if (newest?.digest === digest) {
        if (reason !== 'named') return null;
        const named: VersionCard = { ...newest, reason, name };
        await shelf.write([{ room: 'versions', put: named }]);
        return named;
      }
      const { summary, sketch } = portrayed(job);
      const card: VersionCard = {
        id: freshId('version'),
        job: id,
        at: newest ? Math.max(at, newest.at + 1) : at,
        reason,
        name,
        digest,
        size: text.length,
        summary,
        sketch,
      };
      const dated = [card, ...before].map((version) => ({ ...version, kept: version.reason === 'named' }));
      await shelf.write([
        { room: 'versions', put: card },
        { room: 'versionTexts', put: { id: card.id, text } },
        ...thinned(dated, card.at, thinning).flatMap(dropped),
      ]);
      return card;
    },

    async rename(id, name) {
      const card = await shelf.get('versions', id);
      if (!card) return;
      const reason = name === '' ? 'working' : 'named';
      await shelf.write([{ room: 'versions', put: { ...card, name, reason } }]);
    },

    drop: (ids) => shelf.write(ids.flatMap(dropped)),
  };
}

function dropped(id: string): Change[] {
  return [
    { room: 'versions', drop: id },
    { room: 'versionTexts', drop: id },
  ];
}
