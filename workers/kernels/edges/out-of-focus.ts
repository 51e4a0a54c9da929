import { edgeLimits } from '../../../app/model/edge.ts';
import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { MeasuredContour } from './measure-edges.ts';

/** The picture is looked at in fields of this part of its long side (own figure). */
const fieldShare = 1 / 12;
/** A field with less of plain edges than its own side does not tell. */
const leastEdges = 1;
/** Twice the photo's own blur is out of focus; a photo is not counted sharper than this, sigma in px. */
const times = 2;
const sharpestPx = 0.75;

/**
 * Fields of the picture where over half of the edges that can be seen, by length, are blurred twice
 * as wide as the photo's sharpest; answers whether a point (px) lies in one.
 */
export function outOfFocus(
  contours: readonly MeasuredContour[],
  { width, height }: PixelSize,
  blurPx: number,
): (x: number, y: number) => boolean {
  const side = Math.max(1, Math.max(width, height) * fieldShare);
  const across = Math.ceil(width / side);
  const fieldAt = (x: number, y: number): number =>
    Math.floor(y / side) * across + Math.min(across - 1, Math.floor(x / side));
  const all = new Float64Array(across * (Math.ceil(height / side) + 1));
  const blurred = new Float64Array(all.length);
  const sharp = times * Math.max(blurPx, sharpestPx);
  for (const { line, places, contrasts, sigmas, lengths } of contours) {
    for (let n = 0; n < places.length; n++) {
      if ((contrasts[n] as number) < edgeLimits.lost) continue;
      const place = places[n] as number;
      const field = fieldAt(line.x[place] as number, line.y[place] as number);
      const length = lengths[n] as number;
      all[field] = (all[field] as number) + length;
      if ((sigmas[n] as number) > sharp) blurred[field] = (blurred[field] as number) + length;
    }
  }
  return (x, y) => {
    const field = fieldAt(x, y);
    const seen = all[field] ?? 0;
    return seen >= leastEdges * side && (blurred[field] as number) > seen / 2;
  };
}
