import { percentile } from './percentile.ts';

export type PictureKey = 'high' | 'low' | 'full';

/**
 * High key: nearly everything light. Low key: nearly everything dark. From the 5th, 50th and 95th
 * percentile of lightness. Limits are this project's own; common practice has the words, no numbers.
 */
export function pictureKey(histogram: ArrayLike<number>): PictureKey {
  const median = percentile(histogram, 0.5);
  if (median > 65 && percentile(histogram, 0.05) > 40) return 'high';
  if (median < 40 && percentile(histogram, 0.95) < 75) return 'low';
  return 'full';
}
