import type { Job } from '../../graph/document.ts';
import { memoise } from '../../graph/memo.ts';
import { type Patient, patient } from './observe.ts';
import { largest } from './sites.ts';
import { type Fault, type Measurement, type Site, spread } from './types.ts';

/** A cause at a place, at the size that misses the measurements least. */
export interface Fitted {
  /** Null where nothing is taken to be wrong. */
  readonly fault: Fault | null;
  /** Sum of squares of the misses in standard deviations. */
  readonly misfit: number;
}

/** Sizes tried before the search closes in, and its steps then. */
const COARSE = 6;
const FINE = 4;
/** Places of a parabola that are looked at: arithmetic only. */
const PLACES = 200;

/** Misses of all measurements, in squares of their standard deviations; infinite where one cannot be predicted. */
export function misfitOf(
  job: Job,
  schemeId: string,
  fault: Fault | null,
  measured: readonly Measurement[],
): number {
  return missOf(readingsOf(patient(job, schemeId, fault), measured), measured);
}

type Readings = readonly (number | undefined)[];

function readingsOf(seen: Patient, measured: readonly Measurement[]): Readings {
  return measured.map((one) => seen.observe(one));
}

function missOf(readings: Readings, measured: readonly Measurement[]): number {
  return measured.reduce((sum, one, i) => {
    const predicted = readings[i];
    return predicted === undefined
      ? Number.POSITIVE_INFINITY
      : sum + ((one.value - predicted) / spread(one.kind, one.value)) ** 2;
  }, 0);
}

/** A size that was solved, with what the instruments would read. */
interface Tried {
  readonly size: number;
  readonly readings: Readings;
  readonly misfit: number;
}

/** The sizes of the first scan do not hang on what was measured, so one scheme's are solved once. */
const scanned = memoise(
  (
    job: Job,
    schemeId: string,
    cause: Site['cause'],
    node: string | undefined,
    segment: string | undefined,
    along: number | undefined,
    size: number,
  ): Patient =>
    patient(job, schemeId, {
      cause,
      size,
      ...(node !== undefined && { node }),
      ...(segment !== undefined && { segment }),
      ...(along !== undefined && { along }),
    }),
);

/**
 * The size of a cause at a place that fits all measurements best, by least squares: a scan from nothing wrong to
 * the largest size, then steps to where parabolas through the readings of the three nearest sizes say that the
 * misses are least. Every size that is stepped to is solved for real, and the best of those solved is given.
 */
export function fitSite(
  job: Job,
  schemeId: string,
  site: Site,
  measured: readonly Measurement[],
): Fitted & { readonly fault: Fault } {
  const most = largest[site.cause];
  const { cause, node, segment, along } = site;
  const seen = (size: number, by: Patient): Tried => {
    const readings = readingsOf(by, measured);
    return { size, readings, misfit: missOf(readings, measured) };
  };
  const sizes = Array.from({ length: COARSE + 1 }, (_, k) => (k * most) / COARSE);
  let tried = sizes
    .map((size) => seen(size, scanned(job, schemeId, cause, node, segment, along, size)))
    .filter(({ misfit }) => Number.isFinite(misfit));
  for (let k = 0; k < FINE; k++) {
    const size = likeliest(tried, measured);
    if (size === null) break;
    const next = seen(size, patient(job, schemeId, { ...site, size }));
    if (!Number.isFinite(next.misfit)) break;
    tried = [...tried, next].sort((a, b) => a.size - b.size);
  }
  const best = leastOf(tried.filter(({ size }) => size > 0));
  return { fault: { ...site, size: best?.size ?? most }, misfit: best?.misfit ?? Number.POSITIVE_INFINITY };
}

function leastOf(tried: readonly Tried[]): Tried | undefined {
  return tried.reduce<Tried | undefined>(
    (best, one) => (best && best.misfit <= one.misfit ? best : one),
    undefined,
  );
}

/** Where the three sizes around the best one put the least misses; null where that is a size already tried. */
function likeliest(tried: readonly Tried[], measured: readonly Measurement[]): number | null {
  const best = leastOf(tried);
  if (!best) return null;
  const first = Math.min(Math.max(tried.indexOf(best) - 1, 0), tried.length - 3);
  const [a, b, c] = tried.slice(Math.max(first, 0), first + 3);
  if (!a || !b || !c) return null;
  const width = (c.size - a.size) / PLACES;
  let least = { size: best.size, misfit: Number.POSITIVE_INFINITY };
  for (let k = 1; k < PLACES; k++) {
    const size = a.size + k * width;
    const readings = measured.map((_, i) => parabola(size, a, b, c, i));
    const misfit = missOf(readings, measured);
    if (misfit < least.misfit) least = { size, misfit };
  }
  return tried.some(({ size }) => Math.abs(size - least.size) < width / 2) ? null : least.size;
}

/** The `i`th reading at a size, on the parabola through three (Lagrange). */
function parabola(x: number, a: Tried, b: Tried, c: Tried, i: number): number | undefined {
  const [p, q, r] = [a.readings[i], b.readings[i], c.readings[i]];
  if (p === undefined || q === undefined || r === undefined) return undefined;
  return (
    (p * (x - b.size) * (x - c.size)) / ((a.size - b.size) * (a.size - c.size)) +
    (q * (x - a.size) * (x - c.size)) / ((b.size - a.size) * (b.size - c.size)) +
    (r * (x - a.size) * (x - b.size)) / ((c.size - a.size) * (c.size - b.size))
  );
}
