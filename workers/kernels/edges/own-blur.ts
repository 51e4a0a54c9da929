import type { MeasuredContour } from './measure-edges.ts';

/** Edges of at least this contrast tell how sharp the photo is, L*. */
const strongContrast = 15;
/** A photo soft throughout would else subtract itself to hard, sigma in px. */
const mostBlurPx = 1.5;

/** The photo's own blur, sigma in px: that of the sharpest tenth of its strong edges; 0 without any. */
export function ownBlur(contours: readonly MeasuredContour[]): number {
  const strong: number[] = [];
  for (const { contrasts, sigmas } of contours) {
    for (let n = 0; n < sigmas.length; n++) {
      if ((contrasts[n] as number) >= strongContrast) strong.push(sigmas[n] as number);
    }
  }
  if (strong.length === 0) return 0;
  const sorted = Float64Array.from(strong).sort();
  return Math.min(mostBlurPx, sorted[Math.floor(sorted.length / 10)] as number);
}

/** Way from 10 % to 90 % in sigmas is `widthOfSigma`; blurs add in squares. */
export const withoutBlur = (sigmaPx: number, blurPx: number): number =>
  Math.sqrt(Math.max(0, sigmaPx * sigmaPx - blurPx * blurPx));
