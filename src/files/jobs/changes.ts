import type { SchemeSummary } from './cards.ts';

/** How one state of a job differs from another, as it is told in one line. */
export interface Changes {
  readonly schemes: number;
  /** Of all schemes. */
  readonly legs: number;
  /** Air delivered by the first scheme, m3/s; null where one of the two has no answer. */
  readonly flow: number | null;
}

/** What `then` has more than `now`; less where negative. */
export function changesOf(then: readonly SchemeSummary[], now: readonly SchemeSummary[]): Changes {
  const [a, b] = [then[0]?.flow ?? null, now[0]?.flow ?? null];
  return {
    schemes: then.length - now.length,
    legs: legsOf(then) - legsOf(now),
    flow: a === null || b === null ? null : a - b,
  };
}

export function legsOf(summary: readonly SchemeSummary[]): number {
  return summary.reduce((sum, { legs }) => sum + legs, 0);
}
