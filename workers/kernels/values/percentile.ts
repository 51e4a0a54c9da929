import { lightnessOfBin } from './histogram.ts';

/**
 * The lightness, L*, that `share` (0..1) of the counted pixels do not exceed; to the bin. 0 where
 * nothing was counted.
 */
export function percentile(histogram: ArrayLike<number>, share: number): number {
  let total = 0;
  for (let bin = 0; bin < histogram.length; bin++) total += histogram[bin] as number;
  const wanted = share * total;
  let seen = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    seen += histogram[bin] as number;
    if (seen > 0 && seen >= wanted) return lightnessOfBin(bin);
  }
  return 0;
}
