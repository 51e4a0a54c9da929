import type { Checkpoint } from './checkpoint.ts';
import { type SoughtColour, soughtColour, writeGroupCosts } from './group-costs.ts';
import type { MixGroup, MixLibrary } from './mix-library.ts';
import type { PaletteTarget } from './palette-target.ts';

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 200;

/**
 * What every group of one to three paints can do for each target. A group's cost is Infinity where fewer of
 * its paints do as well: a set that has the group has them too.
 */
export class CostTables {
  readonly targetCount: number;
  readonly paintCount: number;
  /** Groups x targets. */
  readonly costs: Float32Array;
  /** L* of each group's darkest mix. */
  readonly darkest: Float32Array;
  /** Paints x targets: least cost of all mixes with the paint in them. */
  readonly #leastWith: Float64Array;
  /** Paints, the most useful first: what the later ones can do is then soon too little. */
  readonly order: Int32Array;
  /** Places in `order` x targets: least cost with the paint of that place or a later one in the mix. */
  readonly leastFrom: Float64Array;
  readonly #groups: Int32Array;

  private constructor(library: MixLibrary, targetCount: number) {
    const { paints, groups } = library;
    this.paintCount = paints.length;
    this.targetCount = targetCount;
    this.costs = new Float32Array(groups.length * targetCount);
    this.darkest = Float32Array.from(groups, (group) => group.darkest);
    const far = Number.POSITIVE_INFINITY;
    this.#leastWith = new Float64Array(paints.length * targetCount).fill(far);
    this.order = Int32Array.from(paints, (_, n) => n);
    this.leastFrom = new Float64Array((paints.length + 1) * targetCount).fill(far);
    this.#groups = new Int32Array((paints.length + 1) ** 3).fill(-1);
    for (const [n, { members }] of groups.entries()) this.#groups[this.#place(members)] = n;
  }

  static async of(
    library: MixLibrary,
    targets: readonly PaletteTarget[],
    checkpoint: Checkpoint,
  ): Promise<CostTables> {
    const tables = new CostTables(library, targets.length);
    const { groups } = library;
    const sought = targets.map(soughtColour);
    for (const [n, group] of groups.entries()) {
      if (n % stretch === 0) await checkpoint(n / groups.length);
      tables.#fill(n, group, sought);
    }
    tables.#arrange(targets);
    return tables;
  }

  #arrange(targets: readonly PaletteTarget[]): void {
    const { order, leastFrom, targetCount } = this;
    const least = this.#leastWith;
    const mean = (paint: number): number =>
      targets.reduce(
        (all, { weight }, t) => all + weight * (least[paint * targetCount + t] as number),
        0,
      );
    const rank = Array.from(order, mean);
    order.sort((one, two) => (rank[one] as number) - (rank[two] as number) || one - two);
    for (let place = this.paintCount - 1; place >= 0; place--) {
      for (let t = 0; t < targetCount; t++) {
        leastFrom[place * targetCount + t] = Math.min(
          leastFrom[(place + 1) * targetCount + t] as number,
          least[(order[place] as number) * targetCount + t] as number,
        );
      }
    }
  }

  #fill(n: number, group: MixGroup, sought: readonly SoughtColour[]): void {
    const count = this.targetCount;
    writeGroupCosts(group, sought, this.#limits(group.members), this.costs, n * count);
    for (const member of group.members) {
      for (let t = 0; t < count; t++) {
        const cost = this.costs[n * count + t] as number;
        const at = member * count + t;
        if (cost < (this.#leastWith[at] as number)) this.#leastWith[at] = cost;
      }
    }
  }

  /** Cost of each target with fewer of these paints. */
  #limits(members: readonly number[]): Float64Array {
    const limits = new Float64Array(this.targetCount).fill(Number.POSITIVE_INFINITY);
    if (members.length < 2) return limits;
    for (let out = 0; out < members.length; out++) {
      const fewer = members.filter((_, i) => i !== out);
      this.lower(limits, this.indexOf(fewer));
      if (fewer.length === 2) for (const one of fewer) this.lower(limits, this.indexOf([one]));
    }
    return limits;
  }

  /** Lowers a row of costs to those of a group where they are less. */
  lower(row: Float64Array, group: number): void {
    const at = group * this.targetCount;
    for (let t = 0; t < row.length; t++) {
      const cost = this.costs[at + t] as number;
      if (cost < (row[t] as number)) row[t] = cost;
    }
  }

  /** Of one to three paints, in any order. */
  indexOf(members: readonly number[]): number {
    return this.#groups[this.#place([...members].sort((x, y) => x - y))] as number;
  }

  /** The same of three that rise; -1 first where there are fewer. */
  indexOfRising(one: number, two: number, three: number): number {
    const base = this.paintCount + 1;
    return this.#groups[((one + 1) * base + two + 1) * base + three + 1] as number;
  }

  #place(members: readonly number[]): number {
    const base = this.paintCount + 1;
    return members.reduce((place, member) => place * base + member + 1, 0);
  }
}
