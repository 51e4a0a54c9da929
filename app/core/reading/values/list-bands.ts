import { valueOfLightness } from '../../colour/munsell-value.ts';
import type { Band, ToneRange } from '../reading.ts';
import { bandOfCell, type CellTones } from '../shapes/cells.ts';
import { plannedLightness } from '../tone-range.ts';

/** The bands of a reading, numbered anew from the lightest. `areas`: px after merging, by old number. */
export function listBands(
  kept: readonly KeptBand[],
  areas: ArrayLike<number>,
  tones: CellTones,
  range: ToneRange,
): Band[] {
  const pixels = kept.reduce((sum, { was }) => sum + (areas[was] ?? 0), 0);
  return kept.map(({ was, from, to }, i): Band => {
    const mean = tones.meanOf((cell) => bandOfCell(cell) === was);
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

/** A band that still has pixels after merging: the number it had, and its limits in L*. */
interface KeptBand {
  readonly was: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The bands of `areas` (px by band, index 0 unused) that are not empty, lightest first. The range of
 * an emptied band is halved between its neighbours. `limits` L* from dark to light.
 */
export function keptBands(areas: ArrayLike<number>, limits: readonly number[]): KeptBand[] {
  const count = limits.length + 1;
  const upper = (band: number): number => (band === 1 ? 100 : limits[count - band]);
  const lower = (band: number): number => (band === count ? 0 : limits[count - band - 1]);
  const kept: number[] = [];
  for (let band = 1; band <= count; band++) if (areas[band]) kept.push(band);
  const between = (light: number, dark: number): number => (lower(light) + upper(dark)) / 2;
  return kept.map((was, i) => {
    const lighter = kept[i - 1];
    const darker = kept[i + 1];
    return {
      was,
      from: darker === undefined ? 0 : between(was, darker),
      to: lighter === undefined ? 100 : between(lighter, was),
    };
  });
}
