import { words } from '../words/index.ts';
import type { Effects } from './proposals/effects.ts';

const says = words.goals.proposals;

/** What a person wants most of a change. */
export type Goal = 'air' | 'quiet' | 'cheap' | 'opening';

export const goals: readonly { readonly id: Goal; readonly title: string; readonly what: string }[] = [
  { id: 'air', title: says.air, what: says.airWhat },
  { id: 'quiet', title: says.quiet, what: says.quietWhat },
  {
    id: 'cheap',
    title: says.cheap,
    what: says.cheapWhat,
  },
  {
    id: 'opening',
    title: says.opening,
    what: says.openingWhat,
  },
];

/** What goals are judged by. */
export interface Judged extends Pick<Effects, 'gain' | 'gains' | 'sound' | 'cost' | 'opening' | 'fits'> {
  readonly id: string;
  readonly remedy?: true;
}

/** What a change is measured against: the airflow that the cooktop asks for, m3/s, and the air before, m3/s. */
export interface Measure {
  readonly need: number;
  readonly flow: number;
}

/** Openings and costs that differ by less are alike: m, units of money. */
const [sameOpening, sameCost] = [0.05, 0.5];

/**
 * Orders changes by a goal, best first. Whatever the goal, what fits stands before what does not, and what is
 * for something else than air after what is for air. What the goal cannot tell apart goes by the air gained.
 */
export function byGoal(goal: Goal, { need, flow }: Measure): (a: Judged, b: Judged) => number {
  const meets = (one: Judged) => Number(flow + one.gain >= need);
  const order: Readonly<Record<Goal, (a: Judged, b: Judged) => number>> = {
    air: () => 0,
    quiet: (a, b) => (a.sound?.after ?? 0) - (b.sound?.after ?? 0),
    cheap: (a, b) => meets(b) - meets(a) || (meets(a) ? stepped(a.cost - b.cost, sameCost) : 0),
    opening: (a, b) => stepped(a.opening - b.opening, sameOpening),
  };
  return (a, b) =>
    Number(b.fits) - Number(a.fits) ||
    Number(a.remedy ?? false) - Number(b.remedy ?? false) ||
    order[goal](a, b) ||
    b.gain - a.gain ||
    a.cost - b.cost ||
    (a.id < b.id ? -1 : 1);
}

function stepped(difference: number, same: number): number {
  return Math.abs(difference) < same ? 0 : difference;
}

/** A copy in the order of a goal. */
export function ranked<T extends Judged>(all: readonly T[], goal: Goal, measure: Measure): readonly T[] {
  return [...all].sort(byGoal(goal, measure));
}
