import { words } from '../../words/index.ts';
import type { Notice } from '../ui.ts';

/** What went wrong, in the browser's own words. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Says that something could not be written to what this browser keeps, and what can be done. */
export function notKept(error: unknown): Notice {
  const full = error instanceof DOMException && error.name === 'QuotaExceededError';
  const { writeFailed, writeFailedFull } = words.jobs.room;
  return { title: writeFailed, text: full ? writeFailedFull : messageOf(error), details: [] };
}
