/** Pieces by their place in the list that was given, one list a stock length. */
export type Packing = readonly (readonly number[])[];

export interface Packed {
  readonly bins: Packing;
  /** True where fewer stock lengths are proved to be too few. */
  readonly proved: boolean;
}

/** Places tried in the exact search before the best known packing is taken. */
const usualLimit = 60_000;
/** Pieces beyond which the fullest-first rule is not tried: its work goes with their square. */
const mostFilled = 150;

/**
 * Packs pieces into as few stock lengths as can be found: first-fit, best-fit and fullest-first, each on pieces sorted
 * longest first, and where the lower bound leaves a doubt a branch and bound, exact unless it runs into `limit`. So
 * never more than first-fit decreasing takes, and the fewest for any small list. Among equals the packing
 * whose offcuts are gathered in the fewest pieces stands. Deterministic. Source of the lower bound: Martello and
 * Toth's L2 for bin packing (from memory); the tests hold it against an exhaustive search.
 *
 * @param sizes whole numbers from 1 to `capacity`
 * @throws RangeError for a size that is no whole number or does not fit
 */
export function packed(sizes: readonly number[], capacity: number, limit = usualLimit): Packed {
  for (const size of sizes)
    if (!Number.isInteger(size) || size < 1 || size > capacity)
      throw new RangeError(`a piece of ${size} does not fit a stock length of ${capacity}`);
  const order = sizes.map((_, i) => i).sort((a, b) => (sizes[b] ?? 0) - (sizes[a] ?? 0) || a - b);
  const sorted = order.map((i) => sizes[i] ?? 0);
  const least = lowerBound(sorted, capacity);
  const rules = [firstFit(sorted, capacity), bestFit(sorted, capacity)];
  if (sorted.length <= mostFilled) rules.push(fullestFirst(sorted, capacity));
  let best = rules.reduce((a, b) => (better(b, a, sorted, capacity) ? b : a), rules[0] ?? []);
  let proved = best.length <= least;
  if (!proved) {
    const found = exact(sorted, capacity, least, best.length, limit);
    if (found.bins) best = found.bins;
    proved = found.finished;
  }
  return { bins: best.map((bin) => bin.map((i) => order[i] ?? 0)), proved };
}

function better(a: Packing, b: Packing, sorted: readonly number[], capacity: number): boolean {
  const gathered = (bins: Packing) => bins.reduce((sum, bin) => sum + room(bin, sorted, capacity) ** 2, 0);
  return a.length !== b.length ? a.length < b.length : gathered(a) > gathered(b);
}

function room(bin: readonly number[], sorted: readonly number[], capacity: number): number {
  return bin.reduce((left, i) => left - (sorted[i] ?? 0), capacity);
}

/** First-fit decreasing: each piece into the first stock length with room for it. `sorted` longest first. */
export function firstFit(sorted: readonly number[], capacity: number): Packing {
  return fitted(sorted, capacity, (rooms, size) => rooms.findIndex((left) => left >= size));
}

/** Best-fit decreasing: each piece where it leaves least. */
function bestFit(sorted: readonly number[], capacity: number): Packing {
  return fitted(sorted, capacity, (rooms, size) => {
    let best = -1;
    rooms.forEach((left, k) => {
      if (left >= size && (best < 0 || left < (rooms[best] ?? 0))) best = k;
    });
    return best;
  });
}

function fitted(
  sorted: readonly number[],
  capacity: number,
  choose: (rooms: readonly number[], size: number) => number,
): Packing {
  const bins: number[][] = [];
  const rooms: number[] = [];
  sorted.forEach((size, i) => {
    const at = choose(rooms, size);
    if (at < 0) {
      bins.push([i]);
      rooms.push(capacity - size);
      return;
    }
    bins[at]?.push(i);
    rooms[at] = (rooms[at] ?? 0) - size;
  });
  return bins;
}

