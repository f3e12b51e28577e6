import type { Job } from '../../graph/document.ts';
import { lineOf } from '../problem.ts';
import { readJob } from '../read.ts';
import { writeJob } from '../write.ts';
import type { Everything } from './archive.ts';
import { digestOf, portrayed } from './cards.ts';
import type { Change, Shelf } from './shelf.ts';

/** What became of each thing in an archive. Nothing that was here before is changed. */
export interface Merged {
  /** Titles of jobs that were not here, or deleted. */
  readonly added: readonly string[];
  /** Jobs that were here already, and the same. */
  readonly same: readonly string[];
  /** Jobs that differ from those here: both are kept. */
  readonly both: readonly string[];
  readonly versions: number;
  readonly templates: number;
  /** Settings of the archive that this browser had none for. */
  readonly settings: Readonly<Record<string, string>>;
  /** What could not be read, and why. */
  readonly refused: readonly { readonly name: string; readonly problems: readonly string[] }[];
}

/**
 * Lays an archive beside what is on the shelf, all of it or nothing. A job with the id of one here and another text
 * is put beside it under an id that follows from both, so that the same archive taken in twice adds nothing the
 * second time.
 *
 * @param beside the title of a job that is put beside one of the same origin
 */
export async function merge(
  shelf: Shelf,
  all: Everything,
  settingsHere: Readonly<Record<string, string>>,
  beside: (title: string) => string,
): Promise<Merged> {
  const changes: Change[] = [];
  const refused: { name: string; problems: string[] }[] = [];
  const readable = (text: string, name: string): Job | null => {
    const read = readJob(text);
    if (read.ok) return read.job;
    refused.push({ name, problems: read.problems.map(lineOf) });
    return null;
  };

  /** By id, what is here; a text that stands in a job's place under another id is found by that id. */
  const jobs = new Map(
    (await shelf.all('jobs')).map(({ id, digest, deletedAt }) => [id, deletedAt === null ? digest : null]),
  );
  const [added, same, both]: [string[], string[], string[]] = [[], [], []];
  for (const { id, text, createdAt, changedAt } of all.jobs) {
    const job = readable(text, id);
    if (!job) continue;
    const digest = digestOf(text);
    const apart = besideOf(id, digest);
    const here = jobs.get(id);
    if (here === digest || jobs.get(apart)) {
      same.push(job.title);
      continue;
    }
    const differs = typeof here === 'string';
    const put = differs ? { ...job, title: beside(job.title).slice(0, 300) } : job;
    const body = differs ? writeJob(put) : text;
    const card = {
      ...portrayed(put),
      id: differs ? apart : id,
      size: body.length,
      digest: digestOf(body),
      createdAt,
      changedAt,
      file: null,
      fresh: false,
      deletedAt: null,
      by: '',
    };
    changes.push({ room: 'jobs', put: card }, { room: 'jobTexts', put: { id: card.id, text: body } });
    jobs.set(card.id, card.digest);
    (differs ? both : added).push(job.title);
  }

  const versions = new Set((await shelf.all('versions')).map(({ id }) => id));
  const before = versions.size;
  for (const { text, ...version } of all.versions) {
    const known = versions.has(version.id) || !jobs.has(version.job);
    const job = known ? null : readable(text, version.id);
    if (!job) continue;
    const { summary, sketch } = portrayed(job);
    const put = { ...version, summary, sketch, digest: digestOf(text), size: text.length };
    changes.push({ room: 'versions', put }, { room: 'versionTexts', put: { id: put.id, text } });
    versions.add(put.id);
  }

  const templates = new Map((await shelf.all('templateTexts')).map(({ id, text }) => [id, text]));
  const templatesBefore = templates.size;
  for (const { id, text, createdAt, withRoute } of all.templates) {
    const apart = besideOf(id, digestOf(text));
    const known = templates.get(id) === text || templates.has(apart);
    const job = known ? null : readable(text, id);
    if (!job) continue;
    const put = {
      ...portrayed(job),
      id: templates.has(id) ? apart : id,
      size: text.length,
      createdAt,
      withRoute,
    };
    changes.push({ room: 'templates', put }, { room: 'templateTexts', put: { id: put.id, text } });
    templates.set(put.id, text);
  }

  if (changes.length > 0) await shelf.write(changes);
  return {
    added,
    same,
    both,
    versions: versions.size - before,
    templates: templates.size - templatesBefore,
    settings: Object.fromEntries(
      Object.entries(all.settings).filter(([key]) => !Object.hasOwn(settingsHere, key)),
    ),
    refused,
  };
}

function besideOf(id: string, digest: string): string {
  return `${id}~${digest}`;
}
