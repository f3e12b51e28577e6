import type { Job } from '../../graph/document.ts';

/**
 * Gives jobs that say the same, but for other schemes and the pictures beneath, as one object, the first of them:
 * the same changes in another order are then solved once.
 */
export function alikeAsOne(schemeId: string): (job: Job) => Job {
  const known = new Map<string, Job>();
  return (job) => {
    const { underlays: _, schemes, ...rest } = job;
    const said = JSON.stringify([rest, schemes.find(({ id }) => id === schemeId)]);
    const first = known.get(said) ?? job;
    known.set(said, first);
    return first;
  };
}
