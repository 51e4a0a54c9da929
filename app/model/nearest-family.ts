import type { Lab } from './lab.ts';
import type { Family } from './reading.ts';

/**
 * a* and b* as they would be at L* 50: light and shade on one surface scale L* + 16, a* and b* alike
 * (the cube-root part of CIE L*a*b*), and a family reaches from sun to shade.
 */
function withoutShade([lightness, a, b]: Lab): readonly [number, number] {
  const factor = 66 / (Math.max(0, lightness) + 16);
  return [a * factor, b * factor];
}

/** The colour of the picture a spot comes nearest to, whatever its value; null where there is none. */
export function nearestFamily(families: readonly Family[], spot: Lab): Family | null {
  const [a, b] = withoutShade(spot);
  let nearest: Family | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const family of families) {
    const [familyA, familyB] = withoutShade(family.lab);
    const distance = Math.hypot(familyA - a, familyB - b);
    if (distance >= least) continue;
    nearest = family;
    least = distance;
  }
  return nearest;
}
