import type { Lab } from '../model/lab.ts';
import { lightToLab } from './light-to-lab.ts';
import { lightOfCode } from './linear-light.ts';

/** RGBA bytes, row by row: what a canvas hands out. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/**
 * Mean colour, in linear light, of the pixels whose centres lie within `radius` px of (x, y), both in
 * px from the upper left corner; at least the pixel that holds the point. Outside nothing counts: the
 * point itself is held inside.
 */
export function meanColour(
  { data, width, height }: Pixels,
  x: number,
  y: number,
  radius: number,
): Lab {
  const middleX = Math.min(width - 1, Math.max(0, Math.floor(x)));
  const middleY = Math.min(height - 1, Math.max(0, Math.floor(y)));
  const reach = Math.ceil(radius);
  let [count, red, green, blue] = [0, 0, 0, 0];
  const top = Math.max(0, middleY - reach);
  const bottom = Math.min(height - 1, middleY + reach);
  for (let row = top; row <= bottom; row++) {
    const left = Math.max(0, middleX - reach);
    const right = Math.min(width - 1, middleX + reach);
    for (let column = left; column <= right; column++) {
      const held = row === middleY && column === middleX;
      if (!held && Math.hypot(column + 0.5 - x, row + 0.5 - y) > radius) continue;
      const p = (row * width + column) * 4;
      count++;
      red += lightOfCode[data[p] as number] as number;
      green += lightOfCode[data[p + 1] as number] as number;
      blue += lightOfCode[data[p + 2] as number] as number;
    }
  }
  return lightToLab(red / count, green / count, blue / count);
}
