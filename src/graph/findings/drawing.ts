import type { Block, Hood, Job, Scheme } from '../document.ts';
import type { Flow } from '../inference/direction.ts';
import type { Topology } from '../inference/topology.ts';
import type { Places } from '../places.ts';
import type { Finding, Route, Severity } from '../route.ts';

/** What the rules look at: the scheme as drawn, what was inferred from it, and words for its places. */
export interface Drawing {
  readonly route: Route;
  readonly scheme: Scheme;
  readonly hoods: readonly Hood[];
  readonly blocks: readonly Block[];
  readonly exits: Job['exits'];
  readonly units: Job['units'];
  readonly topology: Topology;
  readonly flow: Flow;
  readonly places: Places;
}

export type Rule = (drawing: Drawing) => readonly Finding[];

/** A finding with its id made from the rule and the places it concerns. */
export function finding(
  rule: string,
  severity: Severity,
  where: { readonly nodes?: readonly string[]; readonly segments?: readonly string[] },
  message: string,
  rest: { readonly remedy?: string; readonly source?: string } = {},
): Finding {
  const nodes = where.nodes ?? [];
  const segments = where.segments ?? [];
  return {
    id: `${rule}:${[...nodes, ...segments].join('+')}`,
    rule,
    severity,
    message,
    ...rest,
    nodes,
    segments,
  };
}

const weight = { danger: 0, error: 1, warning: 2, note: 3 } as const;

/** Findings with the gravest first, in their order within each weight. */
export function gravestFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => weight[a.severity] - weight[b.severity]);
}
