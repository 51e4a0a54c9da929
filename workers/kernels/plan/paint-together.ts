import type { PlanWishes } from '../../../app/model/plan-wishes.ts';
import type { Reading } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { isMostlyLost, parted } from './passage-line.ts';

/** The one passage of a sheet without a subject; so ground and subject are called where they are painted as one. */
const wholeSheet = 'sheet';

/**
 * The slots as they are solved: ground and subject as one passage where she wants them together, or where she
 * leaves it open and their line is mostly lost (R18: a lost border is painted across while wet). Else, and in number
 * and order always, those of the reading.
 */
export function paintTogether(
  reading: Pick<Reading, 'borders' | 'slots'>,
  wish: PlanWishes['passages'],
): readonly Slot[] {
  const { slots } = reading;
  const together = wish === undefined ? isMostlyLost(reading) : wish === 'together';
  if (!together || !parted.every((name) => slots.some(({ passage }) => passage === name))) {
    return slots;
  }
  return slots.map((slot) => ({ ...slot, passage: wholeSheet }));
}
