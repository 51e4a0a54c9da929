import type { Point } from './lab.ts';

/** Four places: a tenth of a pixel of the working raster. */
const rounded = (share: number): number => Math.round(share * 10_000) / 10_000;

/**
 * A stroke with points nearer than `step` to the one before left out, and rounded, so that a long
 * one takes little room. Its two ends stay. All in the same 0..1 coordinates.
 */
export function thinStroke(stroke: readonly Point[], step = 0.004): Point[] {
  const kept: Point[] = [];
  stroke.forEach((point, i) => {
    const before = kept.at(-1);
    const near = before && Math.hypot(point[0] - before[0], point[1] - before[1]) < step;
    if (!near || i === stroke.length - 1) kept.push([rounded(point[0]), rounded(point[1])]);
  });
  return kept;
}
