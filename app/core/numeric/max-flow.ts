// Largest flow through a grid with eight neighbours a node, and with it the cheapest cut.
// Source: Boykov, Kolmogorov, 'An Experimental Comparison of Min-Cut/Max-Flow Algorithms for Energy
// Minimization in Vision', 2004: two search trees that are kept and mended after every path.

export interface FlowGrid {
  /** Per node and direction (see open-cells): the node there, -1 for none. Way back of d is 7 - d. */
  readonly neighbours: Int32Array;
  /** Per node and direction: what can flow that way; both ways are used up. Whole numbers. */
  readonly capacities: Int32Array;
  /** Per node: above 0 what it can take from the source, below 0 what it can give to the sink. */
  readonly excess: Int32Array;
}

const free = 0;
const source = 1;
const sink = 2;
/** Instead of an arc to a parent. */
const terminal = -1;
const none = -2;

class Flow {
  readonly #neighbours: Int32Array;
  readonly #capacities: Int32Array;
  readonly #excess: Int32Array;
  readonly tree: Uint8Array;
  /** Arc from a node to its parent. */
  readonly #parents: Int32Array;
  readonly #distances: Int32Array;
  readonly #stamps: Int32Array;
  #time = 0;
  readonly #active: number[] = [];
  readonly #waits: Uint8Array;
  readonly #orphans: number[] = [];

  constructor({ neighbours, capacities, excess }: FlowGrid) {
    const count = excess.length;
    this.#neighbours = neighbours;
    this.#capacities = capacities;
    this.#excess = excess;
    this.tree = new Uint8Array(count);
    this.#parents = new Int32Array(count).fill(none);
    this.#distances = new Int32Array(count);
    this.#stamps = new Int32Array(count);
    this.#waits = new Uint8Array(count);
    for (let node = 0; node < count; node++) {
      const own = excess[node];
      if (own === 0) continue;
      this.tree[node] = own > 0 ? source : sink;
      this.#parents[node] = terminal;
      this.#distances[node] = 1;
      this.#wait(node);
    }
  }

  #wait(node: number): void {
    if (this.#waits[node]) return;
    this.#waits[node] = 1;
    this.#active.push(node);
  }

