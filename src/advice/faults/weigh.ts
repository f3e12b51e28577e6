import type { Job } from '../../graph/document.ts';
import { type Predicted, predicted, type Readings, readings } from './predicted.ts';
import { largest } from './sites.ts';
import {
  type CauseId,
  causeRow,
  type Fault,
  type Measurement,
  type Site,
  soundInCommon,
  spread,
} from './types.ts';

/** A cause at its likeliest place and size, or nothing wrong (`fault` null), weighed against the others. */
export interface Weighed {
  readonly fault: Fault | null;
  /** Against the other causes that were weighed, 0-1: a ranking, not a probability of the world. */
  readonly weight: number;
}

/** Sizes at which a cause is held against the measurements. */
const SIZES = 200;
/** Of a run as drawn, beside the plausibilities of the causes: as the commonest of them. Common practice. */
const NOTHING = 1;

/**
 * The causes by how well they explain what was measured, likeliest first (Bayes): each cause at every place where
 * it could be and at every size up to its largest, all equally likely beforehand, weighed by its plausibility. A
 * cause that explains the measurements only at one place and size out of many so counts for less than one that
 * explains them almost anyhow. What could not have been measured with a cause rules it out.
 */
export function weigh(
  job: Job,
  schemeId: string,
  sites: readonly Site[],
  measured: readonly Measurement[],
): readonly Weighed[] {
  const missOf = misfitTo(measured);
  const fits = sites.map((site) => fitSite(site, predicted(job, schemeId, site, measured, SIZES), missOf));
  const causes = [...new Set(sites.map(({ cause }) => cause))];
  const nothing = {
    fault: null,
    evidence: Math.log(NOTHING) - missOf(readings(job, schemeId, null, measured)) / 2,
  };
  const weighed = [nothing, ...causes.map((cause) => together(cause, fits))]
    .filter(({ evidence }) => Number.isFinite(evidence))
    .sort((a, b) => b.evidence - a.evidence);
  const total = sumInLogs(weighed.map(({ evidence }) => evidence));
  return weighed.map(({ fault, evidence }) => ({ fault, weight: Math.exp(evidence - total) }));
}

/** A cause at one place, at its best size. */
interface Fitted {
  readonly fault: Fault;
  /** Logarithm of the mean likelihood over the sizes. */
  readonly evidence: number;
}

function fitSite(site: Site, sizes: readonly Predicted[], missOf: (read: Readings) => number): Fitted {
  const misfits = sizes.map(({ read }) => missOf(read));
  const best = misfits.indexOf(Math.min(...misfits));
  return {
    fault: { ...site, size: sizes[best]?.size ?? largest[site.cause] },
    evidence: sumInLogs(misfits.map((each) => -each / 2)) - Math.log(SIZES),
  };
}

/** A cause over all its places, shown at the likeliest. */
function together(cause: CauseId, fits: readonly Fitted[]): Fitted {
  const own = fits.filter(({ fault }) => fault.cause === cause);
  const best = own.reduce((a, b) => (b.evidence > a.evidence ? b : a));
  const mean = sumInLogs(own.map(({ evidence }) => evidence)) - Math.log(own.length);
  return { fault: best.fault, evidence: mean + Math.log(causeRow(cause).plausibility) };
}

/**
 * Squares of what readings miss the measurements by, in standard deviations; infinite where one could not be read.
 * What the sound model is off by, it is off by at every speed alike, so that part is counted once.
 */
export function misfitTo(measured: readonly Measurement[]): (read: Readings) => number {
  const spreads = measured.map(({ kind, value }) => spread(kind, value));
  const sounds = measured.filter(({ kind }) => kind === 'sound').length;
  const common = (soundInCommon / spread('sound', 0)) ** 2;
  return (read) => {
    let sum = 0;
    let louder = 0;
    for (let i = 0; i < measured.length; i++) {
      const { kind, value } = measured[i] as Measurement;
      const expected = read[i];
      if (expected === undefined) return Number.POSITIVE_INFINITY;
      const miss = (value - expected) / (spreads[i] as number);
      sum += miss * miss;
      if (kind === 'sound') louder += miss;
    }
    return sum - (louder ** 2 * common) / (1 + sounds * common);
  };
}

/** Logarithm of a sum of numbers given by their logarithms. */
function sumInLogs(logs: readonly number[]): number {
  const most = Math.max(...logs);
  if (!Number.isFinite(most)) return most;
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}
