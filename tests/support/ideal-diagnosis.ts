import { onlyAir, patient } from '../../src/advice/faults/observe.ts';
import { type CauseId, type Probe, soundInCommon, spread } from '../../src/advice/faults/types.ts';
import { example, kinds, type Measured, type SchemeId, sitesIn, sizes } from './planted-faults.ts';

/** Sizes of each planted range that are solved. */
const STEPS = 40;

/**
 * The best that anybody could do with the same readings: Bayes' rule with how the faults were planted (their kinds,
 * places and ranges of size), and with what the instruments are off by at each true value. Nothing is shared with
 * the program's own weighing but the solved network.
 *
 * @returns the causes of a planted fault, likeliest first
 */
export function idealDiagnosis(
  probes: (schemeId: SchemeId) => readonly Probe[],
): (planted: Measured) => readonly CauseId[] {
  const tables = { wall: table('wall', probes('wall')), roof: table('roof', probes('roof')) };
  return ({ schemeId, measured }) => {
    const likelihood = (cause: CauseId) => {
      const own = tables[schemeId].filter((each) => each.cause === cause);
      const terms = own.flatMap(({ expected }) =>
        expected.map((values) => Math.exp(logLikelihood(values, measured))),
      );
      return terms.length === 0 ? 0 : terms.reduce((sum, term) => sum + term, 0) / terms.length;
    };
    const found = kinds.map((cause) => [cause, likelihood(cause)] as const);
    return found.sort((a, b) => b[1] - a[1]).map(([cause]) => cause);
  };
}

/** What each place would read over the sizes that are planted there. */
function table(schemeId: SchemeId, probes: readonly Probe[]) {
  return sitesIn(schemeId).map((site) => {
    const [low, high] = sizes[site.cause];
    const expected = Array.from({ length: STEPS }, (_, k) => {
      const fault = { ...site, size: low + ((high - low) * (k + 0.5)) / STEPS };
      const seen = patient(onlyAir(example, schemeId), schemeId, fault);
      return probes.map((probe) => seen.observe(probe) ?? Number.NaN);
    });
    return { cause: site.cause, expected };
  });
}

/** Of independent normal errors; those of sound, which share a part, by their mean and what they differ from it by. */
function logLikelihood(expected: readonly number[], measured: Measured['measured']): number {
  let sum = 0;
  const sounds: number[] = [];
  for (const [i, { kind, value }] of measured.entries()) {
    const right = expected[i] ?? Number.NaN;
    const deviation = spread(kind, right);
    if (kind === 'sound') sounds.push(value - right);
    else sum -= ((value - right) / deviation) ** 2 / 2 + Math.log(deviation);
  }
  if (sounds.length === 0) return sum;
  const own = spread('sound', 0) ** 2;
  const mean = sounds.reduce((all, each) => all + each, 0) / sounds.length;
  const apart = sounds.reduce((all, each) => all + (each - mean) ** 2, 0);
  return sum - apart / (2 * own) - mean ** 2 / (2 * (soundInCommon ** 2 + own / sounds.length));
}
