import type { Job } from '../../graph/document.ts';
import type { Finding } from '../../graph/route.ts';
import type { SchemeSolution, Solved } from '../../graph/solution.ts';
import { openingUp } from '../cost/opening-up.ts';
import { costDifference } from '../cost/price.ts';

export interface Change {
  readonly before: number;
  readonly after: number;
}

/** Everything that a change does, found by solving the changed scheme. */
export interface Effects {
  /** Air gained at the judged speed, m3/s. */
  readonly gain: number;
  readonly gains: readonly ({ readonly speed: string } & Change)[];
  /** At the cook at the judged speed, dBA; null where the fan has no rated sound. */
  readonly sound: Change | null;
  /** House against outdoors at the judged speed, Pa; null where the job has no house. */
  readonly house: Change | null;
  /** Parts of the changed scheme less those of the present one, by the price list. */
  readonly cost: number;
  /** Present route to be opened up, m: see `openingUp`. */
  readonly opening: number;
  /** False where duct now meets a block or leaves a chase that it did not before. */
  readonly fits: boolean;
  /** Findings that the change brings, and those that it settles. */
  readonly brings: readonly Finding[];
  readonly settles: readonly Finding[];
}

/** A speed's outcome where it delivers air. */
export function outcomeAt(solution: SchemeSolution, speed: number): Solved | undefined {
  const outcome = solution.speeds[speed]?.outcome;
  return outcome?.solved && outcome.flow > 0 ? outcome : undefined;
}

/** What differs between a scheme as it is and changed, at the judged speed; null where either has no air there. */
export function effectsOf(
  job: Job,
  before: SchemeSolution,
  changed: Job,
  after: SchemeSolution,
  judged: number,
): Effects | null {
  const now = outcomeAt(before, judged);
  const then = outcomeAt(after, judged);
  if (!now || !then) return null;
  const brings = beside(after, before);
  return {
    gain: then.flow - now.flow,
    gains: before.speeds.map(({ name }, i) => ({
      speed: name,
      before: outcomeAt(before, i)?.flow ?? 0,
      after: outcomeAt(after, i)?.flow ?? 0,
    })),
    sound:
      now.sound.fan.rated && then.sound.fan.rated
        ? { before: now.sound.cook.level, after: then.sound.cook.level }
        : null,
    house: now.house && then.house ? { before: now.house.pressure, after: then.house.pressure } : null,
    cost: costDifference(job, changed, before.schemeId),
    opening: openingUp(job, changed, before.schemeId),
    fits: !brings.some(({ rule }) => misfits.includes(rule)),
    brings,
    settles: beside(before, after),
  };
}

const misfits: readonly string[] = ['fit-clash', 'fit-chase', 'fit-bend'];

/** Findings of one solution that the other has not: by rule and place, and a misfit by its blocks. */
function beside(one: SchemeSolution, other: SchemeSolution): Finding[] {
  return newIn(one.findings, other.findings);
}

function newIn(findings: readonly Finding[], known: readonly Finding[]): Finding[] {
  const names = new Set(known.map(name));
  return findings.filter((found) => !names.has(name(found)));
}

/** Among findings those that duct meets a block, or leaves a chase, and that are not among the known ones. */
export function newMisfits(findings: readonly Finding[], known: readonly Finding[]): readonly Finding[] {
  return newIn(findings, known).filter(({ rule }) => misfits.includes(rule));
}

/** A leg that is cut in two keeps what was found of it: a misfit is known by its blocks, all else by its nodes. */
function name({ id, rule, nodes, blocks }: Finding): string {
  if (misfits.includes(rule) && blocks) return `${rule}:${blocks.join('+')}`;
  return nodes.length > 0 ? `${rule}:${[...nodes].sort().join('+')}` : id;
}
