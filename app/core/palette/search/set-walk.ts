import type { Checkpoint } from '../checkpoint.ts';
import { type CostRows, costsOf, farCosts, lowerRow, RowSums } from './cost-rows.ts';
import { type CostTables, certainBelow } from './cost-tables.ts';
import { PairBounds } from './pair-bounds.ts';
import type { PaletteTarget } from './palette-targets.ts';

/** A set that misses the darkest band by less than this counts as reaching it, L*. */
export const closeEnough = 0.5;

/** Sets between two checkpoints: some milliseconds of work. */
const stretch = 2000;

export interface FoundSet {
  /** Indices into the library's paints, rising. */
  readonly members: readonly number[];
  readonly cost: number;
  /** L* of its darkest mix. */
  readonly darkest: number;
}

export interface SetWishes {
  /** At most this many paints. */
  readonly size: number;
  /** In every set. */
  readonly must: readonly number[];
  /** L* of the darkest band: a set has to reach it. */
  readonly darkest: number;
}

/**
 * Largest L* accepted for a set's darkest mix: the L* of the darkest band, or, where no set reaches it, of the darkest
 * mix any set reaches; plus half an L*.
 */
export function darkEnough(tables: CostTables, { size, must, darkest }: SetWishes): number {
  const free = size - must.length;
  let reached = 100;
  const addGroup = (members: readonly number[]): void => {
    if (members.filter((member) => !must.includes(member)).length > free) return;
    reached = Math.min(reached, tables.darkest[tables.indexOf(members)]);
  };
  for (let i = 0; i < tables.paintCount; i++) {
    addGroup([i]);
    for (let j = i + 1; j < tables.paintCount; j++) {
      addGroup([i, j]);
      for (let k = j + 1; k < tables.paintCount; k++) addGroup([i, j, k]);
    }
  }
  return Math.max(darkest, reached) + closeEnough;
}

/** Paints that may be added, most useful first: by price and the area-weighted mean of the least of mixes with them. */
function orderOf(tables: CostTables, sums: RowSums, must: readonly number[]): Int32Array {
  const { prices, groups, paintCount, targetCount } = tables;
  const least = farCosts(paintCount * targetCount);
  for (const [group, members] of groups.entries()) {
    for (const member of members) lowerRow(least, member, tables.rows, group, targetCount);
  }
  const rank = prices.map((price, paint) => sums.sum(price, least, paint));
  const free = [...rank.keys()].filter((paint) => !must.includes(paint));
  return Int32Array.from(free.sort((one, two) => rank[one] - rank[two] || one - two));
}

/** Sums of the same terms in another order may differ by so much: no set is passed over for that. */
const rounding = 1e-9;

/** Rows of costs, one cost of each target, for the sets of one size. */
interface Depth {
  /** Of the set by itself; none is above `certainBelow`, so that they are bounds. */
  readonly row: CostRows;
  /** A row for each place: of mixes of the paint there with those of the set, which is in all of them. */
  readonly withPaint: CostRows;
  /** The least of these from each place on. */
  readonly withFrom: CostRows;
}

/**
 * Searches the sets depth first, along one order of paints, with rows of running minima per depth, so that no set
 * allocates memory.
 */
export class SetWalk {
  readonly #tables: CostTables;
  readonly #sums: RowSums;
  readonly #wishes: SetWishes;
  readonly #order: Int32Array;
  /** Least price of a paint from a place of the order on. */
  readonly #leastPriceFrom: Float64Array;
  readonly #pairBounds: PairBounds;
  readonly #darkEnough: number;
  readonly #depths: Depth[];
  readonly #set: number[];
  readonly #visit: (set: FoundSet) => void;
  /** Sets grown since the last checkpoint. */
  #grown = 0;
  #part = 0;
  /** Sets that cost more are passed over. */
  atMost: number;

