import type { PixelSize } from './pixel-size.ts';
import type { Crop } from './reference.ts';

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
