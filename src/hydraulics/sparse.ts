/**
 * Symmetric positive definite systems with the sparsity of a graph: the order of elimination and
 * the pattern of the factor are found once, the numbers may then change as often as they like.
 */
export interface Factor {
  readonly size: number;
  /** Position of each unknown in the order of elimination. */
  readonly position: Int32Array;
  /** Where the entry of each link goes in `off`; links between the same two unknowns share one. */
  readonly slot: Int32Array;
  /** To be filled before {@link factorize}: the entries off the diagonal, by slot. */
  readonly off: Float64Array;
  /** Upper triangle by column: the rows of column k; entry p comes from slot p. */
  readonly upperStart: Int32Array;
  readonly upperRow: Int32Array;
  readonly parent: Int32Array;
  readonly lowerStart: Int32Array;
  readonly lowerRow: Int32Array;
  readonly lower: Float64Array;
  readonly pivot: Float64Array;
  readonly work: Float64Array;
  readonly filled: Int32Array;
  readonly mark: Int32Array;
  readonly pattern: Int32Array;
}

/**
 * Order that eliminates the unknowns with the fewest links first, as elimination goes on: leaves
 * before their stems, so that a tree fills in nothing and takes linear time.
 */
export function minimumDegreeOrder(size: number, from: Int32Array, to: Int32Array): Int32Array {
  const order = new Int32Array(size);
  const degree = new Int32Array(size);
  /** Exclusive or of all neighbours: a leaf's is its one neighbour. */
  const neighbour = new Int32Array(size);
  for (let l = 0; l < from.length; l++) {
    const u = from[l] as number;
    const v = to[l] as number;
    (degree[u] as number) += 1;
    (degree[v] as number) += 1;
    (neighbour[u] as number) ^= v;
    (neighbour[v] as number) ^= u;
  }
  const gone = new Uint8Array(size);
  let done = 0;
  for (let s = 0; s < size; s++) {
    for (let v = s; gone[v] === 0 && (degree[v] as number) <= 1; ) {
      gone[v] = 1;
      order[done++] = v;
      if (degree[v] === 0) break;
      const w = neighbour[v] as number;
      (degree[w] as number) -= 1;
      (neighbour[w] as number) ^= v;
      v = w;
    }
  }
  if (done < size) orderCore(order, done, gone, from, to);
  return order;
}

/** Minimum degree on what is left when the trees are gone, with the fill of each step drawn in. */
function orderCore(
  order: Int32Array,
  done: number,
  gone: Uint8Array,
  from: Int32Array,
  to: Int32Array,
): void {
  const size = gone.length;
  const links = new Map<number, Set<number>>();
  for (let v = 0; v < size; v++) if (gone[v] === 0) links.set(v, new Set());
  for (let l = 0; l < from.length; l++) {
    const [u, v] = [from[l] as number, to[l] as number];
    if (gone[u] === 1 || gone[v] === 1 || u === v) continue;
    links.get(u)?.add(v);
    links.get(v)?.add(u);
  }
  const buckets: number[][] = [];
  const put = (v: number, degree: number): void => {
    while (buckets.length <= degree) buckets.push([]);
    (buckets[degree] as number[]).push(v);
  };
  for (const [v, around] of links) put(v, around.size);
  for (let least = 0; least < buckets.length; ) {
    const v = (buckets[least] as number[]).pop();
    if (v === undefined) {
      least++;
      continue;
    }
    const around = links.get(v);
    if (around === undefined || around.size !== least) continue;
    links.delete(v);
    order[done++] = v;
    for (const u of around) {
      const mine = links.get(u) as Set<number>;
      mine.delete(v);
      for (const w of around) if (w !== u) mine.add(w);
    }
    for (const u of around) {
      const degree = (links.get(u) as Set<number>).size;
      put(u, degree);
      least = Math.min(least, degree);
    }
  }
}

