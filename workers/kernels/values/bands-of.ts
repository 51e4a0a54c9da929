import { valueOfLightness } from '../../../app/model/munsell-value.ts';
import type { Band, ToneRange } from '../../../app/model/reading.ts';
import { plannedLightness } from '../../../app/model/tone-range.ts';
import type { KeptBand } from '../shapes/kept-bands.ts';
import type { KindTones } from '../shapes/kind-tones.ts';
import { bandOfKind } from '../shapes/kinds.ts';

/** The bands of a reading, numbered anew from the lightest. `areas`: px after merging, by old number. */
export function bandsOf(
  kept: readonly KeptBand[],
  areas: ArrayLike<number>,
  tones: KindTones,
  range: ToneRange,
): Band[] {
  const pixels = kept.reduce((sum, { was }) => sum + (areas[was] ?? 0), 0);
  return kept.map(({ was, from, to }, i): Band => {
    const mean = tones.meanOf((kind) => bandOfKind(kind) === was);
    if (!mean) throw new RangeError(`Band ${was} came out of nothing`);
    return {
      band: i + 1,
      from,
      to,
      share: (areas[was] ?? 0) / pixels,
      lightness: mean.lab[0],
      value: valueOfLightness(mean.lab[0]),
      plannedLightness: plannedLightness(range, mean.tones),
      tones: mean.tones,
    };
  });
}
