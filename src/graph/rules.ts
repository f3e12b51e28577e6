import ruleFile from '#shared/rules.json' with { type: 'json' };
import { findLimit, type Sourced } from '../hydraulics/catalogue.ts';
import { inWords } from '../words/catalogue.ts';
import type { Job } from './document.ts';

export type RuleKind =
  /** Held by findings of the drawing or the solve, which say what is wrong. */
  | 'findings'
  | 'duct length'
  | 'run length'
  | 'turns'
  | 'straight'
  | 'clearance'
  | 'damper'
  | 'screen'
  | 'own duct'
  | 'least air'
  | 'overhang'
  | 'mounting least'
  | 'mounting most';

export type RuleUnit = 'm' | 'm/s' | 'm3/s' | 'turns' | 'diameters';
export type RuleLimit = number | readonly [number, number];

/** A rule of a code or of practice that a drawn exhaust is held against. */
export interface RuleRow extends Sourced {
  readonly id: string;
  readonly kind: RuleKind;
  readonly name: string;
  readonly what: string;
  readonly remedy: string;
  readonly edition: string;
  /** Rules of findings that break this one. */
  readonly findings?: readonly string[];
  /** Rules of findings that keep one from telling. */
  readonly unknown?: readonly string[];
  /** Such a finding that is only a note leaves the rule open. */
  readonly doubtNotes?: true;
  readonly clearance?: 'propertyLine' | 'opening' | 'intake';
  readonly limit?: RuleLimit;
  readonly unit?: RuleUnit;
  /** The limit as its source prints it. */
  readonly printed?: string;
}

interface Printed extends Omit<RuleRow, 'limit' | 'unit'> {
  readonly limit?: RuleLimit;
  readonly unit?: RuleUnit;
  /** Row of `limits.json` that the limit is taken from. */
  readonly limitRow?: string;
}

/** Every rule, with its figure taken from the catalogue of limits where it has one there. */
export const rules: readonly RuleRow[] = inWords('rules', ruleFile.rows as unknown as readonly Printed[]).map(
  ({ limitRow, ...row }) => {
    if (limitRow === undefined) return row;
    const limit = findLimit(limitRow);
    if (!limit) throw new RangeError(`the rule "${row.id}" names a limit that is not there: "${limitRow}"`);
    return { ...row, limit: limit.value, unit: limit.unit as RuleUnit, printed: limit.printed };
  },
);

/** The rule of that id; refuses one that is not there. */
export function ruleOf(id: string): RuleRow {
  const row = rules.find((each) => each.id === id);
  if (!row) throw new RangeError(`no rule "${id}"`);
  return row;
}

/** True where the job holds to the rule: all are on until one is switched off. */
export function ruleOn(profile: Job['profile'], id: string): boolean {
  return profile?.rules[id]?.off !== true;
}

/** The limit that a rule has in a job: its own, or the one that the job puts in its place. */
export function ruleLimit(
  profile: Job['profile'],
  id: string,
): { readonly value: RuleLimit; readonly overridden: boolean } | undefined {
  const row = ruleOf(id);
  const own = profile?.rules[id]?.limit;
  const fits =
    own !== undefined && row.limit !== undefined && Array.isArray(own) === Array.isArray(row.limit);
  if (fits) return { value: own, overridden: true };
  return row.limit === undefined ? undefined : { value: row.limit, overridden: false };
}
