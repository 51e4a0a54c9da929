import type { Lab } from '../../../app/model/lab.ts';
import type { Slot } from '../../../app/model/slot.ts';
import type { SolvedPassage } from '../plan/plan-facts.ts';
import { planQuality } from '../plan/plan-quality.ts';

/**
 * Mean CIEDE2000 over the painted area between the sheet after the last wash and the slots' targets. Slots no wash
 * touches are taken as `paper`.
 */
export function lastDifference(
  slots: readonly Slot[],
  passages: readonly SolvedPassage[],
  paper: Lab,
): number {
  const sheet = slots.map(() => paper);
  for (const { washes } of passages) {
    for (const wash of washes) {
      for (const [n, slot] of wash.slots.entries()) sheet[slot] = wash.after[n] as Lab;
    }
  }
  return planQuality(slots, sheet).colour;
}
