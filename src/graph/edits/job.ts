import type { Hood, Job } from '../document.ts';
import { type DraftJob, plainCopy } from './find.ts';

/** Fields of a job that are about the kitchen and the house, not about a route. */
export type JobFields = Pick<Job, 'title' | 'notes' | 'units' | 'air' | 'kitchen' | 'house' | 'prices'>;

/** Replaces fields of the job; those that are not given stay. `house: undefined` takes the house away. */
export function replaceFields(
  job: DraftJob,
  fields: { readonly [F in keyof JobFields]?: JobFields[F] | undefined },
): void {
  const { house, ...others } = fields;
  for (const [field, value] of Object.entries(others))
    if (value !== undefined) Object.assign(job, { [field]: value });
  if (house) job.house = plainCopy(house);
  else if ('house' in fields) delete job.house;
}

/**
 * Puts an airflow in the place of what the rules ask for, m3/s above 0, with a reason; `null` takes it back. `false`,
 * and no change, without a reason or air.
 */
export function setRequiredAirflow(
  job: DraftJob,
  own: NonNullable<Job['kitchen']['requiredAirflow']> | null,
): boolean {
  if (own === null) {
    delete job.kitchen.requiredAirflow;
    return true;
  }
  const reason = own.reason.trim().slice(0, 500);
  if (reason === '' || !(own.flow > 0)) return false;
  job.kitchen.requiredAirflow = { flow: own.flow, reason };
  return true;
}

/** Puts a hood in the place of the one with its id, or adds it. */
export function replaceHood(job: DraftJob, hood: Hood): void {
  const index = job.hoods.findIndex((each) => each.id === hood.id);
  if (index < 0) job.hoods.push(plainCopy(hood));
  else job.hoods[index] = plainCopy(hood);
}
