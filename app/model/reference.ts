import { quartersOf } from './crop-turn.ts';
import { largestCut } from './cut-limits.ts';
import type { Point } from './lab.ts';
import type { PixelSize } from './pixel-size.ts';
import type { Sheet } from './sheet.ts';

/**
 * The part of the upright photo that is painted. `centre` is in 0..1 of the photo;
 * `size` is the width and height of the part as shares of the photo's width and height
 * BEFORE turning; `turn` is degrees clockwise the photo is turned before cutting (0, 90, 180, 270
 * by the quarter-turn button, any value in between by straightening).
 *
 * The cut-out is a rectangle in the turned picture: its width in photo px is
 * size[0] * photoWidth, its height size[1] * photoHeight, whatever the turn.
 */
export interface Crop {
  readonly centre: Point;
  readonly size: Point;
  readonly turn: number;
}

export interface Reference {
  readonly photoId: string;
  readonly crop: Crop;
  readonly sheet: Sheet;
}

/** The photo's size as it lies after the quarter turns. */
export const turnedSize = (photo: PixelSize, turn: number): PixelSize =>
  quartersOf(turn) % 2 === 0 ? photo : { width: photo.height, height: photo.width };

/**
 * The largest cut-out of the sheet's shape that fits into the photo, centred. Quarter turns keep
 * the whole picture available; straightening shrinks the cut so that no corner leaves the photo.
 */
export function centredCrop(photo: PixelSize, sheet: Sheet, turn = 0): Crop {
  const cut = largestCut(photo, sheet.widthMm / sheet.heightMm, turn);
  return {
    centre: [0.5, 0.5],
    size: [cut.width / photo.width, cut.height / photo.height],
    turn,
  };
}
