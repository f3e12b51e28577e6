import type { Node } from '../document.ts';
import type { RuleLimit } from '../rules.ts';
import { type DraftJob, findNode, findScheme } from './find.ts';

/** Switches a rule on or off, or gives it a limit of the job's own (`null` for the rule's). */
export function setRule(
  job: DraftJob,
  ruleId: string,
  change: { readonly off?: boolean; readonly limit?: RuleLimit | null },
): void {
  job.profile ??= { rules: {} };
  const rule = { ...job.profile.rules[ruleId] };
  if (change.off === true) rule.off = true;
  if (change.off === false) delete rule.off;
  if (change.limit === null) delete rule.limit;
  else if (change.limit !== undefined)
    rule.limit = typeof change.limit === 'number' ? change.limit : [change.limit[0], change.limit[1]];
  if (Object.keys(rule).length > 0) job.profile.rules[ruleId] = rule;
  else delete job.profile.rules[ruleId];
  if (Object.keys(job.profile.rules).length === 0 && job.profile.name === undefined) delete job.profile;
}

/** Takes back every change of the rules. */
export function resetRules(job: DraftJob): void {
  delete job.profile;
}

type Clearances = NonNullable<Node['clearances']>;

/** A distance from a cap to what stands around it, m; `null` for not known. */
export function setCapClearance(
  job: DraftJob,
  schemeId: string,
  nodeId: string,
  what: keyof Clearances,
  value: number | null,
): void {
  const node = findNode(findScheme(job, schemeId), nodeId);
  const clearances = { ...node.clearances };
  if (value === null) delete clearances[what];
  else clearances[what] = value;
  if (Object.keys(clearances).length > 0) node.clearances = clearances;
  else delete node.clearances;
}
