import { boxOf, placedCrop, scaleOf, shapeOf } from './crop-box.ts';
import { quartersOf, turnOf, wrappedTurn } from './crop-turn.ts';
import type { PixelSize } from './pixel-size.ts';
import type { Crop } from './reference.ts';
import type { Sheet } from './sheet.ts';

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
