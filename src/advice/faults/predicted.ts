import type { Job } from '../../graph/document.ts';
import { memoise } from '../../graph/memo.ts';
import { patient } from './observe.ts';
import { largest } from './sites.ts';
import type { Fault, Probe, Site } from './types.ts';

/** Sizes of a cause that are solved for real. */
const SOLVED = 16;
/** Above 1 they lie closer towards the largest size, where the readings change fastest. */
const CLOSER = 1.5;

/** What each probe would read, in their order; undefined where it could not be read. */
export type Readings = readonly (number | undefined)[];

/** A cause at a place, from nothing wrong to its largest size; the same objects for the same place. */
const ladder = memoise((site: Site): readonly Fault[] =>
  Array.from({ length: SOLVED + 1 }, (_, k) => ({
    ...site,
    size: largest[site.cause] * (1 - (1 - k / SOLVED) ** CLOSER),
  })),
);

/** Readings with one fault in the scheme or none, really solved. */
export function readings(
  job: Job,
  schemeId: string,
  fault: Fault | null,
  probes: readonly Probe[],
): Readings {
  const seen = patient(job, schemeId, fault);
  return probes.map((probe) => seen.observe(probe));
}

/** Readings at one size of a cause. */
export interface Predicted {
  readonly size: number;
  readonly read: Readings;
}

/**
 * Readings with a cause at a place at `count` even sizes up to its largest: solved for real at 16 sizes and with
 * nothing wrong, on straight lines between. That is within 0.4 standard deviations of a reading on the example's
 * schemes; only a house so tight that hardly any air moves is read more coarsely.
 */
export function predicted(
  job: Job,
  schemeId: string,
  site: Site,
  probes: readonly Probe[],
  count: number,
): readonly Predicted[] {
  const solved = ladder(site).map((fault) => ({
    size: fault.size,
    read: readings(job, schemeId, fault, probes),
  }));
  let step = 1;
  return Array.from({ length: count }, (_, k) => {
    const size = (largest[site.cause] * (k + 1)) / count;
    while (step < SOLVED && (solved[step]?.size ?? size) < size) step++;
    const [a, b] = [solved[step - 1] as Predicted, solved[step] as Predicted];
    return { size, read: between(a, b, (size - a.size) / (b.size - a.size)) };
  });
}

function between(a: Predicted, b: Predicted, share: number): Readings {
  return a.read.map((low, i) => {
    const high = b.read[i];
    return low === undefined || high === undefined ? undefined : low + share * (high - low);
  });
}
