import type { PixelSize } from '../../../app/model/reference.ts';
import { type Labels, labelShapes } from './label-shapes.ts';
import { joinLists, type NeighbourLists, neighbourLists } from './neighbour-lists.ts';

export interface MergeRule {
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
  readonly #waiting: number[][] = [];

  constructor({ labels, kinds, areasPx }: Labels, rule: MergeRule, size: PixelSize) {
    this.#rule = rule;
    this.#kinds = kinds;
    this.#areas = areasPx;
    this.#into = Int32Array.from(kinds, (_, shape) => shape);
    this.#sides = new Int32Array(kinds.length);
    const small = Uint8Array.from(kinds, (_, shape) => (this.#isSmall(shape) ? 1 : 0));
    this.#lists = neighbourLists(labels, small, size);
    for (let shape = 0; shape < small.length; shape++) if (small[shape]) this.#wait(shape);
  }

  #isSmall(shape: number): boolean {
    return (this.#areas[shape] as number) < (this.#rule.leastPx[this.#kinds[shape] as number] ?? 0);
  }

  #wait(shape: number): void {
    const area = this.#areas[shape] as number;
    const bucket = this.#waiting[area];
    if (bucket) bucket.push(shape);
    else this.#waiting[area] = [shape];
  }

  /** The shape that this one is part of by now. */
  whole(shape: number): number {
    let at = shape;
    while (this.#into[at] !== at) {
      const next = this.#into[at] as number;
      this.#into[at] = this.#into[next] as number;
      at = next;
    }
    return at;
  }

  kindOf(shape: number): number {
    return this.#kinds[this.whole(shape)] as number;
  }

  /** Smallest first; a shape that has grown waits again at its new size. */
  run(): void {
    for (let area = 1; area < this.#waiting.length; area++) {
      const bucket = this.#waiting[area];
      if (!bucket) continue;
      for (const shape of bucket) {
        if (this.#into[shape] === shape && this.#areas[shape] === area) this.#settle(shape);
      }
      delete this.#waiting[area];
    }
  }

  #settle(shape: number): void {
    const near = this.#neighbours(shape);
    const target = this.#best(shape, near);
    if (target !== undefined) {
      const kind = this.#kinds[target] as number;
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
    const near: number[] = [];
    const { heads, others, nexts } = this.#lists;
    for (let at = heads[shape] as number; at !== -1; at = nexts[at] as number) {
      const other = this.whole(others[at] as number);
      if (other === shape) continue;
      if (this.#sides[other] === 0) near.push(other);
      this.#sides[other] = (this.#sides[other] as number) + 1;
    }
    return near;
  }

  #best(shape: number, near: readonly number[]): number | undefined {
    const kind = this.#kinds[shape] as number;
    let best: number | undefined;
    let least = Number.POSITIVE_INFINITY;
    let longest = 0;
    // A smaller shape that is kept (a sparkle, an accent) does not grow by what surrounds it.
    const area = this.#areas[shape] as number;
    for (const other of near) {
      if ((this.#areas[other] as number) < area) continue;
      const difference = this.#rule.difference(kind, this.#kinds[other] as number);
      const sides = this.#sides[other] as number;
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
    this.#areas[to] = (this.#areas[to] as number) + (this.#areas[from] as number);
    joinLists(this.#lists, from, to);
  }
}

/**
 * Merges shapes too small to paint into their neighbours, in place. The map holds a kind per pixel.
 * Shapes without a permitted neighbour stay. Deterministic. Hands back control now and then.
 */
export function* mergeSmall(map: Uint8Array, size: PixelSize, rule: MergeRule): Generator<void> {
  const found = yield* labelShapes(map, size);
  yield;
  const merging = new Merging(found, rule, size);
  yield;
  merging.run();
  yield;
  const { labels } = found;
  const kinds = Uint8Array.from(found.kinds, (_, shape) => merging.kindOf(shape));
  for (let i = 0; i < map.length; i++) map[i] = kinds[labels[i] as number] as number;
}
