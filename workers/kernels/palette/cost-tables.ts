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
  /** Paints x targets: least cost with a paint of that number or higher in the mix. */
  readonly leastFrom: Float64Array;
  readonly #groups: Int32Array;

  private constructor(library: MixLibrary, targetCount: number) {
    const { paints, groups } = library;
    this.paintCount = paints.length;
    this.targetCount = targetCount;
    this.costs = new Float32Array(groups.length * targetCount);
    this.darkest = Float32Array.from(groups, (group) => group.darkest);
    const rows = (paints.length + 1) * targetCount;
    this.leastFrom = new Float64Array(rows).fill(Number.POSITIVE_INFINITY);
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
    return tables;
  }

  #fill(n: number, group: MixGroup, sought: readonly SoughtColour[]): void {
    const count = this.targetCount;
    writeGroupCosts(group, sought, this.#limits(group.members), this.costs, n * count);
    const highest = group.members.at(-1) as number;
    for (let t = 0; t < count; t++) {
      const cost = this.costs[n * count + t] as number;
      for (let from = highest; from >= 0; from--) {
        if (cost >= (this.leastFrom[from * count + t] as number)) break;
        this.leastFrom[from * count + t] = cost;
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
