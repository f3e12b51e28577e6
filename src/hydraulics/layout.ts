/**
 * What is left of a network's graph once everything that needs no joint solve is taken out: edges
 * that lead nowhere carry nothing, and edges in series carry one flow.
 */
export interface Layout {
  /** Chain c is `edges[start[c]] … edges[start[c + 1] - 1]`, from node `from[c]` to node `to[c]`. */
  readonly start: Int32Array;
  /** Edge index times 2, plus 1 where the edge points against its chain. */
  readonly edges: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Edges that lead nowhere. */
  readonly blind: Int32Array;
  /**
   * One edge to every node without a given pressure, in an order in which the edge's near end is
   * always known: edge index times 2, plus 1 where it is walked from its `to` to its `from`.
   */
  readonly outward: Int32Array;
}

/** Edges around each node, as offsets into one list. */
export interface Incidence {
  readonly start: Int32Array;
  readonly edges: Int32Array;
}

export function incidence(nodeCount: number, from: Int32Array, to: Int32Array): Incidence {
  const start = new Int32Array(nodeCount + 1);
  const count = from.length;
  for (let e = 0; e < count; e++) {
    (start[(from[e] as number) + 1] as number) += 1;
    (start[(to[e] as number) + 1] as number) += 1;
  }
  for (let v = 0; v < nodeCount; v++) (start[v + 1] as number) += start[v] as number;
  const next = start.slice();
  const edges = new Int32Array(2 * count);
  for (let e = 0; e < count; e++) {
    const a = from[e] as number;
    const b = to[e] as number;
    edges[next[a] as number] = e;
    (next[a] as number) += 1;
    edges[next[b] as number] = e;
    (next[b] as number) += 1;
  }
  return { start, edges };
}

/**
 * Walks outward from the nodes of given pressure: the edges by which each other node is first
 * reached, and the number of a node that cannot be reached, or -1.
 */
export function walkOutward(
  fixed: Uint8Array,
  from: Int32Array,
  to: Int32Array,
  around: Incidence,
): { readonly outward: Int32Array; readonly unreached: number } {
  const nodeCount = fixed.length;
  const known = fixed.slice();
  const queue = new Int32Array(nodeCount);
  const outward = new Int32Array(nodeCount);
  let queued = 0;
  let walked = 0;
  for (let v = 0; v < nodeCount; v++) if (fixed[v] === 1) queue[queued++] = v;
  for (let i = 0; i < queued; i++) {
    const v = queue[i] as number;
    for (let k = around.start[v] as number; k < (around.start[v + 1] as number); k++) {
      const e = around.edges[k] as number;
      const against = from[e] === v ? 0 : 1;
      const w = (against ? from[e] : to[e]) as number;
      if (known[w] === 1) continue;
      known[w] = 1;
      queue[queued++] = w;
      outward[walked++] = 2 * e + against;
    }
  }
  return { outward: outward.subarray(0, walked), unreached: known.indexOf(0) };
}

/**
 * Lays a network out as chains between its ends and its junctions. `ends[v]` is 1 where the pressure of
 * node v is given or a flow is forced into it: nothing is pruned away from it, and no chain runs through.
 * A closed loop that hangs on one node is a chain from it to itself.
 */
export function layOut(
  ends: Uint8Array,
  from: Int32Array,
  to: Int32Array,
  around: Incidence,
  outward: Int32Array,
): Layout {
  const nodeCount = ends.length;
  const edgeCount = from.length;
  const degree = new Int32Array(nodeCount);
  for (let v = 0; v < nodeCount; v++)
    degree[v] = (around.start[v + 1] as number) - (around.start[v] as number);
  /** 0 leads nowhere, 1 to be laid out, 2 laid out in a loop of its own. */
  const state = new Uint8Array(edgeCount).fill(1);
  const otherEnd = (e: number, v: number): number => (from[e] === v ? to[e] : from[e]) as number;

  function nextEdge(v: number, seen: Uint8Array): number {
    const end = around.start[v + 1] as number;
    for (let i = around.start[v] as number; i < end; i++) {
      const e = around.edges[i] as number;
      if (state[e] === 1 && seen[e] === 0) return e;
    }
    return -1;
  }

  const unseen = new Uint8Array(edgeCount);
  function prune(): void {
    const leaves: number[] = [];
    for (let v = 0; v < nodeCount; v++) if (degree[v] === 1 && ends[v] === 0) leaves.push(v);
    for (let v = leaves.pop(); v !== undefined; v = leaves.pop()) {
      if (degree[v] !== 1) continue;
      const e = nextEdge(v, unseen);
      const w = otherEnd(e, v);
      state[e] = 0;
      degree[v] = 0;
      (degree[w] as number) -= 1;
      if (degree[w] === 1 && ends[w] === 0) leaves.push(w);
    }
  }

  const loops: { at: number; codes: number[] }[] = [];
  for (;;) {
    prune();
    const start: number[] = [0];
    const codes: number[] = [];
    const chainFrom: number[] = [];
    const chainTo: number[] = [];
    const seen = new Uint8Array(edgeCount);
    let setAside = false;
    for (let v = 0; v < nodeCount; v++) {
      if (ends[v] === 0 && (degree[v] as number) < 3) continue;
      for (let i = around.start[v] as number; i < (around.start[v + 1] as number); i++) {
        let edge = around.edges[i] as number;
        if (state[edge] !== 1 || seen[edge] === 1) continue;
        const first = codes.length;
        let at = v;
        do {
          seen[edge] = 1;
          codes.push(2 * edge + (from[edge] === at ? 0 : 1));
          at = otherEnd(edge, at);
          edge = ends[at] === 0 && degree[at] === 2 ? nextEdge(at, seen) : -1;
        } while (edge >= 0);
        if (at === v && ends[v] === 0) {
          const loop = codes.splice(first);
          for (const code of loop) state[code >> 1] = 2;
          (degree[v] as number) -= 2;
          loops.push({ at: v, codes: loop });
          setAside = true;
          continue;
        }
        chainFrom.push(v);
        chainTo.push(at);
        start.push(codes.length);
      }
    }
    if (setAside) continue;
    for (const loop of loops) {
      codes.push(...loop.codes);
      chainFrom.push(loop.at);
      chainTo.push(loop.at);
      start.push(codes.length);
    }
    return {
      start: new Int32Array(start),
      edges: new Int32Array(codes),
      from: new Int32Array(chainFrom),
      to: new Int32Array(chainTo),
      blind: Int32Array.from(from.keys()).filter((e) => state[e] === 0),
      outward,
    };
  }
}
