import { words } from '../words/index.ts';
import type { Problem } from './problem.ts';

const says = words.fileProblems.version;

/** The version that this program writes. */
export const currentVersion = 1;

/** What turns a raw document of one version into one of the next. */
export interface Migration {
  /** What a person has to know of it, a clause each without a full stop. */
  readonly changes: readonly string[];
  step(raw: Record<string, unknown>): Record<string, unknown>;
}

/**
 * By the version that a step starts from. Every version that was ever written stays readable, so a
 * step is added here when the format changes and none is ever removed.
 */
export const migrations: ReadonlyMap<number, Migration> = new Map();

export type Migrated =
  | {
      readonly ok: true;
      readonly raw: Record<string, unknown>;
      readonly from: number;
      /** What the steps changed, in their order. */
      readonly changes: readonly string[];
    }
  | { readonly ok: false; readonly problem: Problem };

/**
 * Brings a raw document to `target`, one version at a time. Refuses what is no job at all, a version
 * newer than `target`, and one that no step is known for.
 */
export function migrate(
  value: unknown,
  target: number = currentVersion,
  steps: ReadonlyMap<number, Migration> = migrations,
): Migrated {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return refuse('', says.noObject);
  }
  let raw = value as Record<string, unknown>;
  if (raw.format !== 'gentlebend') return refuse('format', says.otherFormat);
  const from = raw.version;
  if (typeof from !== 'number' || !Number.isInteger(from) || from < 1) {
    return refuse('version', says.wholeNumber);
  }
  if (from > target) {
    return refuse('version', says.newer(from, target));
  }
  const changes: string[] = [];
  for (let version = from; version < target; version += 1) {
    const migration = steps.get(version);
    if (migration === undefined) return refuse('version', says.noWay(version, version + 1));
    raw = { ...migration.step(raw), version: version + 1 };
    changes.push(...migration.changes);
  }
  return { ok: true, raw, from, changes };
}

function refuse(path: string, message: string): Migrated {
  return { ok: false, problem: { path, message } };
}
