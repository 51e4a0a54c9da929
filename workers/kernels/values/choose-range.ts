import type { RangeMode, ToneRange } from '../../../app/model/reading.ts';
import { toneRange } from '../../../app/model/tone-range.ts';
import { percentile } from './percentile.ts';
import { pictureKey } from './picture-key.ts';

/** A picture of a narrower span (L*) has nothing to open up: it would be torn to black and white. */
const leastSpan = 10;

/**
 * How the picture is brought onto the sheet: as she wished, else opened up; as photographed where it
 * is in high or low key (it means to be) or hardly has a span. `darkest` and `paper` are L* of her paints and paper.
 */
export function chooseRange(
  histogram: ArrayLike<number>,
  darkest: number,
  paper: number,
  wish?: RangeMode,
): ToneRange {
  const lo = percentile(histogram, 0.01);
  const hi = percentile(histogram, 0.99);
  const asItIs = hi - lo < leastSpan || pictureKey(histogram) !== 'full';
  return toneRange(wish ?? (asItIs ? 'photographed' : 'opened'), lo, hi, darkest, paper);
}
