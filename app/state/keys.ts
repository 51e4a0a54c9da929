import type { Painting } from '../model/painting.ts';
import { planWishes, readingWishes } from '../model/wishes.ts';

/** All that a reading depends on: the same key, the same reading. */
export function readingKeyOf({ reference, decisions }: Painting): string {
  return JSON.stringify([reference, readingWishes(decisions, reference)]);
}

/** All that a plan depends on. */
export const planKeyOf = (painting: Painting): string =>
  JSON.stringify([readingKeyOf(painting), planWishes(painting.decisions)]);
