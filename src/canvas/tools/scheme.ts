import type { Job, Scheme } from '../../graph/document.ts';

/** The scheme of that id; the board only ever names one that is there. */
export function schemeOf(job: Job, schemeId: string): Scheme {
  const scheme = job.schemes.find(({ id }) => id === schemeId);
  if (!scheme) throw new Error(`no scheme "${schemeId}"`);
  return scheme;
}
