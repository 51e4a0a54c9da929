import type { Point } from '../../colour/lab.ts';
import type { PixelSize } from '../../raster/size.ts';
import { whiteOutlines } from '../../raster/trace-outlines.ts';

/** So far beyond its outline a refused white is painted, px: no rim of it stays when the line is thinned (own). */
const beyondPx = 5;

/** The map with one white only, grown by some pixels on all sides: wide first, then high. */
function grown(map: Uint16Array, { width, height }: PixelSize, white: number): Uint16Array {
  const wide = new Uint16Array(map.length);
  const grownMap = new Uint16Array(map.length);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (map[i] !== white + 1) continue;
      wide.fill(1, i - Math.min(x, beyondPx), i + Math.min(width - 1 - x, beyondPx) + 1);
    }
  }
  for (let i = 0; i < map.length; i++) {
    if (wide[i] === 0) continue;
    const y = Math.floor(i / width);
    const [from, to] = [-Math.min(y, beyondPx), Math.min(height - 1 - y, beyondPx)];
    for (let down = from; down <= to; down++) grownMap[i + down * width] = 1;
  }
  return grownMap;
}

/**
 * The line round a white of a map as `whiteMap` makes it, a little outside of it, 0..1 of the picture's sides: a stroke
 * with a brush of 0 along it paints the whole white. Empty where there is no such white.
 */
export function lineRoundWhite(map: Uint16Array, size: PixelSize, white: number): Point[] {
  const outer = whiteOutlines(grown(map, size, white), size).reduce<readonly number[]>(
    (longest, { points }) => (points.length > longest.length ? points : longest),
    [],
  );
  return Array.from({ length: outer.length / 2 }, (_, i) => [
    outer[2 * i] / size.width,
    outer[2 * i + 1] / size.height,
  ]);
}
