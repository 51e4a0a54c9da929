import type { CostTables } from './cost-tables.ts';
import type { PaletteTarget } from './palette-targets.ts';

/** How well single washes of a set of paints reach the targets. */
export interface JudgedSet {
  /** Least cost of each target, mixed paints' surcharge included; Infinity without paints. */
  readonly costs: Float32Array;
  /** Area-weighted mean of them plus the price of each paint. */
  readonly cost: number;
  /** L* of its darkest mix; 100 without paints. */
  readonly darkest: number;
}

/** Goes through all mixes of at most three of the paints. `members` are indices into the tables' paints. */
export function scoreSet(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  members: readonly number[],
): JudgedSet {
  const groups = tables.groupsIn(members);
  const costs = tables.leastOf(groups);
  const darkest = groups.reduce((least, group) => Math.min(least, tables.darkest[group]), 100);
  const cost = targets.reduce(
    (all, { weight }, t) => all + weight * costs[t],
    members.reduce((sum, member) => sum + tables.prices[member], 0),
  );
  return { costs, cost, darkest };
}

interface GreedySet extends JudgedSet {
  /** Indices into the tables' paints, rising. */
  readonly members: readonly number[];
}

/**
 * From the paints of `must` on always the one paint more that lowers the cost most, up to `size`, as long as it lowers
 * it. Not the best set: a first one to better, and what the exact search is compared with.
 */
export function greedySearch(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  must: readonly number[],
  size: number,
): GreedySet {
  let best: GreedySet = { members: must, ...scoreSet(tables, targets, must) };
  while (best.members.length < size) {
    const from = best;
    for (let paint = 0; paint < tables.paintCount; paint++) {
      if (from.members.includes(paint)) continue;
      const members = [...from.members, paint].sort((x, y) => x - y);
      const judged = scoreSet(tables, targets, members);
      if (judged.cost < best.cost) best = { members, ...judged };
    }
    if (best === from) break;
  }
  return best;
}
