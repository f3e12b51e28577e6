import type { Job } from '../../graph/document.ts';

/** Legs that may go in one edit without a version being kept before. */
const few = 4;

/** True where an edit takes much away: a whole scheme or hood, or more than a few legs of a scheme at once. */
export function losesMuch(before: Job, after: Job): boolean {
  if (after.schemes.length < before.schemes.length || after.hoods.length < before.hoods.length) return true;
  return before.schemes.some(({ id, segments }) => {
    const now = after.schemes.find((scheme) => scheme.id === id)?.segments;
    if (!now || now === segments) return false;
    const left = new Set(now.map((segment) => segment.id));
    return segments.filter((segment) => !left.has(segment.id)).length > few;
  });
}
