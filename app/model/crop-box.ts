import { largestCut, roomOf, smallestScale } from './cut-limits.ts';
import type { PixelSize } from './pixel-size.ts';
import type { Crop } from './reference.ts';

/** A crop in px of the upright photo: its centre, and its sides in the turned picture. */
export interface CropBox extends PixelSize {
  readonly x: number;
  readonly y: number;
}

export const boxOf = (photo: PixelSize, crop: Crop): CropBox => ({
  x: crop.centre[0] * photo.width,
  y: crop.centre[1] * photo.height,
  width: crop.size[0] * photo.width,
  height: crop.size[1] * photo.height,
});

/** Width over height of the cut, both in px. */
export const shapeOf = (photo: PixelSize, crop: Crop): number =>
  (crop.size[0] * photo.width) / (crop.size[1] * photo.height);

/** Size of the cut as a share of the sides of the largest one of its shape at its turn, 0..1. */
export const scaleOf = (photo: PixelSize, crop: Crop): number =>
  (crop.size[1] * photo.height) / largestCut(photo, shapeOf(photo, crop), crop.turn).height;

/** Share of the photo's area that is cut out, 0..1. */
export const areaShare = (crop: Crop): number => crop.size[0] * crop.size[1];

const within = (value: number, low: number, high: number): number =>
  low > high ? (low + high) / 2 : Math.min(high, Math.max(low, value));

/**
 * A crop of a shape, scaled between the smallest and the largest cut and pushed back into the photo
 * where it would leave it. `x`, `y` are the wished centre in px of the upright photo.
 */
export function placedCrop(
  photo: PixelSize,
  shape: number,
  turn: number,
  scale: number,
  x: number,
  y: number,
): Crop {
  const largest = largestCut(photo, shape, turn);
  const allowed = within(scale, smallestScale(photo, shape, turn), 1);
  const cut = { width: largest.width * allowed, height: largest.height * allowed };
  const room = roomOf(cut, turn);
  return {
    centre: [
      within(x, room.width / 2, photo.width - room.width / 2) / photo.width,
      within(y, room.height / 2, photo.height - room.height / 2) / photo.height,
    ],
    size: [cut.width / photo.width, cut.height / photo.height],
    turn,
  };
}
