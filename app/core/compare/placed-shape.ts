import type { Point } from '../colour/lab.ts';
import { familyNameIn } from '../plan/family-name-in.ts';
import type { WashPlan } from '../plan/plan.ts';
import { placeOf } from '../raster/size.ts';
import type { Reading } from '../reading/reading.ts';
import type { PlacedShape } from '../words/plan/mending.ts';

/** What a shape of a slot is called, and in which third of the sheet it lies. */
export function placedShape(
  slot: number,
  at: Point,
  plan: Pick<WashPlan, 'palette' | 'slots'>,
  reading: Pick<Reading, 'bands' | 'families'>,
): PlacedShape {
  const own = plan.slots[slot];
  const place = placeOf(at);
  if (!own || own.reserve) return { shape: own ? 'white' : 'unknown', place };
  const colour = familyNameIn(plan, reading)(own.family);
  return { shape: 'colour', colour, band: own.band, count: reading.bands.length, place };
}
