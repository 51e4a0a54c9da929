import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** A part of a picture, px. */
export interface Box extends PixelSize {
  readonly left: number;
  readonly top: number;
}

/** Where the area's pixels (1 in it) lie, with `margin` px round them as far as the picture goes; null without any. */
export function areaBox(
  area: Uint8Array,
  { width, height }: PixelSize,
  margin: number,
): Box | null {
  let [left, top, right, bottom] = [width, -1, -1, -1];
  for (let y = 0; y < height; y++) {
    const row = area.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    if (top < 0) top = y;
    bottom = y;
    left = Math.min(left, first);
    right = Math.max(right, row.lastIndexOf(1));
  }
  if (top < 0) return null;
  left = Math.max(0, left - margin);
  top = Math.max(0, top - margin);
  right = Math.min(width - 1, right + margin);
  bottom = Math.min(height - 1, bottom + margin);
  return { left, top, width: right - left + 1, height: bottom - top + 1 };
}

/** A plane's part in the box, copied into `into`. */
export function cutOut<T extends Uint8Array | Float32Array>(
  plane: T,
  width: number,
  box: Box,
  into: T,
): T {
  for (let y = 0; y < box.height; y++) {
    const start = (box.top + y) * width + box.left;
    into.set(plane.subarray(start, start + box.width), y * box.width);
  }
  return into;
}
