import type { Job } from '../../graph/document.ts';
import { solveScheme } from '../../graph/solve.ts';
import { words } from '../../words/index.ts';
import { figuresOf, type SchemeFigures } from './figures.ts';
import { type Recommendation, recommend } from './recommend.ts';
import { type Row, rowsOf } from './rows.ts';
import type { SchemeGoal } from './standing.ts';

export interface Comparison {
  readonly schemes: readonly SchemeFigures[];
  readonly rows: readonly Row[];
  readonly recommendation: Recommendation;
  /** Name of the judged speed. */
  readonly speed: string;
  /** Airflow that the cooktop asks for, m3/s. */
  readonly need: number;
}

/**
 * Two to four schemes of a job side by side.
 *
 * @param ids scheme ids, in the order of their columns
 * @param options.speed index into each solution's speeds at which they are judged; the last they have where they have fewer
 * @throws RangeError with fewer than two or more than four ids, or one that the job does not have
 */
export function compareSchemes(
  job: Job,
  ids: readonly string[],
  options: { readonly speed: number; readonly goal?: SchemeGoal },
): Comparison {
  if (ids.length < 2 || ids.length > 4) throw new RangeError('Two to four schemes are compared.');
  const solutions = ids.map((id) => solveScheme(job, id));
  const speedOf = (count: number) => Math.min(options.speed, Math.max(0, count - 1));
  const schemes = solutions.map((solution) => figuresOf(job, solution, speedOf(solution.speeds.length)));
  const names = solutions.map(({ speeds }) => speeds[speedOf(speeds.length)]?.name ?? '');
  const speed = [...new Set(names)].join(words.compare.or);
  return {
    schemes,
    rows: rowsOf(schemes, job.units),
    recommendation: recommend(schemes, options.goal ?? 'air', speed, job.units),
    speed,
    need: schemes[0]?.need ?? 0,
  };
}
