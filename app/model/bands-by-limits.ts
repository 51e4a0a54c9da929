export interface BandAtOnce {
  readonly band: number;
  readonly from: number;
  readonly to: number;
  /** Mean simplified lightness, L*; the middle where no pixel falls between the limits. */
  readonly lightness: number;
}

/**
 * The bands that limits (L*, from dark to light) make of a histogram of 256 bins, bin = L* x 2.55, the
 * lightest first: what she sees while she drags, before shapes are joined.
 */
export function bandsByLimits(
  histogram: readonly number[],
  limits: readonly number[],
): BandAtOnce[] {
  const ends = [0, ...limits, 100];
  const bands = ends.slice(1).map((to, i): BandAtOnce => {
    const from = ends[i] as number;
    let count = 0;
    let sum = 0;
    histogram.forEach((pixels, bin) => {
      const lightness = bin / 2.55;
      const above = i === 0 || lightness >= from;
      if (!above || (lightness >= to && i < limits.length)) return;
      count += pixels;
      sum += pixels * lightness;
    });
    return {
      band: limits.length + 1 - i,
      from,
      to,
      lightness: count ? sum / count : (from + to) / 2,
    };
  });
  return bands.reverse();
}
