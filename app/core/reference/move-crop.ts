import type { PixelSize } from '../raster/size.ts';
import {
  type Crop,
  largestCut,
  quartersOf,
  roomOf,
  smallestScale,
  turnOf,
  wrappedTurn,
} from './reference.ts';
import type { Sheet } from './sheet.ts';

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
function placedCrop(
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

/**
 * The cut moved over the picture as it is seen, turned: `right` and `down` in px of the photo.
 * It stops at the photo's edges.
 */
export function movedCrop(photo: PixelSize, crop: Crop, right: number, down: number): Crop {
  const { x, y } = boxOf(photo, crop);
  const angle = (crop.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return placedCrop(
    photo,
    shapeOf(photo, crop),
    crop.turn,
    scaleOf(photo, crop),
    x + cos * right + sin * down,
    y - sin * right + cos * down,
  );
}

/** The cut brought to a share of the largest one's sides, about its own centre. */
export function scaledCrop(photo: PixelSize, crop: Crop, scale: number): Crop {
  const { x, y } = boxOf(photo, crop);
  return placedCrop(photo, shapeOf(photo, crop), crop.turn, scale, x, y);
}

/** The cut made `factor` times as wide and high, about its own centre. */
export const resizedCrop = (photo: PixelSize, crop: Crop, factor: number): Crop =>
  scaledCrop(photo, crop, scaleOf(photo, crop) * factor);

/**
 * The photo turned by whole quarters clockwise and the cut with it: the same part of the photo stays
 * cut out, so an odd number of quarters asks for the sheet to be turned too.
 */
export function turnedCrop(photo: PixelSize, crop: Crop, quarters: number): Crop {
  const { width, height } = boxOf(photo, crop);
  const odd = quarters % 2 !== 0;
  return {
    centre: crop.centre,
    size: odd ? [height / photo.width, width / photo.height] : crop.size,
    turn: wrappedTurn(crop.turn + quarters * 90),
  };
}

/**
 * The photo straightened to `degrees` clockwise, -10..10, beyond its quarter turns. The cut keeps its
 * centre where it can and its share of the largest cut, so that turning back brings it back.
 */
export function straightenedCrop(photo: PixelSize, crop: Crop, degrees: number): Crop {
  const { x, y } = boxOf(photo, crop);
  const turn = turnOf(quartersOf(crop.turn), degrees);
  return placedCrop(photo, shapeOf(photo, crop), turn, scaleOf(photo, crop), x, y);
}

/** The cut in the shape of another sheet: as large as before among the cuts, same centre where it can. */
export function fittedToSheet(photo: PixelSize, crop: Crop, sheet: Sheet): Crop {
  const { x, y } = boxOf(photo, crop);
  const shape = sheet.widthMm / sheet.heightMm;
  return placedCrop(photo, shape, crop.turn, scaleOf(photo, crop), x, y);
}
