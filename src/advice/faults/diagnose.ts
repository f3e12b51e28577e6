import type { Job } from '../../graph/document.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { words } from '../../words/index.ts';
import { type Decider, decider } from './next.ts';
import { onlyAir, patient, reading } from './observe.ts';
import { readings } from './predicted.ts';
import { sitesOf } from './sites.ts';
import type { Fault, Measurement } from './types.ts';
import { type Unexplained, unexplained } from './unexplained.ts';
import { misfitTo, type Weighed, weigh } from './weigh.ts';

const says = words.faults.diagnosis;

/** A weighed cause, solved for real. */
export interface Suspect extends Weighed {
  /** Sum of squares of the misses in standard deviations. */
  readonly misfit: number;
  /** Air that leaves at the cap by speed with this in the run, and with it put right, m3/s; null where there is none. */
  readonly air: readonly {
    readonly name: string;
    readonly now: number | null;
    readonly after: number | null;
  }[];
}

export type Verdict = 'as drawn' | 'told apart' | 'cannot tell' | 'nothing fits';

export interface Diagnosis {
  readonly verdict: Verdict;
  /** The best place of every cause, likeliest first. */
  readonly suspects: readonly Suspect[];
  readonly unexplained: readonly Unexplained[];
  /** What to measure next to tell the first two apart; null where no one measurement would. */
  readonly next: Decider | null;
}

/** Causes that weigh less than this are not worth a measurement against them. */
const WORTH = 0.02;
/** Odds below which the first two are not told apart. */
const APART = 5;

/**
 * What is wrong with the hood at `node` of a scheme, going by measurements: every cause is held
 * against all of them at every place and size that it could have, in the solved network, and the causes are ranked
 * by how well they explain them (`weigh`). One cause at a time: two at once are not looked for.
 *
 * @returns a sentence where there is nothing to go by
 */
export function diagnose(
  job: Job,
  schemeId: string,
  measured: readonly Measurement[],
): Diagnosis | { readonly reason: string } {
  const lean = onlyAir(job, schemeId);
  const drawn = patient(lean, schemeId, null).solution('as used');
  const speed = drawn.speeds[measured[0]?.speed ?? -1];
  if (!speed) return { reason: says.measureFirst };
  const { outcome } = speed;
  if (!outcome.solved) return { reason: outcome.reason };
  const node = hoodNode(lean, speed.hood);
  const sites = sitesOf(lean, drawn, node, outcome.path);
  const weighed = weigh(lean, schemeId, sites, measured);
  if (weighed.length === 0) return { reason: says.nonePredicted };
  const missOf = misfitTo(measured);
  const suspects = weighed.map((one) => ({
    ...one,
    misfit: missOf(readings(lean, schemeId, one.fault, measured)),
    air: airOf(lean, schemeId, one.fault, drawn),
  }));
  return {
    verdict: verdictOf(suspects, measured.length),
    suspects,
    unexplained: unexplained(lean, drawn, measured),
    next: nextOf(weighed, (one, other) => decider(lean, drawn, outcome.path, measured, one, other)),
  };
}

/** What tells the first two apart; where nothing does, the first two of the leading four that something tells apart. */
function nextOf(
  weighed: readonly Weighed[],
  decide: (one: Fault | null, other: Fault | null) => Decider | null,
): Decider | null {
  for (const [i, j] of pairs) {
    const [one, other] = [weighed[i], weighed[j]];
    if (!other || other.weight < WORTH) continue;
    const found = one ? decide(one.fault, other.fault) : null;
    if (found) return found;
  }
  return null;
}
const pairs = [
  [0, 1],
  [0, 2],
  [1, 2],
  [0, 3],
] as const;

function verdictOf([first, second]: readonly Suspect[], count: number): Verdict {
  if (!first || first.misfit > count + 4 * Math.sqrt(2 * count)) return 'nothing fits';
  if (first.fault === null) return 'as drawn';
  return second && first.weight < APART * second.weight ? 'cannot tell' : 'told apart';
}

function hoodNode(job: Job, hood: string): string {
  return job.schemes[0]?.nodes.find((node) => node.role === 'hood' && node.hood === hood)?.id ?? '';
}

function airOf(job: Job, schemeId: string, fault: Fault | null, drawn: SchemeSolution): Suspect['air'] {
  const found = patient(job, schemeId, fault).solution('as used');
  const flow = (solution: SchemeSolution, k: number) => {
    const outcome = solution.speeds[k]?.outcome;
    return outcome?.solved ? (reading(outcome, { kind: 'cap air' }) ?? null) : null;
  };
  return drawn.speeds.map(({ name }, k) => ({ name, now: flow(found, k), after: flow(drawn, k) }));
}
