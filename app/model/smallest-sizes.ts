import { type MassSizes, type MassWash, massSizes, massWashes } from './masses.ts';

/** Bounds of the smallest shape of a wash, mm on the sheet (own proposal). */
export const leastSizeMm = 1;
export const mostSizeMm = 40;

const held = (mm: number, usual: number): number =>
  Number.isFinite(mm) ? Math.min(mostSizeMm, Math.max(leastSizeMm, mm)) : usual;

/** The sizes to go by, mm: hers held within the bounds and in order, else the usual ones. */
export function smallestSizes(wished: MassSizes = massSizes): MassSizes {
  const firstWash = held(wished.firstWash, massSizes.firstWash);
  const second = Math.min(firstWash, held(wished.second, massSizes.second));
  return { firstWash, second, darks: Math.min(second, held(wished.darks, massSizes.darks)) };
}

/**
 * One size set to `mm`. The others give way, so that the washes go from broad to fine: those before
 * it are at least as large, those after it at most.
 */
export function withSize(sizes: MassSizes, wash: MassWash, mm: number): MassSizes {
  const set = held(mm, sizes[wash]);
  const at = massWashes.indexOf(wash);
  const given = (of: MassWash): number => {
    const place = massWashes.indexOf(of);
    if (place === at) return set;
    return place < at ? Math.max(sizes[of], set) : Math.min(sizes[of], set);
  };
  return {
    firstWash: given('firstWash'),
    second: given('second'),
    darks: given('darks'),
  };
}
