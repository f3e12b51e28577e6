import exampleText from '../../fixtures/example.gentlebend.json?raw';
import { freshId } from '../files/jobs/cards.ts';
import type { Library } from '../files/jobs/library.ts';
import { readJob } from '../files/read.ts';
import type { Job } from '../graph/document.ts';
import { emptyJob } from '../graph/templates.ts';
import { words } from '../words/index.ts';
import type { Arriving } from './jobs/keeper.ts';
import { refusal, repaired } from './notices.ts';
import type { Notice } from './ui.ts';

export interface Start extends Arriving {
  readonly notice?: Notice;
}

/**
 * The job that the page opens with: `?new`, `?example`, the one that this tab had, the one of this browser that
 * was changed last, or the example.
 */
export async function firstJob(search: string, library: Library, had: string | null): Promise<Start> {
  const wish = new URLSearchParams(search);
  if (wish.has('new')) return beginning(newJob());
  if (wish.has('example')) return beginning(exampleJob());
  const cards = await library.cards().catch(() => []);
  const there = cards.filter(({ deletedAt }) => deletedAt === null);
  const card = there.find(({ id }) => id === had) ?? there.find(({ fresh }) => !fresh);
  const kept = card ? await library.open(card.id).catch(() => null) : null;
  if (!kept) return beginning(exampleJob());
  const { file, digest, fresh, id, title, changedAt } = kept.card;
  const read = readJob(kept.text);
  const what = file?.name ?? (title === '' ? words.notices.kept.what : title);
  if (!read.ok) return { ...beginning(exampleJob()), notice: refusal(what, read.problems) };
  return {
    id,
    job: read.job,
    file,
    fresh,
    unsaved: !fresh && file?.holds !== digest,
    keptAt: changedAt,
    asKept: true,
    ...(read.repairs.length > 0 ? { notice: repaired(what, read.repairs) } : {}),
  };
}

/** A job that nobody has changed and that is kept nowhere yet. */
export function beginning(job: Job): Arriving {
  return { id: freshId('job'), job, file: null, fresh: true, unsaved: false, keptAt: null, asKept: false };
}

/** An empty job in the units that the browser's language suggests. */
export function newJob(): Job {
  const imperial = /^en-(US|CA|LR)|^my/.test(navigator.language);
  return emptyJob(imperial ? 'imperial' : 'metric');
}

/** The invented kitchen that comes with the program. */
export function exampleJob(): Job {
  const read = readJob(exampleText);
  if (!read.ok) throw new Error('the example job can be read');
  return read.job;
}
