import { type Draft, enablePatches, type Patch, produce, produceWithPatches } from 'immer';
import type { Job } from './document.ts';

enablePatches();

/** One edit: how to make it again and how to take it back. */
export interface Step {
  readonly label: string;
  readonly forward: readonly Patch[];
  readonly back: readonly Patch[];
}

/** A document with the edits that led to it and those taken back. Plain data: nothing here changes in place. */
export interface History {
  readonly job: Job;
  /** Oldest first. */
  readonly past: readonly Step[];
  /** The edit taken back last comes last. */
  readonly future: readonly Step[];
}

export function startHistory(job: Job): History {
  return { job, past: [], future: [] };
}

/**
 * Makes one edit, one step. An edit that leaves every value as it was gives back the same history;
 * any other forgets what could be redone. What a recipe throws passes through, and nothing changes.
 */
export function commit(history: History, label: string, recipe: (job: Draft<Job>) => void): History {
  const before = history.job;
  const [job, forward, back] = produceWithPatches(before, (draft) => {
    recipe(draft);
  });
  if (job === before || !changes(before, forward)) return history;
  const step: Step = { label, forward: keepingOrder(forward, job), back: keepingOrder(back, before) };
  return { job, past: [...history.past, step], future: [] };
}

/** Takes the last edit back; the same history where there is none. */
export function undo(history: History): History {
  const step = history.past.at(-1);
  if (!step) return history;
  return {
    job: applied(history.job, step.back),
    past: history.past.slice(0, -1),
    future: [...history.future, step],
  };
}

/** Makes the edit that was last taken back again; the same history where there is none. */
export function redo(history: History): History {
  const step = history.future.at(-1);
  if (!step) return history;
  return {
    job: applied(history.job, step.forward),
    past: [...history.past, step],
    future: history.future.slice(0, -1),
  };
}

/** What undo would take back. */
export function undoLabel(history: History): string | null {
  return history.past.at(-1)?.label ?? null;
}

/** What redo would make again. */
export function redoLabel(history: History): string | null {
  return history.future.at(-1)?.label ?? null;
}

type Container = Record<string | number, unknown>;

/**
 * A property that comes or goes would end up last when it is put back. Its whole object is put in
 * place instead, so that an undone document is written to a file exactly as it was; what else changes
 * within that object has come with it.
 */
function keepingOrder(patches: readonly Patch[], target: Job): readonly Patch[] {
  const kept = patches.map((patch) => {
    const parentPath = patch.path.slice(0, -1);
    const parent = valueAt(target, parentPath);
    if (patch.op === 'replace' || Array.isArray(parent)) return patch;
    return { op: 'replace' as const, path: parentPath, value: parent };
  });
  const whole = kept.filter((patch, i) => patch !== patches[i]);
  return kept.filter((patch) => !whole.some((other) => within(patch.path, other.path)));
}

/** True for a place inside another one, not for that place itself. */
function within(path: Patch['path'], outer: Patch['path']): boolean {
  return path.length > outer.length && outer.every((key, i) => key === path[i]);
}

/** Applies patches by reference: what a patch puts in place is the very object that stood there. */
function applied(job: Job, patches: readonly Patch[]): Job {
  const whole = patches.findLast((patch) => patch.path.length === 0);
  if (whole) return whole.value as Job;
  return produce(job, (draft) => {
    for (const patch of patches) apply(draft, patch);
  });
}

function apply(draft: Draft<Job>, { op, path, value }: Patch): void {
  const key = path.at(-1) as string | number;
  const parent = valueAt(draft, path.slice(0, -1));
  if (Array.isArray(parent) && op !== 'replace')
    parent.splice(Number(key), op === 'remove' ? 1 : 0, ...(op === 'add' ? [value] : []));
  else (parent as Container)[key] = value;
}

function valueAt(root: unknown, path: Patch['path']): unknown {
  return path.reduce((value, key) => (value as Container)[key], root);
}

/** False where every patch replaces a value by an equal one. */
function changes(before: Job, patches: readonly Patch[]): boolean {
  return patches.some(({ op, path, value }) => op !== 'replace' || !equal(valueAt(before, path), value));
}

/** True where two documents, or two parts of one, hold the same values. What they share is not looked through. */
export function equal(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && equal((a as Container)[key], (b as Container)[key]))
  );
}
