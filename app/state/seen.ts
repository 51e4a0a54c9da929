import type { KeptReading } from '../storage/plans.ts';

/** What can be shown of a painting: the reading with its pictures in colour and in true grey. */
export interface Seen extends KeptReading {
  readonly reference: ImageBitmap;
  readonly grey: ImageBitmap;
}
