import type { Reading } from '../../../app/core/reading/reading.ts';
import { type MadeSlot, madeReading, tableOf } from './made-reading.ts';

const colours = [
  [-10, 20],
  [2, -18],
] as const;

/** Whites, light, mid and dark in two colours; the slots of a colour alternate. */
export const hills: readonly MadeSlot[] = tableOf([97, 74, 52, 28], colours);

export const hillsReading = (): Reading => madeReading(hills);

/** Soft all over with many small whites: wetted first, its whites masked. */
export const mistReading = (): Reading =>
  madeReading(
    hills.map((slot) => (slot.band === 1 ? { ...slot, shapes: 12, smallShapes: 9 } : slot)),
    [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.9 })),
  );

/** Hard outlines all round. */
export const roofsReading = (): Reading =>
  madeReading(
    hills,
    [2, 3].map((b) => ({ a: b - 2, b, lengthMm: 300, soft: 0.05 })),
  );

/** A ground and a subject, each with its own washes. */
export const twoPassages = (): Reading =>
  madeReading(
    ['ground', 'subject'].flatMap((passage) =>
      hills.map((slot) => ({ ...slot, share: slot.share / 2, passage })),
    ),
  );

/** One colour only, its darks broken into small shapes. */
export const oneColour = (): Reading =>
  madeReading(
    tableOf([95, 70, 45], [[8, 14]]).map((slot) =>
      slot.band === 3 ? { ...slot, shapes: 120, smallShapes: 100 } : slot,
    ),
  );
