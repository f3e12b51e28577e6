import { readFileSync } from 'node:fs';
import { type Diagnosis, diagnose } from '../../src/advice/faults/diagnose.ts';
import { onlyAir, patient } from '../../src/advice/faults/observe.ts';
import { sitesOf } from '../../src/advice/faults/sites.ts';
import type { CauseId, Fault, MeasuredKind, Measurement, Probe } from '../../src/advice/faults/types.ts';
import { type Job, job as jobSchema } from '../../src/graph/document.ts';
import { between, pick, type Random } from './random.ts';

export const example: Job = jobSchema.parse(
  JSON.parse(readFileSync(new URL('../../fixtures/example.gentlebend.json', import.meta.url), 'utf8')),
);

/** From what a person would notice to what leaves hardly any air. */
const sizes: Readonly<Record<CauseId, readonly [number, number]>> = {
  'dirty-filter': [0.5, 0.85],
  'stuck-flap': [0.5, 0.85],
  'blocked-cap': [0.4, 0.8],
  'crushed-flexible': [0.5, 0.85],
  'hidden-section': [0.2, 0.45],
  leak: [0.05, 0.3],
  'slow-fan': [0.15, 0.4],
  'tight-house': [0.5, 0.8],
};
export const kinds = Object.keys(sizes) as CauseId[];

/** The hood's node in each of the example's schemes. */
const hoods: Readonly<Record<string, string>> = { wall: 'w1', roof: 'r1' };

/** A fault of a kind and a random size, at a random place where the scheme has it; undefined where it has none. */
export function randomFault(random: Random, cause: CauseId, schemeId: string): Fault | undefined {
  const solution = patient(onlyAir(example, schemeId), schemeId, null).solution('as used');
  const outcome = solution.speeds[3]?.outcome;
  const path = outcome?.solved ? outcome.path : [];
  const sites = sitesOf(example, solution, hoods[schemeId] ?? '', path).filter(
    (site) => site.cause === cause,
  );
  if (sites.length === 0) return undefined;
  return { ...pick(random, sites), size: between(random, ...sizes[cause]) };
}

/** A normal variate of mean 0 and deviation 1 (Box and Muller). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/** What an instrument shows of a planted fault, with a relative error of the given deviation. */
export function read(
  schemeId: string,
  fault: Fault | null,
  probes: readonly Probe[],
  random: Random,
  error = 0.05,
): Measurement[] {
  const seen = patient(onlyAir(example, schemeId), schemeId, fault);
  return probes.flatMap((probe) => {
    const value = seen.observe(probe);
    return value === undefined ? [] : [{ ...probe, value: value * (1 + error * normal(random)) }];
  });
}

/** What an installer measures first: air at the hood and at the cap and static pressure at the collar, at every speed. */
export const firstProbes: readonly Probe[] = [0, 1, 2, 3].flatMap((speed) =>
  (['hood air', 'cap air', 'collar static'] satisfies MeasuredKind[]).map(
    (kind): Probe => ({ kind, speed, condition: 'as used' }),
  ),
);

/**
 * A planted fault diagnosed from first measurements, then with up to `more` that the program itself asks for:
 * what it said each time.
 */
export function examine(schemeId: string, fault: Fault | null, random: Random, more: number): Diagnosis[] {
  const measured = read(schemeId, fault, firstProbes, random);
  const said: Diagnosis[] = [];
  for (let k = 0; k <= more; k++) {
    const diagnosis = diagnose(example, schemeId, measured);
    if ('reason' in diagnosis) throw new Error(diagnosis.reason);
    said.push(diagnosis);
    if (!diagnosis.next) break;
    measured.push(...read(schemeId, fault, [diagnosis.next.probe], random));
  }
  return said;
}

/** 1 for the first; 99 where the cause is not listed. */
export const rankOf = ({ suspects }: Diagnosis, cause: CauseId): number =>
  suspects.findIndex((suspect) => suspect.fault?.cause === cause) + 1 || 99;