/** Finds the elimination order, the elimination tree and the factor's pattern for links `from[l]`-`to[l]`. */
export function analyse(size: number, from: Int32Array, to: Int32Array): Factor {
  const order = minimumDegreeOrder(size, from, to);
  const position = new Int32Array(size);
  for (let k = 0; k < size; k++) position[order[k] as number] = k;

  const count = from.length;
  const rawStart = new Int32Array(size + 1);
  for (let l = 0; l < count; l++) (rawStart[columnOf(l) + 1] as number) += 1;
  for (let k = 0; k < size; k++) (rawStart[k + 1] as number) += rawStart[k] as number;
  const next = rawStart.slice();
  const byColumn = new Int32Array(count);
  for (let l = 0; l < count; l++) {
    const k = columnOf(l);
    byColumn[next[k] as number] = l;
    (next[k] as number) += 1;
  }

  const slot = new Int32Array(count);
  const upperStart = new Int32Array(size + 1);
  const upperRow = new Int32Array(count);
  const slotOfRow = new Int32Array(size).fill(-1);
  const parent = new Int32Array(size).fill(-1);
  const mark = new Int32Array(size).fill(-1);
  const lowerStart = new Int32Array(size + 1);
  let used = 0;
  for (let k = 0; k < size; k++) {
    const begin = used;
    upperStart[k] = begin;
    mark[k] = k;
    for (let p = rawStart[k] as number; p < (rawStart[k + 1] as number); p++) {
      const l = byColumn[p] as number;
      const row = Math.min(position[from[l] as number] as number, position[to[l] as number] as number);
      const known = slotOfRow[row] as number;
      if (known >= begin) {
        slot[l] = known;
        continue;
      }
      slotOfRow[row] = used;
      slot[l] = used;
      upperRow[used] = row;
      used += 1;
      for (let i = row; mark[i] !== k; i = parent[i] as number) {
        mark[i] = k;
        (lowerStart[i + 1] as number) += 1;
        if (parent[i] === -1) parent[i] = k;
      }
    }
  }
  upperStart[size] = used;
  for (let k = 0; k < size; k++) (lowerStart[k + 1] as number) += lowerStart[k] as number;
  const fill = lowerStart[size] as number;

  function columnOf(l: number): number {
    return Math.max(position[from[l] as number] as number, position[to[l] as number] as number);
  }

  return {
    size,
    position,
    slot,
    off: new Float64Array(used),
    upperStart,
    upperRow: upperRow.subarray(0, used),
    parent,
    lowerStart,
    lowerRow: new Int32Array(fill),
    lower: new Float64Array(fill),
    pivot: new Float64Array(size),
    work: new Float64Array(size),
    filled: new Int32Array(size),
    mark,
    pattern: new Int32Array(size),
  };
}

/**
 * LDLᵀ of the matrix with `diagonal` (in elimination order) and `off`, row by row along the elimination tree. False where a
 * pivot is not above zero, which for a weighted Laplacian with grounded nodes means bad numbers.
 */
export function factorize(f: Factor, diagonal: Float64Array): boolean {
  const {
    size,
    upperStart,
    upperRow,
    off,
    parent,
    lowerStart,
    lowerRow,
    lower,
    pivot,
    work,
    filled,
    mark,
    pattern,
  } = f;
  mark.fill(-1);
  filled.fill(0);
  for (let k = 0; k < size; k++) {
    let top = size;
    mark[k] = k;
    for (let p = upperStart[k] as number; p < (upperStart[k + 1] as number); p++) {
      let i = upperRow[p] as number;
      work[i] = off[p] as number;
      let length = 0;
      for (; mark[i] !== k; i = parent[i] as number) {
        pattern[length++] = i;
        mark[i] = k;
      }
      while (length > 0) pattern[--top] = pattern[--length] as number;
    }
    let d = diagonal[k] as number;
    for (; top < size; top++) {
      const i = pattern[top] as number;
      const y = work[i] as number;
      work[i] = 0;
      const begin = lowerStart[i] as number;
      const end = begin + (filled[i] as number);
      for (let p = begin; p < end; p++) {
        const row = lowerRow[p] as number;
        work[row] = (work[row] as number) - (lower[p] as number) * y;
      }
      const l = y / (pivot[i] as number);
      d -= l * y;
      lowerRow[end] = k;
      lower[end] = l;
      filled[i] = (filled[i] as number) + 1;
    }
    if (!(d > 0)) return false;
    pivot[k] = d;
  }
  return true;
}

/** Solves in place for the first `size` of `x`, in elimination order, with the last factors. */
export function solveFactored(f: Factor, x: Float64Array): void {
  const { size, lowerStart, lowerRow, lower, pivot } = f;
  for (let k = 0; k < size; k++) {
    const y = x[k] as number;
    for (let p = lowerStart[k] as number; p < (lowerStart[k + 1] as number); p++) {
      const row = lowerRow[p] as number;
      x[row] = (x[row] as number) - (lower[p] as number) * y;
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    let y = (x[k] as number) / (pivot[k] as number);
    for (let p = lowerStart[k] as number; p < (lowerStart[k + 1] as number); p++)
      y -= (lower[p] as number) * (x[lowerRow[p] as number] as number);
    x[k] = y;
  }
}
