/** A binary heap of whole numbers by cost, the least first; of equal costs the one with the greater `depth`. */
export class Heap {
  private costs = new Float64Array(1024);
  private depths = new Float64Array(1024);
  private items = new Int32Array(1024);
  size = 0;

  push(cost: number, depth: number, item: number): void {
    if (this.size === this.items.length) this.grow();
    let at = this.size;
    this.size += 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (!this.before(cost, depth, parent)) break;
      this.copy(parent, at);
      at = parent;
    }
    this.put(at, cost, depth, item);
  }

  /** Cost of the least; infinite where there is none. */
  get least(): number {
    return this.size > 0 ? (this.costs[0] as number) : Number.POSITIVE_INFINITY;
  }

  /** Takes the least out; call it only where `size` is above 0. */
  pop(): number {
    const top = this.items[0] as number;
    this.size -= 1;
    const last = this.size;
    if (last === 0) return top;
    const cost = this.costs[last] as number;
    const depth = this.depths[last] as number;
    const item = this.items[last] as number;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= last) break;
      if (
        child + 1 < last &&
        this.before(this.costs[child + 1] as number, this.depths[child + 1] as number, child)
      )
        child += 1;
      if (this.before(cost, depth, child)) break;
      this.copy(child, at);
      at = child;
    }
    this.put(at, cost, depth, item);
    return top;
  }

  private before(cost: number, depth: number, at: number): boolean {
    const other = this.costs[at] as number;
    return cost < other || (cost === other && depth > (this.depths[at] as number));
  }

  private copy(from: number, to: number): void {
    this.put(to, this.costs[from] as number, this.depths[from] as number, this.items[from] as number);
  }

  private put(at: number, cost: number, depth: number, item: number): void {
    this.costs[at] = cost;
    this.depths[at] = depth;
    this.items[at] = item;
  }

  private grow(): void {
    const wider = <T extends Float64Array | Int32Array>(from: T, to: T): T => {
      to.set(from);
      return to;
    };
    const length = 2 * this.items.length;
    this.costs = wider(this.costs, new Float64Array(length));
    this.depths = wider(this.depths, new Float64Array(length));
    this.items = wider(this.items, new Int32Array(length));
  }
}
