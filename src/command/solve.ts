import { resultsTable, routeTable } from '../files/csv/run.ts';
import type { Job } from '../graph/document.ts';
import type { SchemeSolution } from '../graph/solution.ts';
import { solveScheme } from '../graph/solve.ts';
import { words } from '../words/index.ts';
import { csvOptions, type JobInput, jobCommand, type Options } from './command.ts';
import { solutionJson } from './json.ts';
import { solutionText } from './text.ts';

/** A job with schemes of it solved. */
export interface SolvedJob {
  readonly job: Job;
  readonly schemes: readonly { readonly name: string; readonly solution: SchemeSolution }[];
}

/** Solves the schemes asked for, in the job's order. */
export async function solved({
  job,
  schemes,
  work,
}: Pick<JobInput<Options>, 'job' | 'schemes' | 'work'>): Promise<SolvedJob> {
  const found: { name: string; solution: SchemeSolution }[] = [];
  for (const { id, name } of schemes) {
    await work.step(words.command.doing.solving(name));
    found.push({ name, solution: solveScheme(job, id) });
  }
  return { job, schemes: found };
}

export const solve = jobCommand(
  'solve',
  words.command.solve,
  { losses: { type: 'boolean' }, explain: { type: 'boolean' }, ...csvOptions(['results', 'route']) },
  async (input) => {
    const all = await solved(input);
    const { explain, losses, csv } = input.values;
    const ids = input.schemes.map(({ id }) => id);
    const tables = { results: resultsTable, route: routeTable };
    return {
      ok: true,
      text: solutionText(all, { explain, losses }),
      json: solutionJson(all, explain),
      ...(csv ? { table: tables[csv](input.job, ids) } : {}),
    };
  },
);
