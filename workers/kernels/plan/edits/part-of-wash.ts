import type { Slot } from '../../../../app/model/slot.ts';
import type { SolvedWash } from '../plan-facts.ts';

/** The rows of a wash that put paint on some of these slots. */
const rowsOn = ({ mixes }: SolvedWash, slots: readonly Slot[], indices: readonly number[]) =>
  mixes.filter(
    ({ parts, passage, family }) =>
      parts.length > 0 &&
      indices.some((i) => slots[i]?.passage === passage && slots[i]?.family === family),
  );

/** A wash over some of its slots only, with the rows and bands they need. */
export function partOfWash(
  wash: SolvedWash,
  slots: readonly Slot[],
  indices: readonly number[],
): SolvedWash {
  const own = wash.slots.filter((slot) => indices.includes(slot));
  const darkest = own.reduce((most, i) => Math.max(most, slots[i]?.band ?? 0), 0);
  const lightest = own.reduce((least, i) => Math.min(least, slots[i]?.band ?? darkest), darkest);
  const among = (bands: readonly number[]): number[] =>
    bands.filter((band) => band >= lightest && band <= darkest);
  const full = among(wash.full);
  const weak = among(wash.weak);
  return {
    wash: wash.wash,
    // Shapes that this wash only goes under still have a band to name.
    full: full.length + weak.length > 0 ? full : wash.full,
    weak,
    mixes: rowsOn(wash, slots, own),
    slots: own,
    after: wash.after.filter((_, at) => indices.includes(wash.slots[at] ?? -1)),
  };
}
