import { smallestShapeMm } from '../limits.ts';
import type { Slot } from './slot.ts';

/** How many shapes she paints in each wash, after merging at that wash's smallest size. */
export interface MassCounts {
  readonly firstWash: number;
  readonly second: number;
  readonly darks: number;
}

export type MassWash = keyof MassCounts;

/** In the order they are painted, from the broadest brush to the finest. */
export const massWashes: readonly MassWash[] = ['firstWash', 'second', 'darks'];

/** Smallest short side of a shape of each wash, mm on the sheet; adjustable. */
export type MassSizes = Readonly<Record<MassWash, number>>;

export const massSizes: MassSizes = {
  firstWash: smallestShapeMm.first,
  second: smallestShapeMm.second,
  darks: smallestShapeMm.darks,
};

/**
 * Whether a wash covers each slot. The first covers everything but the whites, the second everything
 * painted but the lightest painted band, the darks the darkest band where there are three or more.
 */
export function coveredBy(wash: MassWash, slots: readonly Slot[]): readonly boolean[] {
  const painted = new Set(slots.filter((slot) => !slot.reserve).map((slot) => slot.band));
  const bands = [...painted].sort((x, y) => x - y);
  const from: number | undefined =
    wash === 'firstWash' ? bands[0] : wash === 'second' ? bands[1] : bands.slice(2).at(-1);
  return slots.map((slot) => !slot.reserve && from !== undefined && slot.band >= from);
}

/** Bounds of the smallest shape of a wash, mm on the sheet (own). */
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

/** The subject is painted with a finer brush: its smallest shapes as a share of the others' (own). */
const subjectShare: MassSizes = { firstWash: 0.4, second: 0.5, darks: 0.5 };

/** Smallest size of a shape of the subject in a wash, mm, where elsewhere it is `mm`. */
export const sizeInSubject = (mm: number, wash: MassWash): number =>
  Math.min(mm, Math.max(leastSizeMm, mm * subjectShare[wash]));

/**
 * One size set to `mm`. The others give way, so that the washes go from broad to fine: those before
 * it are at least as large, those after it at most.
 */
export function withSize(sizes: MassSizes, wash: MassWash, mm: number): MassSizes {
  const set = held(mm, sizes[wash]);
  const washIndex = massWashes.indexOf(wash);
  const given = (massWash: MassWash): number => {
    const place = massWashes.indexOf(massWash);
    if (place === washIndex) return set;
    return place < washIndex ? Math.max(sizes[massWash], set) : Math.min(sizes[massWash], set);
  };
  return {
    firstWash: given('firstWash'),
    second: given('second'),
    darks: given('darks'),
  };
}
