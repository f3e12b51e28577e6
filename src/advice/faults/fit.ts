import type { Job } from '../../graph/document.ts';
import { patient } from './observe.ts';
import { largest } from './sites.ts';
import { type Fault, type Measurement, type Site, spread } from './types.ts';

/** A cause at a place, at the size that misses the measurements least. */
export interface Fitted {
  /** Null where nothing is taken to be wrong. */
  readonly fault: Fault | null;
  /** Sum of squares of the misses in standard deviations. */
  readonly misfit: number;
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Sizes tried before the search closes in, and its steps then. */
const COARSE = 6;
const FINE = 8;

/** Misses of all measurements, in squares of their standard deviations; infinite where one cannot be predicted. */
export function misfitOf(
  job: Job,
  schemeId: string,
  fault: Fault | null,
  measured: readonly Measurement[],
): number {
  const seen = patient(job, schemeId, fault);
  let sum = 0;
  for (const one of measured) {
    const predicted = seen.observe(one);
    if (predicted === undefined) return Number.POSITIVE_INFINITY;
    sum += ((one.value - predicted) / spread(one.kind, one.value)) ** 2;
  }
  return sum;
}

/** The size of a cause at a place that fits all measurements best: least squares, by a scan and golden sections. */
export function fitSite(
  job: Job,
  schemeId: string,
  site: Site,
  measured: readonly Measurement[],
): Fitted & { readonly fault: Fault } {
  const most = largest[site.cause];
  const miss = (size: number) => misfitOf(job, schemeId, { ...site, size }, measured);
  let best = { size: 0, misfit: Number.POSITIVE_INFINITY };
  const step = most / COARSE;
  for (let k = 1; k <= COARSE; k++) {
    const size = k * step;
    const misfit = miss(size);
    if (misfit < best.misfit) best = { size, misfit };
  }
  let [low, high] = [Math.max(best.size - step, 1e-3), Math.min(best.size + step, most)];
  let [a, b] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atA, atB] = [miss(a), miss(b)];
  for (let k = 0; k < FINE; k++) {
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = miss(a);
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = miss(b);
    }
  }
  for (const [size, misfit] of [
    [a, atA],
    [b, atB],
  ] as const)
    if (misfit < best.misfit) best = { size, misfit };
  return { fault: { ...site, size: best.size }, misfit: best.misfit };
}
