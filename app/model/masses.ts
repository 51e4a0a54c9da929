import { smallestShapeMm } from './limits.ts';
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
