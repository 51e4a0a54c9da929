import type { Point } from './lab.ts';
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

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** How far the photo is turned at most between quarter turns, degrees. */
const quarterOf = (turn: number): number => (((Math.round(turn / 90) % 4) + 4) % 4) * 90;

/** The photo's size as it lies after the quarter turns. */
export function turnedSize(photo: PixelSize, turn: number): PixelSize {
  const quarter = quarterOf(turn);
  return quarter === 90 || quarter === 270 ? { width: photo.height, height: photo.width } : photo;
}

/**
 * The largest cut-out of the sheet's shape that fits into the photo, centred. Quarter turns keep
 * the whole picture available; straightening shrinks the cut so that no corner leaves the photo.
 */
export function centredCrop(photo: PixelSize, sheet: Sheet, turn = 0): Crop {
  const shape = sheet.widthMm / sheet.heightMm;
  const lying = turnedSize(photo, turn);
  const rest = ((turn - Math.round(turn / 90) * 90) * Math.PI) / 180;
  const cos = Math.cos(Math.abs(rest));
  const sin = Math.sin(Math.abs(rest));
  // A w x h rectangle turned by `rest` has the bounding box w cos + h sin by w sin + h cos.
  const height = Math.min(lying.width / (shape * cos + sin), lying.height / (shape * sin + cos));
  return {
    centre: [0.5, 0.5],
    size: [(height * shape) / photo.width, height / photo.height],
    turn,
  };
}
