import { type EdgeKind, edgeLimits } from '../../../app/model/edge.ts';
import type { MeasuredContour } from './measure-edges.ts';
import { widthOfSigma } from './normal-curve.ts';
import { withoutBlur } from './own-blur.ts';
import { runningMedian } from './running-median.ts';
import { settledAbove } from './settled-above.ts';

/** The steepest slope of a blurred step is contrast / (this x its 10-90 % width). */
const slopeOfWidth = Math.sqrt(2 * Math.PI) / widthOfSigma;

/** Kind by contrast (L*, whether seen and plain already settled) and width (share of the long side). */
export function edgeKind(
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
export function edgeKindsAlong(
  { line, contrasts, sigmas }: MeasuredContour,
  blurPx: number,
  longSidePx: number,
): EdgeKind[] {
  const contrast = runningMedian(contrasts, line.closed);
  const sigma = runningMedian(sigmas, line.closed);
  const { lost, plain, hysteresis } = edgeLimits;
  const seen = settledAbove(contrast, lost, hysteresis, line.closed);
  const plainly = settledAbove(contrast, plain, hysteresis, line.closed);
  const kinds: EdgeKind[] = [];
  for (let n = 0; n < contrast.length; n++) {
    const widthPx = widthOfSigma * withoutBlur(sigma[n] as number, blurPx);
    const own = contrast[n] as number;
    kinds.push(edgeKind(own, widthPx / longSidePx, seen[n] === 1, plainly[n] === 1));
  }
  return kinds;
}
