import { labelRuns, type RunLabels } from './label-shapes.ts';
import type { PixelSize } from './size.ts';

interface MergeRule {
  /** Shapes of kind k with fewer px than this are merged into a neighbour. */
  readonly leastPx: ArrayLike<number>;
  /**
   * How far two kinds differ. A shape joins the neighbour it differs least from, of several alike the
   * one with the longest border. Infinity where the two must not become one.
   */
  difference(kind: number, other: number): number;
  /**
   * How many times `leastPx` a shape must have that lies at this place, at least 1; the least of its places counts.
   * Left out: 1 everywhere.
   */
  readonly timesAt?: ((x: number, y: number) => number) | undefined;
}

/**
 * For each small shape the stretches of border it shares with others, as linked lists: the lists of two
 * shapes are joined in one step when these become one.
 */
class NeighbourLists {
  /** First and last entry of a shape's list, -1 where it has none. */
  readonly heads: Int32Array;
  readonly tails: Int32Array;
  /** By entry: the shape on the other side, pixel sides shared with it, and the next entry or -1. */
  readonly others: Int32Array;
  readonly sides: Int32Array;
  readonly nexts: Int32Array;
  #count = 0;

  /** Lists for the shapes with `small[shape]` 1; the others' stay empty. */
  constructor({ runs, meetings, shapes }: RunLabels, small: Uint8Array) {
    const { rows, starts } = runs;
    const { count, uppers, lowers, sides } = meetings;
    // Each run meets the one before it and those above; either side may keep an entry.
    const entries = 2 * (starts.length + count);
    this.heads = new Int32Array(small.length).fill(-1);
    this.tails = new Int32Array(small.length).fill(-1);
    this.others = new Int32Array(entries);
    this.sides = new Int32Array(entries);
    this.nexts = new Int32Array(entries);
    const meet = (one: number, other: number, shared: number): void => {
      if (one === other) return;
      if (small[one] === 1) this.#add(one, other, shared);
      if (small[other] === 1) this.#add(other, one, shared);
    };
    for (let y = 0; y + 1 < rows.length; y++) {
      const end = rows[y + 1];
      for (let run = rows[y] + 1; run < end; run++) meet(shapes[run - 1], shapes[run], 1);
    }
    for (let n = 0; n < count; n++) meet(shapes[uppers[n]], shapes[lowers[n]], sides[n]);
  }

  #add(owner: number, other: number, sides: number): void {
    const entry = this.#count++;
    const head = this.heads[owner];
    this.others[entry] = other;
    this.sides[entry] = sides;
    this.nexts[entry] = head;
    this.heads[owner] = entry;
    if (head === -1) this.tails[owner] = entry;
  }

  /** Appends the list of `from` to that of `to`. */
  join(from: number, to: number): void {
    const head = this.heads[from];
    if (head === -1) return;
    const tail = this.tails[to];
    if (tail === -1) this.heads[to] = head;
    else this.nexts[tail] = head;
    this.tails[to] = this.tails[from];
    this.heads[from] = -1;
    this.tails[from] = -1;
  }
}

/** Of every shape the least that `timesAt` says of a place on it, looked up in the middle of its runs. */
function leastTimes(
  { runs: { rows, starts }, shapes, kinds }: RunLabels,
  timesAt: (x: number, y: number) => number,
): Float32Array {
  const times = new Float32Array(kinds.length).fill(Number.POSITIVE_INFINITY);
  for (let y = 0; y + 1 < rows.length; y++) {
    const line = starts[rows[y]];
    for (let run = rows[y]; run < rows[y + 1]; run++) {
      const own = timesAt((starts[run] + starts[run + 1] - 1) / 2 - line, y);
      if (own < times[shapes[run]]) times[shapes[run]] = own;
    }
  }
  return times;
}

/** Which shapes have become one so far, and which are waiting to be merged. */
class Merging {
  readonly #rule: MergeRule;
  readonly #kinds: Uint8Array;
  readonly #areas: Int32Array;
  /** How many times the least of its kind a shape must have; null: once, all of them. */
  readonly #times: Float32Array | null;
  /** The shape each one was merged into; itself as long as it stands. */
  readonly #into: Int32Array;
  readonly #lists: NeighbourLists;
  /** Sides shared with each neighbour of the shape being merged; all 0 in between. */
  readonly #sides: Int32Array;
  readonly #near: number[] = [];
  /** Waiting shapes by their area when they began to wait: the last one in, and per shape the one before. */
  readonly #waiting: Int32Array;
  readonly #waitingNext: Int32Array;
  readonly #isWaiting: Uint8Array;

