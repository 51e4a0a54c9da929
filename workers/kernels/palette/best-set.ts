import type { Checkpoint } from './checkpoint.ts';
import { groupCosts } from './group-costs.ts';
import type { MixLibrary } from './mix-library.ts';
import type { PaletteTarget } from './palette-target.ts';

/** Added for every paint of a set (own figure, design). */
export const perPaint = 0.3;

/** A set that misses the darkest band by less than this counts as reaching it, L*. */
const closeEnough = 0.5;

export interface FoundSet {
  /** Indices into the library's paints, rising. */
  readonly members: readonly number[];
  readonly cost: number;
  /** By how much its darkest mix is lighter than the darkest band, L*; 0 where it reaches it. */
  readonly shortfall: number;
}

interface Table {
  readonly costs: Float32Array;
  readonly darkest: number;
}

/** The groups' tables, to be found by up to three members without making anything: -1 is no member. */
class GroupTables {
  readonly #base: number;
  readonly #tables: (Table | undefined)[] = [];

  constructor(paintCount: number) {
    this.#base = paintCount + 1;
  }

  #at(one: number, two: number, three: number): number {
    return (one + 1) * this.#base * this.#base + (two + 1) * this.#base + three + 1;
  }

  set(members: readonly number[], table: Table): void {
    this.#tables[this.#at(members.at(-3) ?? -1, members.at(-2) ?? -1, members.at(-1) ?? -1)] =
      table;
  }

  /** `added` may stand anywhere among the two others, which rise; -1 where there is none. */
  of(one: number, two: number, added: number): Table {
    const at =
      added > two
        ? this.#at(one, two, added)
        : added > one
          ? this.#at(one, added, two)
          : this.#at(added, one, two);
    const table = this.#tables[at];
    if (!table) throw new RangeError('A group of paints is missing from the library of mixes.');
    return table;
  }
}

async function tablesOf(
  library: MixLibrary,
  targets: readonly PaletteTarget[],
  checkpoint: Checkpoint,
): Promise<GroupTables> {
  const tables = new GroupTables(library.paints.length);
  for (const [n, group] of library.groups.entries()) {
    if (n % 50 === 0) await checkpoint(n / library.groups.length);
    tables.set(group.members, { costs: groupCosts(group, targets), darkest: group.darkest });
  }
  return tables;
}

/**
 * The set of at most `size` paints of least cost: area-weighted mean of each target's best mix, plus
 * 0.3 per paint. All sets are gone through. A set must reach the darkest band; where none does, the one that
 * misses it least is taken, the cheaper of those within half an L*. `must` are in every set.
 */
export async function bestSet(
  library: MixLibrary,
  targets: readonly PaletteTarget[],
  darkestWanted: number,
  size: number,
  must: readonly number[],
  checkpoint: Checkpoint,
): Promise<FoundSet> {
  const tables = await tablesOf(library, targets, (part) => checkpoint(0.7 * part));
  const count = targets.length;
  let best: FoundSet | undefined;

  // One row of running minima a depth: no allocation per set.
  const rows = Array.from({ length: size + 1 }, () => new Float64Array(count).fill(1e9));

  const grow = (set: readonly number[], paint: number, darkestBefore: number): number => {
    const before = rows[set.length] as Float64Array;
    const after = rows[set.length + 1] as Float64Array;
    after.set(before);
    let darkest = darkestBefore;
    const add = (table: Table): void => {
      darkest = Math.min(darkest, table.darkest);
      for (let i = 0; i < count; i++) {
        const cost = table.costs[i] as number;
        if (cost < (after[i] as number)) after[i] = cost;
      }
    };
    add(tables.of(-1, -1, paint));
    for (let i = 0; i < set.length && library.most >= 2; i++) {
      add(tables.of(-1, set[i] as number, paint));
      for (let j = i + 1; j < set.length && library.most >= 3; j++) {
        const one = set[i] as number;
        const two = set[j] as number;
        add(tables.of(Math.min(one, two), Math.max(one, two), paint));
      }
    }
    return darkest;
  };

  const judge = (set: readonly number[], darkest: number): void => {
    const row = rows[set.length] as Float64Array;
    let cost = perPaint * set.length;
    for (const [i, target] of targets.entries()) cost += target.weight * (row[i] as number);
    const missed = darkest - darkestWanted;
    const shortfall = missed <= closeEnough ? 0 : missed;
    const nearer = best ? shortfall - best.shortfall : -1;
    const better =
      !best ||
      nearer < -closeEnough ||
      (nearer <= (shortfall === 0 ? 0 : closeEnough) && cost < best.cost);
    if (better) best = { members: [...set].sort((a, b) => a - b), cost, shortfall };
  };

  const deepen = (set: readonly number[], from: number, darkest: number): void => {
    if (set.length >= Math.max(1, must.length)) judge(set, darkest);
    if (set.length === size) return;
    for (let paint = from; paint < library.paints.length; paint++) {
      if (must.includes(paint)) continue;
      const next = grow(set, paint, darkest);
      deepen([...set, paint], paint + 1, next);
    }
  };

  let set: number[] = [];
  let darkest = 100;
  for (const paint of must) {
    darkest = grow(set, paint, darkest);
    set = [...set, paint];
  }
  if (set.length > 0) judge(set, darkest);
  if (set.length < size) {
    for (let paint = 0; paint < library.paints.length; paint++) {
      if (must.includes(paint)) continue;
      await checkpoint(0.7 + (0.3 * paint) / library.paints.length);
      const next = grow(set, paint, darkest);
      deepen([...set, paint], paint + 1, next);
    }
  }
  if (!best) throw new RangeError('There is no paint to choose from: put paints in the box.');
  return best;
}
