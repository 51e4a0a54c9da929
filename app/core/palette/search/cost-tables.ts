import { mixSizes } from '../../limits.ts';
import { combinations } from '../../numeric/combinations.ts';
import type { Checkpoint } from '../checkpoint.ts';
import type { MixGroup } from '../library/group-mixer.ts';
import type { KnownCosts, MixLibrary } from '../library/mix-library.ts';
import { type CostRows, costsOf, farCosts, lowerRow } from './cost-rows.ts';
import { GroupCosts } from './group-costs.ts';
import type { PaletteTarget } from './palette-targets.ts';

/**
 * From this cost on, CIEDE2000, mixes of three are not told apart: no palette worth having leaves much of a picture so
 * far off, and most mixes are so far off most colours. Where a set does, it is worked out for that set (own).
 */
export const certainBelow = 10;

/** Three in every order. */
const ordersOf = (one: number, two: number, three: number) =>
  [
    [one, two, three],
    [one, three, two],
    [two, one, three],
    [two, three, one],
    [three, one, two],
    [three, two, one],
  ] as const;

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 200;

/**
 * Least cost of every target with every group of one to three paints. Dominated groups, those a subset of which does
 * as well, get Infinity: every set that contains the group also contains the subset. So do groups of three that cost
 * `certainBelow` or more.
 */
export class CostTables {
  readonly targetCount: number;
  readonly paintCount: number;
  /** Groups x targets. */
  readonly costs: Float32Array;
  /** The same, as rows to be compared. */
  readonly rows: CostRows;
  /** L* of each group's darkest mix. */
  readonly darkest: Float32Array;
  /** Indices of the paints of every group, rising. */
  readonly groups: readonly (readonly number[])[];
  /** What each paint adds to the cost of a set. */
  readonly prices: Float64Array;
  readonly #groups: Int32Array;
  readonly #mixed: readonly MixGroup[];
  readonly #groupCosts: GroupCosts;

  private constructor(
    { paints, groups }: MixLibrary,
    targets: readonly PaletteTarget[],
    prices: readonly number[],
  ) {
    const targetCount = targets.length;
    this.#mixed = groups;
    this.#groupCosts = new GroupCosts(targets);
    this.paintCount = paints.length;
    this.prices = Float64Array.from(prices);
    this.targetCount = targetCount;
    this.rows = farCosts(groups.length * targetCount);
    this.costs = costsOf(this.rows);
    this.darkest = Float32Array.from(groups, (group) => group.darkest);
    this.groups = groups.map(({ members }) => members);
    const base = paints.length + 1;
    this.#groups = new Int32Array(base ** 3).fill(-1);
    for (const [n, { members }] of groups.entries()) {
      const [one, two = -1, three = -1] = members;
      for (const [x, y, z] of ordersOf(one, two, three)) {
        this.#groups[((x + 1) * base + y + 1) * base + z + 1] = n;
      }
    }
  }

  static async of(
    library: MixLibrary,
    targets: readonly PaletteTarget[],
    prices: readonly number[],
    checkpoint: Checkpoint,
    known?: KnownCosts,
  ): Promise<CostTables> {
    const tables = new CostTables(library, targets, prices);
    const { groups } = library;
    for (const n of groups.keys()) {
      if (n % stretch === 0) await checkpoint(n / groups.length);
      tables.#fill(n, known);
    }
    return tables;
  }

  #fill(n: number, known?: KnownCosts): void {
    const group = this.#mixed[n];
    const [start, end] = [n * this.targetCount, (n + 1) * this.targetCount];
    const before = known?.get(group.lightness);
    if (before) {
      this.costs.set(before, start);
      return;
    }
    this.#groupCosts.write(group, this.#limits(group.members), this.costs, start);
    known?.set(group.lightness, this.costs.subarray(start, end));
  }

  /** Cost of each target with fewer of these paints. */
  #limits(members: readonly number[]): Float32Array {
    const limits = farCosts(this.targetCount);
    if (members.length > 1)
      for (const member of members) this.lower(limits, this.indexOf([member]));
    if (members.length < 3) return costsOf(limits);
    for (const out of members) {
      this.lower(limits, this.indexOf(members.filter((member) => member !== out)));
    }
    return costsOf(limits).map((limit) => Math.min(limit, certainBelow));
  }

  /** The groups whose paints are all in a set. */
  groupsIn(members: readonly number[]): number[] {
    return mixSizes
      .flatMap((size) => combinations(members.length, size))
      .map((places) => this.indexOf(places.map((place) => members[place])))
      .filter((group) => group >= 0);
  }

  /** Least cost of each target with mixes of some groups, however much that is. */
  leastOf(groups: readonly number[]): Float32Array {
    const row = farCosts(this.targetCount);
    for (const group of groups) this.lower(row, group);
    const costs = costsOf(row);
    for (const group of groups) {
      if (this.groups[group].length < 3 || !costs.some((cost) => cost >= certainBelow)) continue;
      const limits = costs.map((cost) => (cost < certainBelow ? 0 : cost));
      this.#groupCosts.write(this.#mixed[group], limits, costs, 0);
    }
    return costs;
  }

  /** Lowers a row of costs to those of a group where they are less. */
  lower(row: CostRows, group: number): void {
    lowerRow(row, 0, this.rows, group, this.targetCount);
  }

  /** Of one to three paints, in any order; -1 for three where the library holds none of them. */
  indexOf(members: readonly number[]): number {
    const [one, two = -1, three = -1] = members;
    return this.groupOf(one, two, three);
  }

  /** As `indexOf`, of three paints in any order; -1 where there are fewer. */
  groupOf(one: number, two: number, three: number): number {
    const base = this.paintCount + 1;
    return this.#groups[((one + 1) * base + two + 1) * base + three + 1];
  }
}
