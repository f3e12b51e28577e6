import { readFileSync } from 'node:fs';

/** A reference file of `fixtures/reference`, as it stands. */
export function reference<T>(name: string): T {
  return JSON.parse(readFileSync(new URL(`../../fixtures/reference/${name}`, import.meta.url), 'utf8')) as T;
}

/** How far `ours` is off, relative to `theirs`. */
export function off(ours: number, theirs: number): number {
  return Math.abs(ours - theirs) / Math.abs(theirs);
}
