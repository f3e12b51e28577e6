import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import * as z from 'zod';
import { words } from '../../words/index.ts';
import type { Shelf } from './shelf.ts';

const time = z.number().int().min(0);

const manifest = z.object({
  format: z.literal('gentlebend-archive'),
  version: z.literal(1),
  exportedAt: time,
  jobs: z.array(z.object({ id: z.string().min(1), path: z.string(), createdAt: time, changedAt: time })),
  versions: z.array(
    z.object({
      id: z.string().min(1),
      path: z.string(),
      job: z.string(),
      at: time,
      reason: z.enum(['named', 'opened', 'working', 'saved', 'before', 'elsewhere']),
      name: z.string(),
    }),
  ),
  templates: z.array(
    z.object({ id: z.string().min(1), path: z.string(), createdAt: time, withRoute: z.boolean() }),
  ),
  settings: z.record(z.string(), z.string()),
});

type Manifest = z.infer<typeof manifest>;
type WithText<T> = Omit<T, 'path'> & { readonly text: string };

/** All that one browser keeps, as it goes into a file and comes out of it. */
export interface Everything {
  readonly exportedAt: number;
  readonly jobs: readonly WithText<Manifest['jobs'][number]>[];
  readonly versions: readonly WithText<Manifest['versions'][number]>[];
  readonly templates: readonly WithText<Manifest['templates'][number]>[];
  readonly settings: Readonly<Record<string, string>>;
}

/** Everything on a shelf but what is deleted. */
export async function gathered(
  shelf: Shelf,
  settings: Readonly<Record<string, string>>,
  exportedAt: number,
): Promise<Everything> {
  const jobs = (await shelf.all('jobs')).filter(({ deletedAt }) => deletedAt === null);
  const versions = (await shelf.all('versions')).filter(({ job }) => jobs.some(({ id }) => id === job));
  const templates = await shelf.all('templates');
  const texts = async <T extends { readonly id: string }>(
    cards: readonly T[],
    room: 'jobTexts' | 'versionTexts' | 'templateTexts',
  ) => {
    const found: (T & { readonly text: string })[] = [];
    for (const card of cards) {
      const kept = await shelf.get(room, card.id);
      if (kept) found.push({ ...card, text: kept.text });
    }
    return found;
  };
  return {
    exportedAt,
    jobs: (await texts(jobs, 'jobTexts')).map(({ id, createdAt, changedAt, text }) => ({
      id,
      createdAt,
      changedAt,
      text,
    })),
    versions: (await texts(versions, 'versionTexts')).map(({ id, job, at, reason, name, text }) => ({
      id,
      job,
      at,
      reason,
      name,
      text,
    })),
    templates: (await texts(templates, 'templateTexts')).map(({ id, createdAt, withRoute, text }) => ({
      id,
      createdAt,
      withRoute,
      text,
    })),
    settings,
  };
}

/**
 * Everything as one zip file: each job, version and template is a job file of its own in it, which can be taken out
 * and opened alone, beside a `manifest.json` that says what is what.
 */
export function packed(all: Everything): Uint8Array {
  const files: Zippable = {};
  const laid = <T extends { readonly text: string }>(list: readonly T[], folder: string) =>
    list.map(({ text, ...rest }, i) => {
      const path = `${folder}/${String(i + 1).padStart(4, '0')}.gentlebend.json`;
      files[path] = strToU8(text);
      return { ...rest, path };
    });
  const content = {
    format: 'gentlebend-archive',
    version: 1,
    exportedAt: all.exportedAt,
    jobs: laid(all.jobs, 'jobs'),
    versions: laid(all.versions, 'versions'),
    templates: laid(all.templates, 'templates'),
    settings: all.settings,
  };
  files['manifest.json'] = strToU8(`${JSON.stringify(content, null, 2)}\n`);
  return zipSync(files, { level: 6 });
}

export type Unpacked =
  | { readonly ok: true; readonly all: Everything; readonly missing: readonly string[] }
  /** Why it was refused, as a sentence. */
  | { readonly ok: false; readonly message: string };

/** What an archive may hold when it is unpacked, bytes: more is no archive of this program. */
const largest = 1e9;

/** Reads a file that `packed` wrote. What the manifest names and the file lacks is `missing`, and left out. */
export function unpacked(bytes: Uint8Array): Unpacked {
  const { notZip, notArchive, tooLarge, newer } = words.jobs.archive;
  let files: Record<string, Uint8Array>;
  let size = 0;
  try {
    files = unzipSync(bytes, {
      filter: ({ originalSize }) => {
        size += originalSize;
        return size <= largest;
      },
    });
  } catch {
    return { ok: false, message: notZip };
  }
  if (size > largest) return { ok: false, message: tooLarge };
  const text = (path: string) => (Object.hasOwn(files, path) ? strFromU8(files[path] as Uint8Array) : null);
  let raw: unknown;
  try {
    raw = JSON.parse(text('manifest.json') ?? 'null');
  } catch {
    return { ok: false, message: notArchive };
  }
  const version = (raw as { version?: unknown } | null)?.version;
  if (typeof version === 'number' && version > 1) return { ok: false, message: newer };
  const parsed = manifest.safeParse(raw);
  if (!parsed.success) return { ok: false, message: notArchive };
  const missing: string[] = [];
  const filled = <T extends { readonly path: string }>(list: readonly T[]) =>
    list.flatMap(({ path, ...rest }) => {
      const found = text(path);
      if (found === null) missing.push(path);
      return found === null ? [] : [{ ...rest, text: found }];
    });
  const { exportedAt, jobs, versions, templates, settings } = parsed.data;
  return {
    ok: true,
    all: {
      exportedAt,
      jobs: filled(jobs),
      versions: filled(versions),
      templates: filled(templates),
      settings,
    },
    missing,
  };
}
