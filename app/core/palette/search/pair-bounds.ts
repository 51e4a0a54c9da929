import { type CostRows, farCosts, infinite, lowerRow } from './cost-rows.ts';
import type { CostTables } from './cost-tables.ts';

/**
 * The least that mixes with two paints yet to be chosen cost, whatever third is in them. Sets are grown along an order
 * of paints: from the first that was chosen on, since those before it stay out.
 */
export class PairBounds {
  readonly #tables: CostTables;
  readonly #order: Int32Array;
  readonly #must: readonly number[];
  /** Place x place: a row of costs for each pair. */
  readonly pairs: CostRows;
  /** A row for each place: two paints from it on. */
  readonly pairsFrom: CostRows;

  /** `must` are in every set and not in `order`. */
  constructor(tables: CostTables, order: Int32Array, must: readonly number[]) {
    this.#tables = tables;
    this.#order = order;
    this.#must = must;
    this.pairs = farCosts(order.length ** 2 * tables.targetCount);
    this.pairsFrom = farCosts((order.length + 1) * tables.targetCount);
  }

  /** Row of a pair of places, the earlier one first. */
  rowOf(one: number, two: number): number {
    return one * this.#order.length + two;
  }

  /** Leaves out the paints before place `first`. */
  begin(first: number): void {
    const { targetCount } = this.#tables;
    const { pairs, pairsFrom } = this;
    const places = this.#order.length;
    pairs.fill(infinite);
    pairsFrom.fill(infinite);
    for (let one = first; one < places; one++) {
      for (let two = one + 1; two < places; two++) this.#lowerByMixesOf(one, two);
    }
    for (let one = places - 2; one >= first; one--) {
      lowerRow(pairsFrom, one, pairsFrom, one + 1, targetCount);
      for (let two = one + 1; two < places; two++) {
        lowerRow(pairsFrom, one, pairs, this.rowOf(one, two), targetCount);
      }
    }
  }

  #lowerByMixesOf(one: number, two: number): void {
    const { rows, targetCount } = this.#tables;
    const order = this.#order;
    const pair = this.rowOf(one, two);
    const lower = (row: number, group: number): void => {
      lowerRow(this.pairs, row, rows, group, targetCount);
    };
    lower(pair, this.#tables.groupOf(order[one], order[two], -1));
    for (const paint of this.#must) {
      lower(pair, this.#tables.groupOf(order[one], order[two], paint));
    }
    for (let three = two + 1; three < order.length; three++) {
      const group = this.#tables.groupOf(order[one], order[two], order[three]);
      lower(pair, group);
      lower(this.rowOf(one, three), group);
      lower(this.rowOf(two, three), group);
    }
  }
}
