import type { PixelSize } from '../../../app/model/pixel-size.ts';

/**
 * Distance in cells from every cell to the nearest one that holds `value`, by two sweeps with steps
 * of 1 and sqrt 2 (chamfer distance; Borgefors, 'Distance Transformations in Digital Images', 1986;
 * at most 8 % long). Infinity where there is none.
 */
export function distancesTo(
  map: Uint8Array,
  value: number,
  { width, height }: PixelSize,
): Float32Array {
  const far = Float32Array.from(map, (own) => (own === value ? 0 : Number.POSITIVE_INFINITY));
  const look = (i: number, x: number, y: number, dx: number, dy: number): void => {
    if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) return;
    const way = (far[i + dy * width + dx] as number) + (dx !== 0 && dy !== 0 ? Math.SQRT2 : 1);
    if (way < (far[i] as number)) far[i] = way;
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (far[i] === 0) continue;
      look(i, x, y, -1, 0);
      look(i, x, y, -1, -1);
      look(i, x, y, 0, -1);
      look(i, x, y, 1, -1);
    }
  }
  for (let y = height - 1, i = far.length - 1; y >= 0; y--) {
    for (let x = width - 1; x >= 0; x--, i--) {
      if (far[i] === 0) continue;
      look(i, x, y, 1, 0);
      look(i, x, y, 1, 1);
      look(i, x, y, 0, 1);
      look(i, x, y, -1, 1);
    }
  }
  return far;
}
