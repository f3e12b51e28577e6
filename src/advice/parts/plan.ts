import type { Job } from '../../graph/document.ts';
import { inferRoute, schemeOf } from '../../graph/infer.ts';
import { memoise } from '../../graph/memo.ts';
import type { Route } from '../../graph/route.ts';
import type { Section } from '../../hydraulics/types.ts';
import type { Make } from './makes.ts';
import { packed } from './packing.ts';
import { type Run, runOf, type Span } from './spans.ts';

/** Lengths are cut and compared to a tenth of a millimetre. */
const perMetre = 1e4;

/** A piece of duct to be cut. */
export interface Cut {
  /** As cut, m: with what goes into its neighbours. */
  readonly length: number;
  /** What it covers, m. */
  readonly covers: number;
  /** The legs that it comes to lie in. */
  readonly segments: readonly string[];
}

/** One stock length with what is cut from it, the longest first. */
export interface Bar {
  readonly cuts: readonly Cut[];
  /** What is left over, m. */
  readonly offcut: number;
}

/** How the duct of one size and material is cut from stock lengths. */
export interface CuttingPlan {
  /** The part that it is: `duct/galvanized/round-203`. */
  readonly key: string;
  readonly section: Section;
  readonly material: string;
  readonly make: Make;
  /** Stock length, m, and whether the job says so itself. */
  readonly stock: number;
  readonly own: boolean;
  readonly bars: readonly Bar[];
  /** Metres bought, metres in pieces, and the share of what is bought that is in no piece. */
  readonly bought: number;
  readonly used: number;
  readonly waste: number;
  /** True where fewer stock lengths are proved to be too few for these pieces. */
  readonly proved: boolean;
}

/** The cutting plans of a scheme, with what else its run is made of. */
export interface Cutting extends Run {
  readonly route: Route;
  readonly plans: readonly CuttingPlan[];
  /** Joints between two lengths of one span, by its part key. */
  readonly between: ReadonlyMap<string, number>;
}

/**
 * Cuts the straight duct of a scheme from stock lengths, by size and material, in the order of the air. Each span is
 * made of as few pieces as can cover it, whole lengths first; what is left of one length serves other spans. See
 * `packed` for how few lengths that takes. Stock lengths are the job's own by part key, else the usual ones of
 * `shared/supports.json` (common practice). Repeated calls are free.
 *
 * @throws RangeError if the job has no scheme of that id
 */
export function cuttingOf(job: Job, schemeId: string): Cutting {
  return cut(inferRoute(job, schemeId), schemeOf(job, schemeId), job.stock);
}

const cut = memoise((route: Route, scheme: Job['schemes'][number], stock: Job['stock']): Cutting => {
  const run = runOf(route, scheme);
  const byKey = new Map<string, Span[]>();
  for (const span of run.spans) byKey.set(span.key, [...(byKey.get(span.key) ?? []), span]);
  const between = new Map<string, number>();
  const plans = [...byKey].map(([key, spans]) => {
    const length = stock?.[key];
    const pieces = spans.map((span) => piecesOf(span, length ?? span.make.length));
    between.set(
      key,
      pieces.reduce((sum, { length: count }) => sum + count - 1, 0),
    );
    return planOf(key, spans[0] as Span, pieces.flat(), length);
  });
  return { ...run, route, plans, between };
});

/**
 * The pieces that cover a span: whole stock lengths and the rest of it. A rest shorter than the least piece that is cut
 * takes what it lacks from the length before it.
 */
export function piecesOf({ length, legs, make }: Span, stock: number): Cut[] {
  const { lap, leastPiece } = make;
  const most = Math.max(stock - lap, stock / 2);
  const count = Math.max(1, Math.ceil(length / most - 1e-6));
  const rest = length - (count - 1) * most;
  const short = count > 1 ? Math.max(0, Math.min(leastPiece, length / count) - rest) : 0;
  const covers = Array.from({ length: count }, (_, i) =>
    i === count - 1 ? rest + short : i === count - 2 ? most - short : most,
  );
  let at = 0;
  return covers.map((covered) => {
    const segments = within(legs, at, at + covered);
    at += covered;
    return { length: Math.min(stock, covered + lap), covers: covered, segments };
  });
}

/** The legs that a stretch of a span lies in. */
function within(legs: Span['legs'], start: number, end: number): string[] {
  const found: string[] = [];
  let at = 0;
  for (const { segment, length } of legs) {
    if (at < end - 1e-6 && at + length > start + 1e-6) found.push(segment);
    at += length;
  }
  return [...new Set(found)];
}

function planOf(
  key: string,
  { section, material, make }: Span,
  cuts: readonly Cut[],
  own: number | undefined,
): CuttingPlan {
  const stock = own ?? make.length;
  const kerf = Math.round(make.kerf * perMetre);
  const sizes = cuts.map(({ length }) => Math.max(1, Math.round(length * perMetre)) + kerf);
  // One kerf more than the stock has: the last piece of a length that is used up needs no cut.
  const { bins, proved } = packed(sizes, Math.round(stock * perMetre) + kerf);
  const bars = bins
    .map((bin): Bar => {
      const of = bin.map((i) => cuts[i] as Cut).sort((a, b) => b.length - a.length);
      const taken = of.reduce((sum, { length }) => sum + length, 0);
      const left = stock - taken;
      const sawn = make.kerf * (left > make.kerf ? of.length : of.length - 1);
      return { cuts: of, offcut: Math.max(0, left - sawn) };
    })
    .sort((a, b) => a.offcut - b.offcut);
  const bought = bars.length * stock;
  const used = cuts.reduce((sum, { length }) => sum + length, 0);
  return {
    key,
    section,
    material,
    make,
    stock,
    own: own !== undefined,
    bars,
    bought,
    used,
    waste: bought > 0 ? Math.max(0, 1 - used / bought) : 0,
    proved,
  };
}
