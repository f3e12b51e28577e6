import type { Job } from '../../graph/document.ts';
import type { Places } from '../../graph/places.ts';
import type { RouteSegment } from '../../graph/route.ts';
import type { RuleLimit, RuleRow } from '../../graph/rules.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import type { SourceKind } from '../../hydraulics/types.ts';

export type CodeState = 'meets' | 'fails' | 'cannot tell' | 'not applicable';

/** What came of holding a scheme against one rule. */
export interface CodeResult {
  readonly rule: string;
  readonly name: string;
  readonly state: CodeState;
  /** What was found, in people's units; null where there is no one figure. */
  readonly measured: string | null;
  readonly limit: string | null;
  /** True where the job has a limit of its own in place of the rule's. */
  readonly overridden: boolean;
  /** One sentence. */
  readonly message: string;
  /** One sentence: what to do. */
  readonly remedy: string;
  readonly source: string;
  readonly sourceKind: SourceKind;
  readonly edition: string;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

/** One hood with the run that its air takes. */
export interface Run {
  readonly node: string;
  readonly hood: Job['hoods'][number];
  readonly legs: readonly RouteSegment[];
  /** Its speeds that were solved with air going out, lowest first. */
  readonly solved: readonly Solved[];
}

/** What a check looks at. */
export interface Checked {
  readonly job: Job;
  readonly scheme: Job['schemes'][number];
  readonly solution: SchemeSolution;
  readonly runs: readonly Run[];
  readonly places: Places;
}

/** What a check says; the rest of a result is the rule's own. */
export interface Said {
  readonly state: CodeState;
  readonly message: string;
  readonly measured?: string;
  readonly remedy?: string;
  readonly nodes?: readonly string[];
  readonly segments?: readonly string[];
}

/** Holds a scheme against one rule; the limit is the job's own where it has one, SI. */
export type Check = (checked: Checked, rule: RuleRow, limit: RuleLimit | undefined) => Said;

/** The worst of several: what fails before what cannot be told before what is met. */
export function worst(said: readonly Said[], none: string): Said {
  for (const state of ['fails', 'cannot tell', 'meets'] as const) {
    const found = said.find((one) => one.state === state);
    if (found) return found;
  }
  return said[0] ?? { state: 'not applicable', message: none };
}
