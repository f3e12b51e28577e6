/** What thinning looks at in a version. */
export interface Dated {
  readonly id: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Kept on purpose: never dropped here. */
  readonly kept: boolean;
  /** Bytes, near enough. */
  readonly size: number;
}

export interface Thinning {
  /** From this age on, ms, only the newest of each stretch of `every` ms stays. Youngest first. */
  readonly steps: readonly { readonly from: number; readonly every: number }[];
  /** Versions older than this, ms, go. */
  readonly longest: number;
  /** At most so many stay, and so many bytes, not counting those kept on purpose. */
  readonly most: number;
  readonly bytes: number;
}

const minute = 60_000;
const hour = 60 * minute;
const day = 24 * hour;

/**
 * All of the last hour, one a quarter of an hour for the rest of half a day, one an hour for two days, one a day
 * for a month, one a week for a year. Each stretch is a multiple of the one before, so that thinning often
 * leaves what thinning once would. Common practice of backups; the figures are this program's own.
 */
export const usualThinning: Thinning = {
  steps: [
    { from: hour, every: hour / 4 },
    { from: day / 2, every: hour },
    { from: 2 * day, every: day },
    { from: 30 * day, every: 7 * day },
  ],
  longest: 365 * day,
  most: 120,
  bytes: 24e6,
};

/**
 * The ids of the versions of one job that can go. The newest always stays, and so does what was kept on
 * purpose. Where there are too many, or they are too large together, the oldest go first.
 */
export function thinned(versions: readonly Dated[], now: number, how: Thinning = usualThinning): string[] {
  const newestFirst = [...versions].sort((a, b) => b.at - a.at);
  const stretches = new Set<string>();
  const dropped: string[] = [];
  let [count, bytes] = [0, 0];
  let full = false;
  newestFirst.forEach(({ id, at, kept, size }, i) => {
    const age = now - at;
    const step = how.steps.findLast(({ from }) => age >= from);
    // Every newer version counts as the newest of its stretches, whatever its own age asks of it.
    const first = step ? !stretches.has(stretch(at, step.every)) : true;
    for (const { every } of how.steps) stretches.add(stretch(at, every));
    if (kept) return;
    const wanted = i === 0 || (first && age <= how.longest);
    if (wanted && i > 0) full ||= count >= how.most || bytes + size > how.bytes;
    if (!wanted || full) {
      dropped.push(id);
      return;
    }
    count += 1;
    bytes += size;
  });
  return dropped;
}

function stretch(at: number, every: number): string {
  return `${every}:${Math.floor(at / every)}`;
}
