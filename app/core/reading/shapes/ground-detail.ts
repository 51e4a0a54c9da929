import { chamferDistances } from '../../raster/distance-map.ts';
import type { PixelSize } from '../../raster/size.ts';

/** Away from the subject the smallest shape grows to so many times as wide ... */
const widestTimes = 1.5;
/** ... at this distance, mm (own: the eye comes back to the subject). */
const simplestFromMm = 100;

/** Distances need no finer grid, mm. */
const cellMm = 2;

/**
 * How many times the usual area the smallest shape has at a place, by its distance from the subject (1 in the mask):
 * once in it and beside it, 2.25 times far away.
 */
export function groundDetail(
  subject: Uint8Array,
  { width, height }: PixelSize,
  pxPerMm: number,
): (x: number, y: number) => number {
  const cellPx = Math.max(1, Math.round(cellMm * pxPerMm));
  const grid = { width: Math.ceil(width / cellPx), height: Math.ceil(height / cellPx) };
  const cells = new Uint8Array(grid.width * grid.height);
  for (let y = 0, i = 0; y < height; y++) {
    const line = Math.floor(y / cellPx) * grid.width;
    for (let x = 0; x < width; x++, i++) {
      if (subject[i] === 1) cells[line + Math.floor(x / cellPx)] = 1;
    }
  }
  const times = chamferDistances(cells, 1, grid).map((distance) => {
    const far = Math.min(1, (distance * cellPx) / pxPerMm / simplestFromMm);
    return (1 + (widestTimes - 1) * far) ** 2;
  });
  return (x, y) => times[Math.floor(y / cellPx) * grid.width + Math.floor(x / cellPx)];
}
