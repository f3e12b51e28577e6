import type { Job } from '../../graph/document.ts';
import { readJob } from '../read.ts';
import { writeJob } from '../write.ts';
import { freshId, portrayed, type TemplateCard } from './cards.ts';
import type { Shelf } from './shelf.ts';

/** The jobs that others are begun from. */
export interface Templates {
  /** By name. */
  all(): Promise<TemplateCard[]>;
  /** The job to begin with; null where the template is gone or cannot be read. */
  open(id: string): Promise<Job | null>;
  /** `id` only for one that comes from elsewhere and keeps it. */
  save(job: Job, as: { title: string; withRoute: boolean; id?: string }): Promise<TemplateCard>;
  drop(id: string): Promise<void>;
}

export function createTemplates(shelf: Shelf, now: () => number = Date.now): Templates {
  return {
    all: async () => (await shelf.all('templates')).sort((a, b) => a.title.localeCompare(b.title)),

    async open(id) {
      const kept = await shelf.get('templateTexts', id);
      const read = kept && readJob(kept.text);
      return read?.ok ? read.job : null;
    },

    async save(job, { title, withRoute, id = freshId('template') }) {
      const template = { ...(withRoute ? job : withoutRoute(job)), title };
      const text = writeJob(template);
      const card = { ...portrayed(template), id, size: text.length, createdAt: now(), withRoute };
      await shelf.write([
        { room: 'templates', put: card },
        { room: 'templateTexts', put: { id, text } },
      ]);
      return card;
    },

    drop: (id) =>
      shelf.write([
        { room: 'templates', drop: id },
        { room: 'templateTexts', drop: id },
      ]),
  };
}

/**
 * A job without what belongs to one kitchen alone: its route, room, underlays and notes. What stays is the hoods, the
 * house, the kitchen, the air, prices, rules and units, and how duct is drawn at first.
 */
export function withoutRoute(job: Job): Job {
  const [first] = job.schemes;
  if (!first) return job;
  const { sheetNotes: _, ...rest } = job;
  const { id, name, defaults } = first;
  return {
    ...rest,
    blocks: [],
    exits: [],
    underlays: [],
    schemes: [{ id, name, defaults, nodes: [], segments: [] }],
  };
}
