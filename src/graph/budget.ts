import type { FittingKind, Solved } from './solution.ts';

/** What uses up a fan's pressure, in the order of the air. */
export const budgetCauses = [
  'house',
  'friction',
  'bends',
  'transitions',
  'junctions',
  'dampers',
  'parts in line',
  'cap',
  'helping fans',
] as const;

export type BudgetCause = (typeof budgetCauses)[number];

export interface BudgetPart {
  readonly cause: BudgetCause;
  /** Pa; below zero where fans in the run help. */
  readonly loss: number;
  /** Of the pressure of the hood's own fan. */
  readonly share: number;
  readonly nodes: readonly string[];
  readonly segments: readonly string[];
}

const causeOf: Readonly<Record<FittingKind, BudgetCause>> = {
  bend: 'bends',
  transition: 'transitions',
  junction: 'junctions',
  cap: 'cap',
  exit: 'cap',
  'backdraught-damper': 'dampers',
  damper: 'dampers',
  screen: 'parts in line',
  silencer: 'parts in line',
  filter: 'parts in line',
  user: 'parts in line',
};

/**
 * The pressure that the hood's fan spends on its own path to the outside, by cause: the parts add up to its
 * total pressure. Causes that take nothing are left out.
 */
export function pressureBudget(solved: Solved): BudgetPart[] {
  const onPath = new Set(solved.path);
  const spent = new Map<BudgetCause, { loss: number; nodes: string[]; segments: string[] }>();
  const charge = (cause: BudgetCause, loss: number, place: { node?: string; segment?: string }) => {
    const part = spent.get(cause) ?? { loss: 0, nodes: [], segments: [] };
    spent.set(cause, part);
    part.loss += loss;
    if (place.node !== undefined) part.nodes.push(place.node);
    if (place.segment !== undefined) part.segments.push(place.segment);
  };
  if (solved.house) charge('house', -solved.house.pressure, {});
  for (const id of solved.path) {
    const segment = solved.segments.get(id);
    if (segment) charge('friction', segment.frictionLoss, { segment: id });
  }
  for (const { at, segment, kind, loss } of solved.fittings)
    if (onPath.has(segment)) charge(causeOf[kind], loss, at === segment ? { segment } : { node: at });
  for (const { node, pressure } of solved.boosters) charge('helping fans', -pressure, { node });
  return budgetCauses.flatMap((cause) => {
    const part = spent.get(cause);
    if (!part || Math.abs(part.loss) < 1e-9) return [];
    return [{ cause, ...part, share: solved.totalPressure > 0 ? part.loss / solved.totalPressure : 0 }];
  });
}
