import { readSettings, writeSettings } from '../../files/jobs/settings.ts';
import type { Shelf } from '../../files/jobs/shelf.ts';
import { formatDay, plainStyle } from '../../units/index.ts';
import { words } from '../../words/index.ts';
import type { Notice } from '../ui.ts';

const says = words.jobs.archive;
const storage = () => localStorage;

/** A file as it was chosen or dropped. */
export type ArchiveFile = Pick<File, 'name' | 'arrayBuffer'>;

/** Everything on the shelf as one zip file, with the name that it is to have and how many jobs are in it. */
export async function packedShelf(shelf: Shelf, at: Date) {
  const { gathered, packed } = await import('../../files/jobs/archive.ts');
  const all = await gathered(shelf, readSettings(storage), at.getTime());
  return { bytes: packed(all), name: says.fileName(formatDay(at, plainStyle)), jobs: all.jobs.length };
}

/** Takes an archive onto the shelf, beside what is there, and says what became of each thing in it. */
export async function mergeFile(shelf: Shelf, file: ArchiveFile): Promise<Notice> {
  const [{ unpacked }, { merge }] = await Promise.all([
    import('../../files/jobs/archive.ts'),
    import('../../files/jobs/merge.ts'),
  ]);
  const read = unpacked(new Uint8Array(await file.arrayBuffer()));
  if (!read.ok)
    return {
      title: says.refused(file.name),
      text: `${read.message} ${says.nothingChanged}`,
      details: [],
    };
  const merged = await merge(shelf, read.all, readSettings(storage), words.jobs.imported);
  writeSettings(storage, merged.settings);
  const { added, same, both, versions, templates, settings, refused } = merged;
  const counts: readonly (readonly [number, (n: number) => string])[] = [
    [added.length, says.added],
    [both.length, says.both],
    [same.length, says.same],
    [versions, says.versions],
    [templates, says.templates],
    [Object.keys(settings).length, says.settings],
  ];
  const lines = counts.flatMap(([n, line]) => (n > 0 ? [line(n)] : []));
  const nothing = added.length + both.length + versions + templates === 0 && refused.length === 0;
  return {
    title: says.done(file.name),
    text: nothing ? says.nothingNew : says.kept,
    details: [
      ...lines.map((message) => ({ path: '', message })),
      ...read.missing.map((path) => ({ path: '', message: says.missing(path) })),
      ...refused.flatMap(({ name, problems }) => problems.map((message) => ({ path: name, message }))),
    ],
  };
}
