import type { PixelSize } from './pixel-size.ts';

/** Smallest cut, as a share of the photo's area. Own limit: below it a phone's photo gets blurred. */
export const smallestCutShare = 0.05;

/** Absolute cosine and sine of a turn in degrees; exact at quarter turns. */
function leanOf(turn: number): readonly [cos: number, sin: number] {
  const quarters = turn / 90;
  if (Number.isInteger(quarters)) return quarters % 2 === 0 ? [1, 0] : [0, 1];
  const angle = (turn * Math.PI) / 180;
  return [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
}

/**
 * Room a cut takes up along the photo's own sides, px: the box around a w x h rectangle turned by
 * `turn` degrees. The cut lies inside the photo exactly where this box does.
 */
export function roomOf(cut: PixelSize, turn: number): PixelSize {
  const [cos, sin] = leanOf(turn);
  return {
    width: cut.width * cos + cut.height * sin,
    height: cut.width * sin + cut.height * cos,
  };
}

/** The largest cut of a shape (width / height) that fits into the photo at that turn, px. */
export function largestCut(photo: PixelSize, shape: number, turn: number): PixelSize {
  const unit = roomOf({ width: shape, height: 1 }, turn);
  const height = Math.min(photo.width / unit.width, photo.height / unit.height);
  return { width: height * shape, height };
}

/**
 * The smallest size offered, as a share of the sides of the largest cut, 0..1. It is 1 where a very
 * long sheet leaves less than the smallest area even at its largest.
 */
export function smallestScale(photo: PixelSize, shape: number, turn: number): number {
  const largest = largestCut(photo, shape, turn);
  const wanted = smallestCutShare * photo.width * photo.height;
  return Math.min(1, Math.sqrt(wanted / (largest.width * largest.height)));
}
