import type { ReadingWishes, ToneRange } from '../../../app/model/reading.ts';
import { optimalBands, tonesIn } from './optimal-bands.ts';
import { proposeBands } from './propose-bands.ts';

export const mostBands = 7;

export interface ChosenLimits {
  /** L*, from dark to light. */
  readonly limits: readonly number[];
  readonly proposedBands: number;
  readonly why: string;
  /** How many tones, and so bands at most, the picture holds. */
  readonly tones: number;
}

/**
 * The limits between bands: hers, or the best for the number she wished, or for the number the
 * picture asks for. `histogram` is of simplified lightness, `tones` how many the picture itself shows.
 */
export function chooseLimits(
  histogram: ArrayLike<number>,
  tones: number,
  range: ToneRange,
  wishes: ReadingWishes,
): ChosenLimits {
  const most = Math.min(mostBands, tones, tonesIn(histogram));
  const best = optimalBands(histogram, most);
  const { bands: proposedBands, why } = proposeBands(best, histogram, range);
  const count = Math.min(most, wishes.bands ?? proposedBands);
  const limits = wishes.limits
    ? [...new Set(wishes.limits)].sort((x, y) => x - y)
    : (best[count - 1]?.limits ?? []);
  return { limits, proposedBands, why, tones: most };
}