  #back(arc: number): number {
    return this.#neighbours[arc] * 8 + 7 - (arc & 7);
  }

  run(): void {
    for (let at = 0; at < this.#active.length; at++) {
      const node = this.#active[at];
      this.#waits[node] = 0;
      while (this.#parents[node] !== none) {
        const bridge = this.#grow(node);
        if (bridge === none) break;
        this.#time++;
        this.#augment(bridge);
        this.#adopt();
      }
      // What is done is dropped now and then, or the list would hold every visit.
      if (at > 65_536) {
        this.#active.splice(0, at + 1);
        at = -1;
      }
    }
  }

  /** Lets the node's tree grow; answers an arc from the source's tree to the sink's when they meet. */
  #grow(node: number): number {
    const own = this.tree[node];
    for (let arc = node * 8; arc < node * 8 + 8; arc++) {
      const other = this.#neighbours[arc];
      if (other < 0) continue;
      const back = this.#back(arc);
      if (this.#capacities[own === source ? arc : back] === 0) continue;
      if (this.tree[other] === free) {
        this.tree[other] = own as number;
        this.#parents[other] = back;
        this.#stamps[other] = this.#stamps[node];
        this.#distances[other] = this.#distances[node] + 1;
        this.#wait(other);
      } else if (this.tree[other] !== own) {
        return own === source ? arc : back;
      } else if (
        this.#stamps[other] <= this.#stamps[node] &&
        this.#distances[other] > this.#distances[node]
      ) {
        this.#parents[other] = back; // a shorter way to the root
        this.#stamps[other] = this.#stamps[node];
        this.#distances[other] = this.#distances[node] + 1;
      }
    }
    return none;
  }

  /** The nodes from one end of the bridge up to the root; answers the least that can flow on the way. */
  #least(from: number, towardsSink: boolean, start: number): number {
    let least = start;
    let node = from;
    for (;;) {
      const arc = this.#parents[node];
      if (arc === terminal) return Math.min(least, Math.abs(this.#excess[node]));
      least = Math.min(least, this.#capacities[towardsSink ? arc : this.#back(arc)]);
      node = this.#neighbours[arc];
    }
  }

  #push(from: number, towardsSink: boolean, flow: number): void {
    let node = from;
    for (;;) {
      const arc = this.#parents[node];
      if (arc === terminal) {
        this.#excess[node] = this.#excess[node] + (towardsSink ? flow : -flow);
        if (this.#excess[node] === 0) this.#lose(node);
        return;
      }
      const back = this.#back(arc);
      const along = towardsSink ? arc : back;
      const against = towardsSink ? back : arc;
      this.#capacities[along] = this.#capacities[along] - flow;
      this.#capacities[against] = this.#capacities[against] + flow;
      if (this.#capacities[along] === 0) this.#lose(node);
      node = this.#neighbours[arc];
    }
  }

  #lose(node: number): void {
    this.#parents[node] = none;
    this.#orphans.push(node);
  }

  #augment(bridge: number): void {
    const near = bridge >> 3;
    const far = this.#neighbours[bridge];
    const half = this.#least(near, false, this.#capacities[bridge]);
    const flow = this.#least(far, true, half);
    const back = this.#back(bridge);
    this.#capacities[bridge] = this.#capacities[bridge] - flow;
    this.#capacities[back] = this.#capacities[back] + flow;
    this.#push(near, false, flow);
    this.#push(far, true, flow);
  }

  /** Steps to the root of the node's tree, Infinity where the way there is broken. */
  #rootDistance(node: number): number {
    let steps = 0;
    let at = node;
    for (;;) {
      if (this.#stamps[at] === this.#time) {
        steps += this.#distances[at];
        break;
      }
      const arc = this.#parents[at];
      if (arc === none) return Number.POSITIVE_INFINITY;
      steps++;
      if (arc === terminal) {
        this.#stamps[at] = this.#time;
        this.#distances[at] = 1;
        break;
      }
      at = this.#neighbours[arc];
    }
    // Marked on the way, so that the next to ask need not walk it again.
    let left = steps;
    for (let mark = node; this.#stamps[mark] !== this.#time; ) {
      this.#stamps[mark] = this.#time;
      this.#distances[mark] = left--;
      mark = this.#neighbours[this.#parents[mark]];
    }
    return steps;
  }

  #adopt(): void {
    for (let node = this.#orphans.pop(); node !== undefined; node = this.#orphans.pop()) {
      const own = this.tree[node];
      let best = none;
      let nearest = Number.POSITIVE_INFINITY;
      for (let arc = node * 8; arc < node * 8 + 8; arc++) {
        const other = this.#neighbours[arc];
        if (other < 0 || this.tree[other] !== own || this.#parents[other] === none) continue;
        if (this.#capacities[own === source ? this.#back(arc) : arc] === 0) continue;
        const distance = this.#rootDistance(other);
        if (distance >= nearest) continue;
        nearest = distance;
        best = arc;
      }
      this.#parents[node] = best;
      if (best !== none) {
        this.#stamps[node] = this.#time;
        this.#distances[node] = nearest + 1;
      } else this.#release(node, own);
    }
  }

  /** No parent is left for it: its children are orphans, its neighbours may grow into it again. */
  #release(node: number, own: number): void {
    this.tree[node] = free;
    for (let arc = node * 8; arc < node * 8 + 8; arc++) {
      const other = this.#neighbours[arc];
      if (other < 0 || this.tree[other] !== own || this.#parents[other] === none) continue;
      const back = this.#back(arc);
      if (this.#capacities[own === source ? back : arc] > 0) this.#wait(other);
      if (this.#parents[other] === back) this.#lose(other);
    }
  }
}

/** 1 for every node on the source's side of the cheapest cut. `grid` is used up. */
export function findMinimumCut(grid: FlowGrid): Uint8Array {
  const flow = new Flow(grid);
  flow.run();
  return flow.tree.map((side) => (side === source ? 1 : 0));
}
