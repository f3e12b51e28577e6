import type { Job } from '../../graph/document.ts';
import { schemeOf } from '../../graph/infer.ts';
import { fingerprintOf } from './fingerprint.ts';
import type { JobSheet } from './types.ts';

export interface SheetOptions {
  /** When it is made. */
  readonly date: Date;
  /** Of the date and of numbers that depend on it: `en-GB`; the machine's own where absent. */
  readonly locale?: string;
}

/**
 * What the job sheet of a scheme says, from a fresh solve of it, in the job's units.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export async function jobSheetOf(job: Job, schemeId: string, options: SheetOptions): Promise<JobSheet> {
  const scheme = schemeOf(job, schemeId);
  const fingerprint = await fingerprintOf(job);
  const date = new Intl.DateTimeFormat(options.locale, { dateStyle: 'long' }).format(options.date);
  return {
    title: {
      heading: 'Job sheet',
      job: job.title,
      schemeId,
      scheme: scheme.name,
      units: job.units,
      date,
      made: options.date.toISOString(),
      program: 'Gentlebend',
      version: '0.1.0',
      fingerprint,
      facts: [],
      footer: '',
    },
    sections: [],
  };
}
