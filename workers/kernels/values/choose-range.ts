import type { RangeMode, ToneRange } from '../../../app/model/reading.ts';
import { toneRange } from '../../../app/model/tone-range.ts';
import { percentile } from './percentile.ts';
import { pictureKey } from './picture-key.ts';

/**
 * How the picture is brought onto the sheet: as she wished, else opened up, else (a picture in high
 * or low key means to be) as photographed. `darkest` and `paper` are L* of her paints and paper.
 */
export function chooseRange(
  histogram: ArrayLike<number>,
  darkest: number,
  paper: number,
  wish?: RangeMode,
): ToneRange {
  const mode = wish ?? (pictureKey(histogram) === 'full' ? 'opened' : 'photographed');
  return toneRange(mode, percentile(histogram, 0.01), percentile(histogram, 0.99), darkest, paper);
}
