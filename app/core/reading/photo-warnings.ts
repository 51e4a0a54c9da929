import type { ReadingWarning } from './reading.ts';

/** A smaller part of the photo was never cut by her: the sheet's shape is far from the photo's (own). */
const smallPart = 0.05;

interface PhotoFacts {
  /** Part of it is missing in its file. */
  readonly damaged: boolean;
  /** Its pixels were changed a little on the way. */
  readonly shaky: boolean;
  /** Share of its area that is on the sheet. */
  readonly share: number;
}

/** What is worth telling of the photo itself, before what the picture shows. */
export const photoWarnings = ({ damaged, shaky, share }: PhotoFacts): ReadingWarning[] => [
  ...(damaged ? [{ code: 'part-missing' } as const] : []),
  ...(shaky ? [{ code: 'untrue-pixels' } as const] : []),
  ...(share < smallPart ? [{ code: 'small-picture', share } as const] : []),
];
