import { readFileSync } from 'node:fs';
import { type Diagnosis, diagnose } from '../../src/advice/faults/diagnose.ts';
import { askedFirst } from '../../src/advice/faults/first.ts';
import { onlyAir, patient } from '../../src/advice/faults/observe.ts';
import { sitesOf } from '../../src/advice/faults/sites.ts';
import {
  type CauseId,
  type Fault,
  type MeasuredKind,
  type Measurement,
  type Probe,
  type Site,
  soundInCommon,
  spread,
} from '../../src/advice/faults/types.ts';
import { type Weighed, weigh } from '../../src/advice/faults/weigh.ts';
import { type Job, job as jobSchema } from '../../src/graph/document.ts';
import { between, pick, type Random, seeded } from './random.ts';

export const example: Job = jobSchema.parse(
  JSON.parse(readFileSync(new URL('../../fixtures/example.gentlebend.json', import.meta.url), 'utf8')),
);

/** From what a person would notice to what leaves hardly any air. */
export const sizes: Readonly<Record<CauseId, readonly [number, number]>> = {
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

export type SchemeId = 'wall' | 'roof';
const hoods: Readonly<Record<SchemeId, string>> = { wall: 'w1', roof: 'r1' };

export const drawn = (schemeId: SchemeId) =>
  patient(onlyAir(example, schemeId), schemeId, null).solution('as used');

/** Every place of the scheme where something could be wrong. */
export function sitesIn(schemeId: SchemeId): readonly Site[] {
  const solution = drawn(schemeId);
  const outcome = solution.speeds[3]?.outcome;
  return sitesOf(onlyAir(example, schemeId), solution, hoods[schemeId], outcome?.solved ? outcome.path : []);
}

export interface Planted {
  readonly schemeId: SchemeId;
  readonly fault: Fault;
}

/** Twenty faults of every kind, of random sizes and at random places of two routes. */
export function twenty(random: Random): Planted[] {
  return Array.from({ length: 20 }, (_, i) => {
    const cause = kinds[i % kinds.length] ?? 'leak';
    const schemeId = i % 3 === 0 && cause !== 'crushed-flexible' ? 'wall' : 'roof';
    const sites = sitesIn(schemeId).filter((site) => site.cause === cause);
    if (sites.length === 0) throw new Error(`${schemeId} has no place for ${cause}`);
    return { schemeId, fault: { ...pick(random, sites), size: between(random, ...sizes[cause]) } };
  });
}

/** A normal variate of mean 0 and deviation 1 (Box and Muller). */
function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/**
 * What instruments show of a planted fault: each reading off by 5 % and the floor of its instrument (one standard
 * deviation), sound by its own and by what is the same at all speeds.
 */
export function read({ schemeId, fault }: Planted, probes: readonly Probe[], random: Random): Measurement[] {
  const seen = patient(onlyAir(example, schemeId), schemeId, fault);
  const louder = probes.some(({ kind }) => kind === 'sound') ? soundInCommon * normal(random) : 0;
  return probes.flatMap((probe) => {
    const value = seen.observe(probe);
    if (value === undefined) return [];
    const shift = probe.kind === 'sound' ? louder : 0;
    return [{ ...probe, value: value + shift + spread(probe.kind, value) * normal(random) }];
  });
}

const speeds = [0, 1, 2, 3];

/** What the panel asks for first, at every speed. */
export const firstIn = (schemeId: SchemeId): readonly Probe[] =>
  speeds.flatMap((speed) => askedFirst(drawn(schemeId), speed));

/** The same kinds of reading at every speed. */
export const everySpeed = (...measured: readonly MeasuredKind[]): readonly Probe[] =>
  speeds.flatMap((speed) => measured.map((kind): Probe => ({ kind, speed, condition: 'as used' })));

/** A planted fault with what was measured at it. */
export interface Measured extends Planted {
  readonly measured: readonly Measurement[];
}

/** The twenty of a seed with what the probes read at them. */
export function measuredTwenty(seed: number, probes: (schemeId: SchemeId) => readonly Probe[]): Measured[] {
  const random = seeded(seed);
  return twenty(random).map((planted) => ({
    ...planted,
    measured: read(planted, probes(planted.schemeId), random),
  }));
}

/** The causes by rank, as the program weighs them. */
export const ranked = ({ schemeId, measured }: Measured): readonly Weighed[] =>
  weigh(onlyAir(example, schemeId), schemeId, sitesIn(schemeId), measured);

/**
 * A planted fault diagnosed from first measurements, then with up to `more` that the program itself asks for:
 * what it said each time.
 */
export function examine(planted: Planted, random: Random, more: number): Diagnosis[] {
  const measured = read(planted, firstIn(planted.schemeId), random);
  const said: Diagnosis[] = [];
  for (let k = 0; k <= more; k++) {
    const diagnosis = diagnose(example, planted.schemeId, measured);
    if ('reason' in diagnosis) throw new Error(diagnosis.reason);
    said.push(diagnosis);
    if (!diagnosis.next) break;
    measured.push(...read(planted, [diagnosis.next.probe], random));
  }
  return said;
}

/** 1 for the first; 99 where the cause is not listed. */
export const rankOf = (suspects: readonly { readonly fault: Fault | null }[], cause: CauseId): number =>
  suspects.findIndex((suspect) => suspect.fault?.cause === cause) + 1 || 99;
