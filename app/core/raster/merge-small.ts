import { labelRuns, type RunLabels } from './label-shapes.ts';
import { joinLists, type NeighbourLists, neighbourLists } from './neighbour-lists.ts';
import type { PixelSize } from './size.ts';

interface MergeRule {
  /** Shapes of kind k with fewer px than this are merged into a neighbour. */
  readonly leastPx: ArrayLike<number>;
  /**
   * How far two kinds differ; a shape goes to the neighbour it differs least from, of several alike
   * to the one with the longest border. Infinity where the two must not become one.
   */
  difference(kind: number, other: number): number;
}

/** The state of one run: which shapes have become one, and which are waiting. */
class Merging {
  readonly #rule: MergeRule;
  readonly #kinds: Uint8Array;
  readonly #areas: Int32Array;
  readonly #into: Int32Array;
  readonly #lists: NeighbourLists;
  /** Sides shared with each shape, for the shape being looked at; all 0 in between. */
  readonly #sides: Int32Array;
  readonly #near: number[] = [];
  /** Shapes waiting, by their size when they began to: last one in, and per shape the one before it. */
  readonly #waiting: Int32Array;
  readonly #waitingNext: Int32Array;
  readonly #isWaiting: Uint8Array;

  constructor(found: RunLabels, rule: MergeRule) {
    const { kinds, areasPx } = found;
    const count = kinds.length;
    this.#rule = rule;
    this.#kinds = kinds;
    this.#areas = areasPx;
    this.#into = new Int32Array(count);
    this.#sides = new Int32Array(count);
    this.#waitingNext = new Int32Array(count);
    this.#isWaiting = new Uint8Array(count);
    let least = 0;
    for (let kind = 0; kind < rule.leastPx.length; kind++) {
      least = Math.max(least, rule.leastPx[kind] ?? 0);
    }
    this.#waiting = new Int32Array(Math.ceil(least) + 1).fill(-1);
    const small = new Uint8Array(count);
    for (let shape = count - 1; shape >= 0; shape--) {
      this.#into[shape] = shape;
      if (!this.#isSmall(shape)) continue;
      small[shape] = 1;
      this.#wait(shape);
    }
    this.#lists = neighbourLists(found, small);
  }

  #isSmall(shape: number): boolean {
    return this.#areas[shape] < (this.#rule.leastPx[this.#kinds[shape]] ?? 0);
  }

  #wait(shape: number): void {
    if (this.#isWaiting[shape] === 1) return;
    const area = this.#areas[shape];
    this.#isWaiting[shape] = 1;
    this.#waitingNext[shape] = this.#waiting[area];
    this.#waiting[area] = shape;
  }

  /** The shape that this one is part of by now. */
  whole(shape: number): number {
    const into = this.#into;
    let at = shape;
    let next = into[at];
    while (next !== at) {
      const further = into[next];
      into[at] = further;
      at = further;
      next = into[at];
    }
    return at;
  }

  kindOf(shape: number): number {
    return this.#kinds[this.whole(shape)];
  }

  /** Smallest first; a shape that has grown meanwhile waits again at its new size. */
  run(): void {
    for (let area = 1; area < this.#waiting.length; area++) {
      let shape = this.#waiting[area];
      while (shape !== -1) {
        const next = this.#waitingNext[shape];
        this.#isWaiting[shape] = 0;
        if (this.#into[shape] === shape && this.#isSmall(shape)) {
          if (this.#areas[shape] === area) this.#settle(shape);
          else this.#wait(shape);
        }
        shape = next;
      }
    }
  }

  #settle(shape: number): void {
    const near = this.#neighbours(shape);
    const target = this.#best(shape, near);
    if (target !== -1) {
      const kind = this.#kinds[target];
      this.#unite(shape, target);
      // What the shape kept apart is one now.
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
    for (let at = heads[shape]; at !== -1; at = nexts[at]) {
      const other = this.whole(others[at]);
      if (other === shape) continue;
      if (this.#sides[other] === 0) near.push(other);
      this.#sides[other] = this.#sides[other] + sides[at];
    }
    this.#shorten(shape, near);
    return near;
  }

  /** One entry a neighbour is left in the shape's list: the next to look walks only these. */
  #shorten(shape: number, near: readonly number[]): void {
    const { heads, tails, others, sides, nexts } = this.#lists;
    let at = heads[shape];
    let last = -1;
    for (const other of near) {
      others[at] = other;
      sides[at] = this.#sides[other];
      last = at;
      at = nexts[at];
    }
    if (last === -1) heads[shape] = -1;
    else nexts[last] = -1;
    tails[shape] = last;
  }

  #best(shape: number, near: readonly number[]): number {
    const kind = this.#kinds[shape];
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    // A smaller shape that is kept (a sparkle, an accent) does not grow by what surrounds it.
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
    // What is large is never merged, so nobody asks for its neighbours.
    if (this.#isSmall(to)) joinLists(this.#lists, from, to);
  }
}

/**
 * Merges shapes too small to paint into their neighbours, in place. The map holds a kind per pixel.
 * Shapes without a permitted neighbour stay. Deterministic. Hands back control now and then.
 */
export function* mergeSmall(map: Uint8Array, size: PixelSize, rule: MergeRule): Generator<void> {
  const found = yield* labelRuns(map, size);
  yield;
  const merging = new Merging(found, rule);
  yield;
  merging.run();
  yield;
  const { shapes, runs } = found;
  const kinds = new Uint8Array(found.kinds.length);
  for (let shape = 0; shape < kinds.length; shape++) kinds[shape] = merging.kindOf(shape);
  for (let run = 0; run < shapes.length; run++) {
    const shape = shapes[run];
    if (kinds[shape] === found.kinds[shape]) continue;
    map.fill(kinds[shape], runs.starts[run], runs.starts[run + 1]);
  }
}