  constructor(labels: RunLabels, rule: MergeRule) {
    const { kinds, areasPx } = labels;
    this.#times = rule.timesAt ? leastTimes(labels, rule.timesAt) : null;
    const count = kinds.length;
    this.#rule = rule;
    this.#kinds = kinds;
    this.#areas = areasPx;
    this.#into = new Int32Array(count);
    this.#sides = new Int32Array(count);
    this.#waitingNext = new Int32Array(count);
    this.#isWaiting = new Uint8Array(count);
    let largest = 0;
    let mostTimes = 1;
    for (let kind = 0; kind < rule.leastPx.length; kind++) {
      largest = Math.max(largest, rule.leastPx[kind]);
    }
    for (const times of this.#times ?? []) mostTimes = Math.max(mostTimes, times);
    this.#waiting = new Int32Array(Math.ceil(largest * mostTimes) + 1).fill(-1);
    const small = new Uint8Array(count);
    for (let shape = count - 1; shape >= 0; shape--) {
      this.#into[shape] = shape;
      if (!this.#isSmall(shape)) continue;
      small[shape] = 1;
      this.#wait(shape);
    }
    this.#lists = new NeighbourLists(labels, small);
  }

  #isSmall(shape: number): boolean {
    const least = this.#rule.leastPx[this.#kinds[shape]] ?? 0;
    return this.#areas[shape] < least * (this.#times ? this.#times[shape] : 1);
  }

  #wait(shape: number): void {
    if (this.#isWaiting[shape] === 1) return;
    const area = this.#areas[shape];
    this.#isWaiting[shape] = 1;
    this.#waitingNext[shape] = this.#waiting[area];
    this.#waiting[area] = shape;
  }

  /** The shape that this one has become part of; halves the path to it. */
  #whole(shape: number): number {
    const into = this.#into;
    let root = shape;
    let next = into[root];
    while (next !== root) {
      const further = into[next];
      into[root] = further;
      root = further;
      next = into[root];
    }
    return root;
  }

  kindOf(shape: number): number {
    return this.#kinds[this.#whole(shape)];
  }

  /** Smallest first; a shape that has grown meanwhile waits again at its new size. */
  run(): void {
    for (let area = 1; area < this.#waiting.length; area++) {
      let shape = this.#waiting[area];
      while (shape !== -1) {
        const next = this.#waitingNext[shape];
        this.#isWaiting[shape] = 0;
        if (this.#into[shape] === shape && this.#isSmall(shape)) {
          if (this.#areas[shape] === area) this.#merge(shape);
          else this.#wait(shape);
        }
        shape = next;
      }
    }
  }

  #merge(shape: number): void {
    const near = this.#neighbours(shape);
    const target = this.#nearest(shape, near);
    if (target !== -1) {
      const kind = this.#kinds[target];
      this.#unite(shape, target);
      // Neighbours of one kind that only this shape kept apart touch now.
      for (const other of near) {
        if (other !== target && this.#kinds[other] === kind) this.#unite(other, target);
      }
      if (this.#isSmall(target)) this.#wait(target);
    }
    for (const other of near) this.#sides[other] = 0;
  }

  #neighbours(shape: number): number[] {
    const near = this.#near;
    near.length = 0;
    const { heads, others, sides, nexts } = this.#lists;
    for (let entry = heads[shape]; entry !== -1; entry = nexts[entry]) {
      const other = this.#whole(others[entry]);
      if (other === shape) continue;
      if (this.#sides[other] === 0) near.push(other);
      this.#sides[other] = this.#sides[other] + sides[entry];
    }
    this.#shorten(shape, near);
    return near;
  }

  /** Leaves one entry a neighbour in the shape's list, so that the next walk along it is short. */
  #shorten(shape: number, near: readonly number[]): void {
    const { heads, tails, others, sides, nexts } = this.#lists;
    let entry = heads[shape];
    let last = -1;
    for (const other of near) {
      others[entry] = other;
      sides[entry] = this.#sides[other];
      last = entry;
      entry = nexts[entry];
    }
    if (last === -1) heads[shape] = -1;
    else nexts[last] = -1;
    tails[shape] = last;
  }

  /** The neighbour that the shape joins; -1 for none. */
  #nearest(shape: number, near: readonly number[]): number {
    const kind = this.#kinds[shape];
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    // A smaller shape that is kept (a sparkle, an accent) must not grow by what surrounds it.
    const area = this.#areas[shape];
    for (const other of near) {
      if (this.#areas[other] < area) continue;
      const difference = this.#rule.difference(kind, this.#kinds[other]);
      const sides = this.#sides[other];
      if (difference > least || difference === Number.POSITIVE_INFINITY) continue;
      if (difference === least && sides <= longest) continue;
      best = other;
      least = difference;
      longest = sides;
    }
    return best;
  }

  #unite(from: number, to: number): void {
    this.#into[from] = to;
    this.#areas[to] = this.#areas[to] + this.#areas[from];
    const times = this.#times;
    if (times && times[from] < times[to]) times[to] = times[from];
    // A large shape is never merged, so its list of neighbours is never read.
    if (this.#isSmall(to)) this.#lists.join(from, to);
  }
}

/**
 * Merges the shapes of a map that are too small to paint into their neighbours, in place. The map holds
 * a kind for every pixel. Shapes without a permitted neighbour stay. Deterministic. Hands back control
 * now and then.
 */
export function* mergeSmall(map: Uint8Array, size: PixelSize, rule: MergeRule): Generator<void> {
  const labels = yield* labelRuns(map, size);
  yield;
  const merging = new Merging(labels, rule);
  yield;
  merging.run();
  yield;
  const { shapes, runs } = labels;
  const kinds = new Uint8Array(labels.kinds.length);
  for (let shape = 0; shape < kinds.length; shape++) kinds[shape] = merging.kindOf(shape);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    if (kinds[shape] === labels.kinds[shape]) continue;
    map.fill(kinds[shape], runs.starts[run], runs.starts[run + 1]);
  }
}
