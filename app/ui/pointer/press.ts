import type { Point } from '../../core/colour/lab.ts';

/**
 * A press on an action at the easel. Water on the glass touches it too: short, in many places at
 * once, broad, running. None of these is a press. Times in ms, lengths in CSS px.
 */
export const pressMs = 400;
/** A fingertip leaves 20 to 60 px, the side of a hand or a pool of water more (own). */
export const broadestFingerPx = 72;
/** Nothing needs a precise touch; what runs farther than this is a drop (own). */
export const farthestPx = 40;

interface Contact {
  readonly place: Point;
  /** Larger side of the area touched. */
  readonly acrossPx: number;
  /** Touches on the glass now, this one counted. */
  readonly touches: number;
}

/** Whether what touches the glass may be a finger held still. */
export const mayBeFinger = (began: Point, { place, acrossPx, touches }: Contact): boolean =>
  touches === 1 &&
  acrossPx <= broadestFingerPx &&
  Math.hypot(place[0] - began[0], place[1] - began[1]) <= farthestPx;

/** The first press let go too soon is told how it is done, and then every third in a row. */
export const isHintDue = (tooSoonInARow: number): boolean => tooSoonInARow % 3 === 1;
