import type { PixelSize } from '../../../app/model/pixel-size.ts';

/** A plane of L* at 1 / 2^n of the size. */
export interface PyramidLevel {
  readonly plane: Float32Array;
  readonly width: number;
  readonly height: number;
  /** Side of one of its pixels in px of the picture. */
  readonly scale: number;
}

/** Means of two by two pixels; an odd last row or column counts double. */
function halved({ plane, width, height, scale }: PyramidLevel): PyramidLevel {
  const newWidth = (width + 1) >> 1;
  const newHeight = (height + 1) >> 1;
  const half = new Float32Array(newWidth * newHeight);
  for (let y = 0, at = 0; y < newHeight; y++) {
    const top = 2 * y * width;
    const low = Math.min(2 * y + 1, height - 1) * width;
    for (let x = 0; x < newWidth; x++, at++) {
      const left = 2 * x;
      const right = Math.min(left + 1, width - 1);
      const sum =
        (plane[top + left] as number) +
        (plane[top + right] as number) +
        (plane[low + left] as number) +
        (plane[low + right] as number);
      half[at] = sum / 4;
    }
  }
  return { plane: half, width: newWidth, height: newHeight, scale: 2 * scale };
}

/** The plane itself, and `levels - 1` halvings of it. */
export function lightnessPyramid(
  plane: Float32Array,
  { width, height }: PixelSize,
  levels: number,
): PyramidLevel[] {
  const pyramid: PyramidLevel[] = [{ plane, width, height, scale: 1 }];
  while (pyramid.length < levels) pyramid.push(halved(pyramid.at(-1) as PyramidLevel));
  return pyramid;
}

/** Value between four pixels of a level at (x, y) px of the picture; beyond the border the border goes on. */
function levelAt(level: PyramidLevel, x: number, y: number): number {
  const { plane, width, height, scale } = level;
  const u = Math.min(width - 1, Math.max(0, x / scale - 0.5));
  const v = Math.min(height - 1, Math.max(0, y / scale - 0.5));
  const column = Math.min(width - 2, u | 0);
  const row = Math.min(height - 2, v | 0);
  if (column < 0 || row < 0) return plane[(v | 0) * width + (u | 0)] as number;
  const i = row * width + column;
  const right = u - column;
  const below = v - row;
  const top = (plane[i] as number) + right * ((plane[i + 1] as number) - (plane[i] as number));
  const low =
    (plane[i + width] as number) +
    right * ((plane[i + width + 1] as number) - (plane[i + width] as number));
  return top + below * (low - top);
}

/** `count` values of a level from (x, y) on in equal steps, px of the picture, into rows[at ...]. */
export function levelRow(
  level: PyramidLevel,
  from: { readonly x: number; readonly y: number },
  step: { readonly x: number; readonly y: number },
  rows: Float32Array,
  at: number,
  count: number,
): void {
  let { x, y } = from;
  for (let k = at; k < at + count; k++, x += step.x, y += step.y) rows[k] = levelAt(level, x, y);
}
