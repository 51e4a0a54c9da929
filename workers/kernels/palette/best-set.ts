import type { Checkpoint } from './checkpoint.ts';
import { groupCosts } from './group-costs.ts';
import { type GroupTable, GroupTables } from './group-tables.ts';
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
    const add = (table: GroupTable): void => {
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

  // The first two paints of a set are chosen with checkpoints between, the rest in one go.
  const begin = async (set: readonly number[], from: number, darkest: number): Promise<void> => {
    const chosen = set.length - must.length;
    if (chosen === 2 || set.length === size) {
      deepen(set, from, darkest);
      return;
    }
    if (set.length >= Math.max(1, must.length)) judge(set, darkest);
    for (let paint = from; paint < library.paints.length; paint++) {
      if (must.includes(paint)) continue;
      await checkpoint(
        0.7 + (0.3 * (chosen === 0 ? paint : (set.at(-1) ?? 0))) / library.paints.length,
      );
      const next = grow(set, paint, darkest);
      await begin([...set, paint], paint + 1, next);
    }
  };

  let set: number[] = [];
  let darkest = 100;
  for (const paint of must) {
    darkest = grow(set, paint, darkest);
    set = [...set, paint];
  }
  await begin(set, 0, darkest);
  if (!best) throw new RangeError('There is no paint to choose from: put paints in the box.');
  return best;
}
