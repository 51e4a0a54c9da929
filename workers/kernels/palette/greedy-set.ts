import type { CostTables } from './cost-tables.ts';
import { type JudgedSet, judgeSet } from './judge-set.ts';
import type { PaletteTarget } from './palette-target.ts';

export interface GreedySet extends JudgedSet {
  /** Indices into the tables' paints, rising. */
  readonly members: readonly number[];
}

/**
 * From the paints of `must` on always the one paint more that lowers the cost most, up to `size`, as long as it lowers
 * it. Not the best set: a first one to better, and what the exact search is compared with.
 */
export function greedySet(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  must: readonly number[],
  size: number,
): GreedySet {
  let best: GreedySet = { members: must, ...judgeSet(tables, targets, must) };
  while (best.members.length < size) {
    const from = best;
    for (let paint = 0; paint < tables.paintCount; paint++) {
      if (from.members.includes(paint)) continue;
      const members = [...from.members, paint].sort((x, y) => x - y);
      const judged = judgeSet(tables, targets, members);
      if (judged.cost < best.cost) best = { members, ...judged };
    }
    if (best === from) break;
  }
  return best;
}
