import type { Lab } from './lab.ts';
import type { Family } from './reading.ts';

/**
 * The colour of the picture a spot comes nearest to: by a* and b* alone, for a family reaches across
 * all values. Null where there are no families.
 */
export function nearestFamily(families: readonly Family[], [, a, b]: Lab): Family | null {
  let nearest: Family | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const family of families) {
    const distance = Math.hypot(family.lab[1] - a, family.lab[2] - b);
    if (distance >= least) continue;
    nearest = family;
    least = distance;
  }
  return nearest;
}
