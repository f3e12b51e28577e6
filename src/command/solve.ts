import type { Job } from '../graph/document.ts';
import type { SchemeSolution } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';

/** A job with every scheme solved. */
export interface SolvedJob {
  readonly job: Job;
  readonly schemes: readonly { readonly name: string; readonly solution: SchemeSolution }[];
}

/** Solves every scheme of a job, in the job's order. */
export function solveJob(job: Job): SolvedJob {
  return { job, schemes: job.schemes.map(({ id, name }) => ({ name, solution: solveScheme(job, id) })) };
}

/** What the numbers are not; printed with them wherever they go. */
export const cautions: readonly string[] = [
  'An estimate for planning. Local codes, the appliance and fan instructions and a licensed practitioner decide.',
  'Exhausted air must come back in: check make-up air and the draught of every appliance with a flue (carbon monoxide).',
  'Kitchen exhaust carries grease: use duct that the code allows for it. Commercial cooking is outside this program.',
];
