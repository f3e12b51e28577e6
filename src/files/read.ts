import { type Job, job as jobSchema } from '../graph/document.ts';
import { words } from '../words/index.ts';
import { explain } from './explain.ts';
import { faultsOf } from './integrity.ts';
import { parseJson } from './json.ts';
import { currentVersion, migrate } from './migrate.ts';
import type { Problem, Repair } from './problem.ts';
import { repairRaw, unknownKeys } from './repair.ts';

const says = words.fileProblems.read;

export type ReadResult =
  | { readonly ok: true; readonly job: Job; readonly repairs: readonly Repair[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface ReadOptions {
  /** Whether what can safely be mended is mended and told; `true` unless said otherwise. */
  readonly repair?: boolean;
}

/**
 * Reads the text of a job file. It loads, or loads with a list of what was repaired, or is refused with
 * the places of everything that is wrong; never half, and never by an exception. An older version is
 * migrated, a newer one refused. A key that the format does not know is left out and told in any case.
 */
export function readJob(text: string, options: ReadOptions = {}): ReadResult {
  const mend = options.repair ?? true;
  const json = parseJson(text);
  if (!json.ok) {
    const place = says.place(json.line, json.column);
    return refuse([{ path: '', message: says.notAJob(place, json.message) }]);
  }
  const migrated = migrate(json.value);
  if (!migrated.ok) return refuse([migrated.problem]);
  const { raw } = migrated;
  const repairs: Repair[] = [];
  if (migrated.from < currentVersion) {
    repairs.push({ path: 'version', message: says.brought(migrated.from, currentVersion) });
    repairs.push(...migrated.changes.map((message) => ({ path: 'version', message })));
  }

  let parsed = jobSchema.safeParse(raw);
  if (!parsed.success && mend) {
    const mended = repairRaw(raw, parsed.error.issues);
    if (mended !== null) {
      repairs.push(...mended);
      parsed = jobSchema.safeParse(raw);
    }
  }
  if (!parsed.success) return refuse(parsed.error.issues.flatMap((issue) => explain(issue, raw)));
  const job = parsed.data;
  repairs.push(...unknownKeys(raw, job));

  const faults = faultsOf(job);
  const fatal = faults.filter((fault) => !mend || fault.repair === undefined);
  if (fatal.length > 0) return refuse(fatal.map(({ path, message }) => ({ path, message })));
  for (const { path, repair } of faults) {
    if (repair === undefined) continue;
    repair.apply();
    repairs.push({ path, message: repair.message });
  }
  return { ok: true, job, repairs };
}

function refuse(problems: readonly Problem[]): ReadResult {
  return { ok: false, problems };
}
