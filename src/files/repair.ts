import type * as z from 'zod';
import { words } from '../words/index.ts';
import { valueAt } from './explain.ts';
import { pathOf, type Repair } from './problem.ts';

const says = words.fileProblems.repair;

type Issue = z.core.$ZodIssue;

/**
 * A repair drops, renames or cuts to length; it never guesses a number that the air depends on. What
 * cannot be mended that way is refused. These are the repairs of a raw document that its schema
 * refuses: what is only looked at (underlays) and texts that are too long. Changes `raw` in place and
 * returns what was done, or `null` where an issue is beyond repair.
 */
export function repairRaw(raw: Record<string, unknown>, issues: readonly Issue[]): Repair[] | null {
  const repairs: Repair[] = [];
  const dropped = new Set<number>();
  for (const issue of issues) {
    if (clampOpacity(raw, issue, repairs) || cutText(raw, issue, repairs)) continue;
    const [top, index] = issue.path;
    if (top !== 'underlays' || typeof index !== 'number') return null;
    if (!dropped.has(index)) {
      dropped.add(index);
      repairs.push({ path: `underlays[${index}]`, message: says.underlayDropped });
    }
  }
  if (dropped.size > 0) {
    raw.underlays = (raw.underlays as unknown[]).filter((_, index) => !dropped.has(index));
  }
  return repairs;
}

function clampOpacity(raw: unknown, issue: Issue, repairs: Repair[]): boolean {
  const [top, , key] = issue.path;
  const value = valueAt(raw, issue.path);
  if (top !== 'underlays' || key !== 'opacity' || typeof value !== 'number' || !Number.isFinite(value))
    return false;
  const clamped = Math.min(1, Math.max(0, value));
  put(raw, issue.path, clamped);
  repairs.push({ path: pathOf(issue.path), message: says.clamped(value, clamped) });
  return true;
}

const freeTexts: ReadonlySet<PropertyKey> = new Set(['title', 'notes', 'name']);

function cutText(raw: unknown, issue: Issue, repairs: Repair[]): boolean {
  const key = issue.path.at(-1);
  const value = valueAt(raw, issue.path);
  if (issue.code !== 'too_big' || typeof value !== 'string' || key === undefined || !freeTexts.has(key))
    return false;
  put(raw, issue.path, value.slice(0, Number(issue.maximum)));
  repairs.push({ path: pathOf(issue.path), message: says.cut(String(issue.maximum)) });
  return true;
}

function put(raw: unknown, path: readonly PropertyKey[], value: unknown): void {
  const owner = valueAt(raw, path.slice(0, -1)) as Record<PropertyKey, unknown>;
  const key = path.at(-1);
  if (key !== undefined) owner[key] = value;
}

/**
 * Keys of `raw` that the schema does not know and that `parsed` therefore lacks. They are left out in
 * every mode: nothing in the program could have used them.
 */
export function unknownKeys(raw: unknown, parsed: unknown, path: readonly PropertyKey[] = []): Repair[] {
  if (Array.isArray(raw) && Array.isArray(parsed)) {
    return raw.flatMap((item, index) => unknownKeys(item, parsed[index], [...path, index]));
  }
  if (!isRecord(raw) || !isRecord(parsed)) return [];
  return Object.keys(raw).flatMap((key) =>
    Object.hasOwn(parsed, key)
      ? unknownKeys(raw[key], parsed[key], [...path, key])
      : [{ path: pathOf([...path, key]), message: says.leftOut }],
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
