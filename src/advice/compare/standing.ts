import type { Goal } from '../goals.ts';
import type { SchemeFigures } from './figures.ts';

/** What schemes can be compared for: opening-up is of changes to a route. */
export type SchemeGoal = Exclude<Goal, 'opening'>;

/** What one scheme is judged by against another. */
export interface Standing {
  readonly delivers: boolean;
  readonly errors: number;
  readonly dangers: number;
  readonly meets: boolean;
  readonly flow: number;
  /** dBA at the cook, null where no sound is rated. */
  readonly sound: number | null;
  readonly cost: number;
}

export function standingOf({ solved, counts, need, cost }: SchemeFigures): Standing {
  return {
    delivers: solved !== null,
    errors: counts.error,
    dangers: counts.danger,
    meets: solved !== null && solved.flow >= need,
    flow: solved?.flow ?? 0,
    sound: solved?.sound.fan.rated ? solved.sound.cook.level : null,
    cost: cost.total,
  };
}

/** Differences that are no difference: a share of the air, dB, units of money. */
const alike = { flow: 0.01, sound: 1, cost: 1 };

/**
 * Below zero where `a` is to be preferred: air at all before none, fewer errors in the drawing, fewer dangers,
 * enough air before too little; then the goal; then air, sound and cost in turn.
 */
export function prefer(a: Standing, b: Standing, goal: SchemeGoal): number {
  const flow = Math.abs(a.flow - b.flow) > alike.flow * Math.max(a.flow, b.flow) ? b.flow - a.flow : 0;
  const level = (a.sound ?? 0) - (b.sound ?? 0);
  const sound = a.sound !== null && b.sound !== null && Math.abs(level) > alike.sound ? level : 0;
  const cost = Math.abs(a.cost - b.cost) > alike.cost ? a.cost - b.cost : 0;
  const first = { air: flow, quiet: sound, cheap: a.meets ? cost : flow }[goal];
  return (
    Number(b.delivers) - Number(a.delivers) ||
    a.errors - b.errors ||
    a.dangers - b.dangers ||
    Number(b.meets) - Number(a.meets) ||
    first ||
    flow ||
    sound ||
    cost
  );
}
