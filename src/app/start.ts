import exampleText from '../../fixtures/example.gentlebend.json?raw';
import type { JobStore } from '../files/autosave.ts';
import { readJob } from '../files/read.ts';
import type { Job } from '../graph/document.ts';
import { emptyJob } from '../graph/templates.ts';
import { words } from '../words/index.ts';
import { refusal, repaired } from './notices.ts';
import type { Notice } from './ui.ts';

export interface Start {
  readonly job: Job;
  readonly name: string | null;
  readonly unsaved: boolean;
  readonly notice?: Notice;
}

/** The job that the page opens with: `?new`, `?example`, the work kept in this browser, or the example. */
export async function firstJob(search: string, store: JobStore): Promise<Start> {
  const wish = new URLSearchParams(search);
  if (wish.has('new')) return { job: newJob(), name: null, unsaved: false };
  if (wish.has('example')) return { job: exampleJob(), name: null, unsaved: false };
  const kept = await store.load().catch(() => null);
  if (!kept) return { job: exampleJob(), name: null, unsaved: false };
  const read = readJob(kept.text);
  const what = kept.fileName ?? words.notices.kept.what;
  if (!read.ok)
    return { job: exampleJob(), name: null, unsaved: false, notice: refusal(what, read.problems) };
  return {
    job: read.job,
    name: kept.fileName,
    unsaved: true,
    ...(read.repairs.length > 0 ? { notice: repaired(what, read.repairs) } : {}),
  };
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
