import { runningMedian, thresholdWithHysteresis } from '../../numeric/filter-series.ts';
import { widthOfSigma } from '../../numeric/normal-curve.ts';
import type { PixelSize } from '../../raster/size.ts';
import { type EdgeKind, edgeLimits } from './edge.ts';
import type { MeasuredContour } from './edge-profile.ts';

/** Edges of at least this contrast show how sharp the photo is, L*. */
const strongContrast = 15;
/** Cap on the camera's blur, sigma in px: without it a photo soft throughout would be read as hard. */
const mostBlurPx = 1.5;

/** The camera's own blur, sigma in px: that of the sharpest tenth of the strong edges; 0 without any. */
export function measureCameraBlur(contours: readonly MeasuredContour[]): number {
  const strong: number[] = [];
  for (const { contrasts, sigmas } of contours) {
    for (let n = 0; n < sigmas.length; n++) {
      if (contrasts[n] >= strongContrast) strong.push(sigmas[n]);
    }
  }
  if (strong.length === 0) return 0;
  const sorted = Float64Array.from(strong).sort();
  return Math.min(mostBlurPx, sorted[Math.floor(sorted.length / 10)]);
}

/** Takes the camera's blur out of a measured one: blurs add in squares. */
export const subtractBlur = (sigmaPx: number, blurPx: number): number =>
  Math.sqrt(Math.max(0, sigmaPx * sigmaPx - blurPx * blurPx));

/** The steepest slope of a blurred step is contrast / (this x its 10-90 % width). */
const slopeOfWidth = Math.sqrt(2 * Math.PI) / widthOfSigma;

/** Kind by contrast (L*, whether seen and plain already settled) and width (share of the long side). */
export function classifyEdge(
  contrast: number,
  widthShare: number,
  isSeen = contrast >= edgeLimits.lost,
  isPlain = contrast >= edgeLimits.plain,
): EdgeKind {
  if (!isSeen) return 'lost';
  if (contrast < edgeLimits.lostSlope * slopeOfWidth * 100 * widthShare) return 'lost';
  if (widthShare > edgeLimits.soft) return 'soft';
  return isPlain ? 'hard' : 'found';
}

/** Kind of every sample along a contour. blurPx: the photo's own, sigma. */
export function classifyAlong(
  { line, contrasts, sigmas }: MeasuredContour,
  blurPx: number,
  longSidePx: number,
): EdgeKind[] {
  const contrast = runningMedian(contrasts, line.closed);
  const sigma = runningMedian(sigmas, line.closed);
  const { lost, plain, hysteresis } = edgeLimits;
  const seen = thresholdWithHysteresis(contrast, lost, hysteresis, line.closed);
  const plainly = thresholdWithHysteresis(contrast, plain, hysteresis, line.closed);
  const kinds: EdgeKind[] = [];
  for (let n = 0; n < contrast.length; n++) {
    const widthPx = widthOfSigma * subtractBlur(sigma[n], blurPx);
    const own = contrast[n];
    kinds.push(classifyEdge(own, widthPx / longSidePx, seen[n] === 1, plainly[n] === 1));
  }
  return kinds;
}

/** The picture is looked at in fields of this part of its long side (own). */
const fieldShare = 1 / 12;
/** Fields with less edge length than this many of their sides are skipped. */
const leastEdges = 1;
/** An edge blurred so many times as wide as the camera's own blur is out of focus. */
const blurFactor = 2;
/** No camera is taken for sharper than this, sigma in px. */
const sharpestPx = 0.75;

/**
 * Fields of the picture where over half of the edges that can be seen, by length, are blurred twice
 * as wide as the photo's sharpest; answers whether a point (px) lies in one.
 */
export function findOutOfFocus(
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
  const sharp = blurFactor * Math.max(blurPx, sharpestPx);
  for (const { line, places, contrasts, sigmas, lengths } of contours) {
    for (let n = 0; n < places.length; n++) {
      if (contrasts[n] < edgeLimits.lost) continue;
      const place = places[n];
      const field = fieldAt(line.x[place], line.y[place]);
      const length = lengths[n];
      all[field] = all[field] + length;
      if (sigmas[n] > sharp) blurred[field] = blurred[field] + length;
    }
  }
  return (x, y) => {
    const field = fieldAt(x, y);
    const seen = all[field] ?? 0;
    return seen >= leastEdges * side && blurred[field] > seen / 2;
  };
}
