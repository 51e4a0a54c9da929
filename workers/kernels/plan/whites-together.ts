import type { Reading } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { isTedious, whiteWay } from '../whites/white-way.ts';
import { firstWashIsWet } from './first-wash-is-wet.ts';

/**
 * The reading of a sheet whose ground and subject are painted together as `slots` say, else as it is. The way of a
 * white was proposed for the first wash of its own passage; where that over both is wet, whites it would drown are
 * masked instead (R1). What she decided stays.
 */
export function whitesTogether(reading: Reading, slots: readonly Slot[]): Reading {
  const { whites, borders } = reading;
  const together = slots.some(({ passage }, i) => passage !== reading.slots[i]?.passage);
  if (!whites || !together) return reading;
  const painted = slots.flatMap(({ reserve, share }, i) => (reserve || share <= 0 ? [] : [i]));
  if (!firstWashIsWet({ borders }, painted)) return reading;
  const alike = whites.filter(({ shortSideMm }) => isTedious(shortSideMm)).length;
  const ways = whites.map((white) =>
    white.decided || white.way !== 'round'
      ? white
      : { ...white, ...whiteWay(white, { wet: true, alike }) },
  );
  return { ...reading, whites: ways };
}