/** One stock length after the other, each round the longest piece left and filled as full as the rest can fill it. */
function fullestFirst(sorted: readonly number[], capacity: number): Packing {
  let rest = sorted.map((_, i) => i);
  const bins: number[][] = [];
  while (rest.length > 0) {
    const [longest = 0, ...others] = rest;
    const bin = [longest, ...fullest(others, sorted, capacity - (sorted[longest] ?? 0))];
    bins.push(bin);
    const taken = new Set(bin);
    rest = rest.filter((i) => !taken.has(i));
  }
  return bins;
}

/** The pieces that come nearest to filling a room, by the sums that can be reached: `last` is the piece added last. */
function fullest(pieces: readonly number[], sorted: readonly number[], space: number): number[] {
  const last = new Map<number, { readonly piece: number; readonly before: number }>();
  const sums = [0];
  for (const piece of pieces) {
    const size = sorted[piece] ?? 0;
    for (let k = sums.length - 1; k >= 0; k -= 1) {
      const before = sums[k] ?? 0;
      const sum = before + size;
      if (sum > space || last.has(sum)) continue;
      last.set(sum, { piece, before });
      sums.push(sum);
    }
    if (sums.length > 4000) break;
  }
  const chosen: number[] = [];
  for (let sum = Math.max(...sums); sum > 0; ) {
    const step = last.get(sum);
    if (!step) break;
    chosen.push(step.piece);
    sum = step.before;
  }
  return chosen;
}

/** L2: pieces of more than half a length stand alone; what the rest needs beyond the room beside them is added. */
function lowerBound(sorted: readonly number[], capacity: number): number {
  let most = Math.ceil(sorted.reduce((sum, size) => sum + size, 0) / capacity);
  for (const small of [0, ...sorted.filter((size) => 2 * size <= capacity)]) {
    let alone = 0;
    let half = 0;
    let beside = 0;
    let rest = 0;
    for (const size of sorted) {
      if (size > capacity - small) alone += 1;
      else if (2 * size > capacity) {
        half += 1;
        beside += capacity - size;
      } else if (size >= small) rest += size;
    }
    most = Math.max(most, alone + half + Math.max(0, Math.ceil((rest - beside) / capacity)));
  }
  return most;
}

/**
 * Depth first: the longest piece that is left goes into each stock length that is begun, those with the same room
 * counted once, or begins one. Branches that cannot end below the best known are cut.
 */
function exact(
  sorted: readonly number[],
  capacity: number,
  least: number,
  known: number,
  limit: number,
): { readonly bins: Packing | null; readonly finished: boolean } {
  const rooms: number[] = [];
  const bins: number[][] = [];
  const after = new Array<number>(sorted.length + 1).fill(0);
  for (let i = sorted.length - 1; i >= 0; i -= 1) after[i] = (after[i + 1] ?? 0) + (sorted[i] ?? 0);
  const shortest = sorted.at(-1) ?? 0;
  let best: Packing | null = null;
  let count = known;
  let tried = 0;

  const place = (i: number, from: number): boolean => {
    if (i === sorted.length) {
      best = bins.map((bin) => [...bin]);
      count = bins.length;
      return count <= least;
    }
    const usable = rooms.reduce((sum, left) => sum + (left >= shortest ? left : 0), 0);
    if (rooms.length + Math.ceil(Math.max(0, (after[i] ?? 0) - usable) / capacity) >= count) return false;
    const size = sorted[i] ?? 0;
    const alike = sorted[i + 1] === size;
    const seen = new Set<number>();
    for (let k = from; k <= bins.length; k += 1) {
      const begun = k < bins.length;
      const left = begun ? (rooms[k] ?? 0) : capacity;
      if (left < size || seen.has(left) || (!begun && bins.length + 1 >= count)) continue;
      seen.add(left);
      tried += 1;
      if (tried > limit) return true;
      if (!begun) bins.push([]);
      bins[k]?.push(i);
      rooms[k] = left - size;
      const stop = place(i + 1, alike ? k : 0);
      bins[k]?.pop();
      rooms[k] = left;
      if (!begun) {
        bins.pop();
        rooms.pop();
      }
      if (stop) return true;
    }
    return false;
  };
  place(0, 0);
  return { bins: best, finished: tried <= limit };
}
