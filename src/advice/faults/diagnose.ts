import type { Job } from '../../graph/document.ts';
import type { SchemeSolution } from '../../graph/solution.ts';
import { words } from '../../words/index.ts';
import { fitSite, misfitOf } from './fit.ts';
import { type Decider, decider } from './next.ts';
import { onlyAir, patient, reading } from './observe.ts';
import { sitesOf } from './sites.ts';
import { type CauseId, causeRow, type Fault, type Measurement } from './types.ts';
import { type Unexplained, unexplained } from './unexplained.ts';

const says = words.faults.diagnosis;

/** A cause at its likeliest place and size, or nothing wrong (`fault` null). */
export interface Suspect {
  readonly fault: Fault | null;
  readonly misfit: number;
  /** Misfit with what speaks against the cause before anything is measured: smaller ranks higher. */
  readonly score: number;
  /** Against the other causes of the list, 0-1: a ranking, not a probability of the world. */
  readonly weight: number;
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

/** What one free size is charged, so that a cause is not preferred for a hair's breadth over none. */
const CHARGE = 2;
/** Scores nearer than this are not told apart: odds of about 5 to 1. */
const APART = 3.2;

/**
 * What is wrong with the hood at `node` of a scheme, going by measurements: every cause is fitted at every
 * place where it could be, by least squares over all measurements in the solved network, and ranked by its
 * misfit and its plausibility. One cause at a time: two at once are not looked for.
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
  const fits = sites.map((site) => fitSite(lean, schemeId, site, measured));
  const best = new Map<CauseId, (typeof fits)[number]>();
  for (const fit of fits) {
    const known = best.get(fit.fault.cause);
    if (!known || fit.misfit < known.misfit) best.set(fit.fault.cause, fit);
  }
  const nothing = { fault: null, misfit: misfitOf(lean, schemeId, null, measured) };
  const scored = [nothing, ...best.values()]
    .filter(({ misfit }) => Number.isFinite(misfit))
    .map((fit) => ({ ...fit, score: fit.misfit + against(fit.fault) }))
    .sort((a, b) => a.score - b.score);
  const [first, second] = scored;
  if (!first) return { reason: says.nonePredicted };
  const total = scored.reduce((sum, { score }) => sum + Math.exp((first.score - score) / 2), 0);
  const suspects = scored.map((suspect) => ({
    ...suspect,
    weight: Math.exp((first.score - suspect.score) / 2) / total,
    air: airOf(lean, schemeId, suspect.fault, drawn),
  }));
  return {
    verdict: verdictOf(first, second, measured.length),
    suspects,
    unexplained: unexplained(lean, drawn, measured),
    next: nextOf(scored, (one, other) => decider(lean, drawn, outcome.path, measured, one, other)),
  };
}

/** What tells the first two apart; where nothing does, the first two of the leading four that something tells apart. */
function nextOf(
  scored: readonly { readonly fault: Fault | null }[],
  decide: (one: Fault | null, other: Fault | null) => Decider | null,
): Decider | null {
  for (const [i, j] of pairs) {
    const [one, other] = [scored[i], scored[j]];
    const found = one && other ? decide(one.fault, other.fault) : null;
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

/** What speaks against a cause before anything is measured. */
function against(fault: Fault | null): number {
  return fault ? CHARGE - 2 * Math.log(causeRow(fault.cause).plausibility) : 0;
}

function verdictOf(
  first: { readonly fault: Fault | null; readonly misfit: number; readonly score: number },
  second: { readonly score: number } | undefined,
  count: number,
): Verdict {
  if (first.misfit > count + 4 * Math.sqrt(2 * count)) return 'nothing fits';
  if (first.fault === null) return 'as drawn';
  return second && second.score - first.score < APART ? 'cannot tell' : 'told apart';
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