  constructor(
    tables: CostTables,
    targets: readonly PaletteTarget[],
    wishes: SetWishes,
    atMost: number,
    visit: (set: FoundSet) => void,
  ) {
    const { targetCount, prices } = tables;
    this.#tables = tables;
    this.#sums = new RowSums(targets.map(({ weight }) => weight));
    this.#wishes = wishes;
    this.#set = [...wishes.must];
    this.#order = orderOf(tables, this.#sums, wishes.must);
    const places = this.#order.length;
    this.#leastPriceFrom = new Float64Array(places + 1).fill(Number.POSITIVE_INFINITY);
    for (const [n, paint] of this.#order.toReversed().entries()) {
      const place = places - 1 - n;
      this.#leastPriceFrom[place] = Math.min(this.#leastPriceFrom[place + 1], prices[paint]);
    }
    this.#pairBounds = new PairBounds(tables, this.#order, wishes.must);
    this.#darkEnough = darkEnough(tables, wishes);
    this.#depths = Array.from({ length: wishes.size - wishes.must.length + 1 }, () => ({
      row: farCosts(targetCount),
      withPaint: farCosts(places * targetCount),
      withFrom: farCosts((places + 1) * targetCount),
    }));
    this.atMost = atMost;
    this.#visit = visit;
  }

  async run(checkpoint: Checkpoint): Promise<void> {
    const { must } = this.#wishes;
    const { groups, rows, targetCount } = this.#tables;
    const [{ row, withPaint }] = this.#depths;
    costsOf(row).fill(certainBelow);
    for (const [group, members] of groups.entries()) {
      const free = members.filter((member) => !must.includes(member));
      if (free.length === 0) lowerRow(row, 0, rows, group, targetCount);
      if (free.length !== 1) continue;
      lowerRow(withPaint, this.#order.indexOf(free[0]), rows, group, targetCount);
    }
    this.#gatherFrom(this.#depths[0], 0);
    await this.#begin(0, checkpoint);
  }

  #gatherFrom({ withPaint, withFrom }: Depth, from: number): void {
    const { targetCount } = this.#tables;
    withFrom.set(withPaint.subarray(from * targetCount), from * targetCount);
    for (let place = this.#order.length - 2; place >= from; place--) {
      lowerRow(withFrom, place, withFrom, place + 1, targetCount);
    }
  }

  get #depth(): number {
    return this.#set.length - this.#wishes.must.length;
  }

  /** Puts the paint of a place into the set. */
  #add(place: number): void {
    this.#grown += 1;
    const { targetCount } = this.#tables;
    const { row, withPaint } = this.#depths[this.#depth];
    const next = this.#depths[this.#depth + 1];
    next.row.set(row);
    lowerRow(next.row, 0, withPaint, place, targetCount);
    const paint = this.#order[place];
    if (this.#set.length < this.#wishes.size - 2) {
      next.withPaint.set(withPaint);
      for (let other = place + 1; other < this.#order.length; other++) {
        this.#lowerByMixes(next.withPaint, other, paint, this.#order[other]);
      }
      this.#gatherFrom(next, place + 1);
    }
    this.#set.push(paint);
  }

  /** Lowers a row to mixes of two paints, by themselves and with one of the set. */
  #lowerByMixes(to: CostRows, row: number, one: number, two: number): void {
    const { rows, targetCount } = this.#tables;
    lowerRow(to, row, rows, this.#tables.groupOf(one, two, -1), targetCount);
    for (const three of this.#set) {
      if (three === one) continue;
      lowerRow(to, row, rows, this.#tables.groupOf(one, two, three), targetCount);
    }
  }

  #price(): number {
    const { prices } = this.#tables;
    let sum = 0;
    for (const paint of this.#set) sum += prices[paint];
    return sum;
  }

  /** Looks at the set as it is, whose mixes cost `row`. */
  #judge(row: CostRows): void {
    const set = this.#set;
    if (set.length < Math.max(1, this.#wishes.must.length)) return;
    const price = this.#price();
    if (this.#sums.sum(price, row, 0) > this.atMost) return;
    const groups = this.#tables.groupsIn(set);
    const { darkest: lightness } = this.#tables;
    const darkest = groups.reduce((least, group) => Math.min(least, lightness[group]), 100);
    if (darkest > this.#darkEnough) return;
    const cost = this.#sums.sumOf(price, this.#tables.leastOf(groups));
    if (cost > this.atMost) return;
    this.#visit({ members: [...set].sort((x, y) => x - y), cost, darkest });
  }

  /** Whether adding paints from a place of the order on can be cheap enough. */
  #mayHelp(place: number): boolean {
    const { row, withFrom } = this.#depths[this.#depth];
    const { pairsFrom } = this.#pairBounds;
    const price = this.#price() + this.#leastPriceFrom[place];
    const bound = this.#sums.sumOfLeast(price, row, withFrom, place, pairsFrom, place);
    return bound <= this.atMost + rounding;
  }

  /** Looks at the set with each one paint more, from the place on; the paint before that place was added last. */
  #finish(from: number): void {
    const { row } = this.#depths[this.#depth];
    const { withPaint } = this.#depths[this.#depth - 1];
    const filled = this.#depths[this.#depth + 1].row;
    const { prices, targetCount } = this.#tables;
    const { pairs } = this.#pairBounds;
    const last = from - 1;
    const price = this.#price();
    for (let place = from; place < this.#order.length; place++) {
      const pair = this.#pairBounds.rowOf(last, place);
      const paint = this.#order[place];
      const bound = this.#sums.sumOfLeast(
        price + prices[paint],
        row,
        withPaint,
        place,
        pairs,
        pair,
      );
      if (bound > this.atMost + rounding) continue;
      filled.set(row);
      lowerRow(filled, 0, withPaint, place, targetCount);
      this.#lowerByMixes(filled, 0, this.#order[last], paint);
      this.#set.push(paint);
      this.#judge(filled);
      this.#set.pop();
    }
  }

  /** The set just grown, and all it grows into by paints from the place on. */
  #deepen(from: number): void {
    this.#judge(this.#depths[this.#depth].row);
    if (this.#set.length === this.#wishes.size) return;
    if (this.#set.length === this.#wishes.size - 1) {
      this.#finish(from);
      return;
    }
    for (let place = from; place < this.#order.length && this.#mayHelp(place); place++) {
      this.#add(place);
      this.#deepen(place + 1);
      this.#set.pop();
    }
  }

  /** The last three paints are chosen in one go, those before with a checkpoint now and then. */
  async #begin(from: number, checkpoint: Checkpoint): Promise<void> {
    const outermost = this.#depth === 0;
    if (this.#set.length >= this.#wishes.size - 3 && !outermost) {
      this.#deepen(from);
      return;
    }
    this.#judge(this.#depths[this.#depth].row);
    if (this.#set.length === this.#wishes.size) return;
    for (let place = from; place < this.#order.length; place++) {
      if (outermost) {
        this.#part = place / this.#order.length;
        this.#pairBounds.begin(place);
      }
      if (!this.#mayHelp(place)) return;
      if (this.#grown > stretch) {
        this.#grown = 0;
        await checkpoint(this.#part);
      }
      this.#add(place);
      await this.#begin(place + 1, checkpoint);
      this.#set.pop();
    }
  }
}
