import type { CostTables } from './cost-tables.ts';
import { type PaletteTarget, perPaint } from './palette-target.ts';

/** What the single washes of a set of paints can do. */
export interface JudgedSet {
  /** Least cost of each target, mixed paints' surcharge included; Infinity without paints. */
  readonly costs: Float64Array;
  /** Area-weighted mean of them plus 0.3 per paint. */
  readonly cost: number;
  /** L* of its darkest mix; 100 without paints. */
  readonly darkest: number;
}

/** Goes through all mixes of at most three of the paints. `members` are indices into the tables' paints. */
export function judgeSet(
  tables: CostTables,
  targets: readonly PaletteTarget[],
  members: readonly number[],
): JudgedSet {
  const costs = new Float64Array(targets.length).fill(Number.POSITIVE_INFINITY);
  let darkest = 100;
  const look = (group: readonly number[]): void => {
    const at = tables.indexOf(group);
    darkest = Math.min(darkest, tables.darkest[at] as number);
    tables.lower(costs, at);
  };
  for (const [i, one] of members.entries()) {
    look([one]);
    for (const [j, two] of members.slice(i + 1).entries()) {
      look([one, two]);
      for (const three of members.slice(i + j + 2)) look([one, two, three]);
    }
  }
  const cost = targets.reduce(
    (all, { weight }, t) => all + weight * (costs[t] as number),
    perPaint * members.length,
  );
  return { costs, cost, darkest };
}
