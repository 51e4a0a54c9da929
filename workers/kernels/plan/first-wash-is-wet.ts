import type { Reading } from '../../../app/model/reading.ts';
import { outerBorders, softShare } from './outer-borders.ts';

/** A first wash with more of its outer borders soft than this, by length, goes on wet paper (own figure). */
const softEnough = 0.5;

/** Whether the first wash over these slots, the painted ones of a passage, goes on wet paper. */
export const firstWashIsWet = (
  reading: Pick<Reading, 'borders'>,
  slots: readonly number[],
): boolean => softShare(outerBorders(reading, slots)) > softEnough;
