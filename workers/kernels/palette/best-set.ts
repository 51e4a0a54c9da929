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

/** Costs and darkest of the groups, to be found by their members. */
interface Tables {
  readonly of: Map<number, { readonly costs: Float32Array; readonly darkest: number }>;
}

// Members are under 1000: one number names up to three of them.
const nameOf = (members: readonly number[]): number =>
  members.reduce((all, member) => all * 1000 + member + 1, 0);

async function tablesOf(
  library: MixLibrary,
  targets: readonly PaletteTarget[],
  checkpoint: Checkpoint,
): Promise<Tables> {
  const of: Tables['of'] = new Map();
  for (const [n, group] of library.groups.entries()) {
    if (n % 50 === 0) await checkpoint(n / library.groups.length);
    of.set(nameOf(group.members), { costs: groupCosts(group, targets), darkest: group.darkest });
  }
  return { of };
}

/** Groups a paint adds to a set: itself, and itself with one or two of the set. */
function groupsAdded(set: readonly number[], paint: number, most: number): number[][] {
  const groups = [[paint]];
  if (most >= 2) for (const one of set) groups.push([one, paint]);
  if (most >= 3) {
    for (const [i, one] of set.entries()) {
      for (const two of set.slice(i + 1)) groups.push([one, two, paint]);
    }
  }
  return groups.map((group) => group.sort((a, b) => a - b));
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
    for (const group of groupsAdded(set, paint, library.most)) {
      const table = tables.of.get(nameOf(group));
      if (!table) throw new RangeError('A group of paints is missing from the library of mixes.');
      darkest = Math.min(darkest, table.darkest);
      for (let i = 0; i < count; i++) {
        const cost = table.costs[i] as number;
        if (cost < (after[i] as number)) after[i] = cost;
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
