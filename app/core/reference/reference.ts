import type { Point } from '../colour/lab.ts';
import type { PixelSize } from '../raster/size.ts';
import { type Sheet, turned } from './sheet.ts';

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

/** A sheet that lies as the photo does, and the largest part of the photo for it. */
export function fitSheet(photo: PixelSize, sheet: Sheet): Omit<Reference, 'photoId'> {
  const lying = turned(sheet, photo.width >= photo.height ? 'across' : 'upright');
  return { sheet: lying, crop: centredCrop(photo, lying) };
}

/** Parts of a photo differ from the sheet's shape by rounding at most. */
const shapeTolerance = 0.02;

/** Whether a crop of that photo has a shape, width to height: then it lies on the sheet unstretched. */
export function hasShape(photo: PixelSize, { size }: Crop, shape: number): boolean {
  const its = (size[0] * photo.width) / (size[1] * photo.height);
  return Math.abs(its / shape - 1) <= shapeTolerance;
}

/** How far a photo can be straightened either way, degrees. */
export const mostStraightening = 10;

/** Whole quarter turns clockwise in a turn, 0..3. */
export const quartersOf = (turn: number): number => ((Math.round(turn / 90) % 4) + 4) % 4;

/** What a turn has beyond its quarter turns, degrees clockwise, -45..45. */
export const straighteningOf = (turn: number): number => turn - Math.round(turn / 90) * 90;

/** The same turn counted from 0 up to 360 degrees. */
export const wrappedTurn = (turn: number): number => ((turn % 360) + 360) % 360;

/** The turn of so many quarters and so much straightening (limited to 10 degrees either way). */
export function turnOf(quarters: number, straightening: number): number {
  const limited = Math.min(mostStraightening, Math.max(-mostStraightening, straightening));
  return wrappedTurn(quarters * 90 + limited);
}

/** Smallest cut, as a share of the photo's area (own: below it a phone's photo gets blurred). */
const smallestCutShare = 0.05;

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

/** The part of a photo that is painted, at the photo's own scale. */
export interface CutOut extends PixelSize {
  /** The 2 x 3 matrix a b c d e f that takes a place in the upright photo (px) into the cut-out. */
  readonly matrix: readonly [number, number, number, number, number, number];
  /** True where every photo pixel lands on exactly one pixel of the cut-out. */
  readonly whole: boolean;
}

/**
 * Where the crop of an upright photo lies, in px of a bitmap of it. Never empty: at least 1 px each
 * way. Quarter turns are snapped to whole pixels, so that they copy and do not blur.
 * RangeError for a crop that is no part of the photo.
 */
export function cutOutOf(photo: PixelSize, crop: Crop): CutOut {
  const [across, down] = crop.size;
  const numbers = [...crop.centre, across, down, crop.turn];
  if (!numbers.every(Number.isFinite) || across <= 0 || down <= 0 || across * down > 1.01) {
    throw new RangeError('a crop must be a part of its photo');
  }
  const width = Math.max(1, Math.round(across * photo.width));
  const height = Math.max(1, Math.round(down * photo.height));
  const whole = crop.turn % 90 === 0;
  const angle = (crop.turn * Math.PI) / 180;
  const cos = whole ? Math.round(Math.cos(angle)) : Math.cos(angle);
  const sin = whole ? Math.round(Math.sin(angle)) : Math.sin(angle);
  const x = crop.centre[0] * photo.width;
  const y = crop.centre[1] * photo.height;
  const left = width / 2 - (cos * x - sin * y);
  const top = height / 2 - (sin * x + cos * y);
  const snap = (place: number): number => (whole ? Math.round(place) : place);
  return { width, height, matrix: [cos, sin, -sin, cos, snap(left), snap(top)], whole };
}
