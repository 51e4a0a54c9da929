import { valueOfLightness } from '../../colour/lightness.ts';
import type { Band, ToneRange } from '../reading.ts';
import { bandOfCell, type CellTones } from '../shapes/cells.ts';
import { onTheSheet } from '../tone-range.ts';

/** Bins of the lightness histogram; bin i stands for L* i / 2.55. */
export const bins = 256;

/** The bin of a lightness: round(L* x 2.55), held within 0..255. */
export function binOf(lightness: number): number {
  // Cutting off rounds numbers from -1 up to 0; much faster than Math.round.
  const bin = (lightness * 2.55 + 0.5) | 0;
  return bin < 0 ? 0 : Math.min(bin, 255);
}

/** The lightness a bin stands for, L*. */
export const lightnessOfBin = (bin: number): number => bin / 2.55;

/** The bin of every pixel: a lightness plane in one byte a pixel. */
export function binsOf(
  lightness: Float32Array,
  map = new Uint8Array(lightness.length),
): Uint8Array {
  for (let i = 0; i < map.length; i++) map[i] = binOf(lightness[i]);
  return map;
}

/** Pixels per bin of a map of bins; 256 counts that sum to the map's length. */
export function countBins(map: Uint8Array): Uint32Array {
  // Two halves counted apart: neighbours often share a bin, and one count would wait for the other.
  const counts = new Uint32Array(bins);
  const others = new Uint32Array(bins);
  const half = map.length >> 1;
  for (let i = 0, j = half; i < half; i++, j++) {
    counts[map[i]]++;
    others[map[j]]++;
  }
  if (map.length % 2 === 1) counts[map[2 * half]]++;
  for (let bin = 0; bin < bins; bin++) counts[bin] = counts[bin] + others[bin];
  return counts;
}

/**
 * The lightness, L*, that `share` (0..1) of the counted pixels do not exceed; to the bin. 0 where
 * nothing was counted.
 */
export function percentile(histogram: ArrayLike<number>, share: number): number {
  let total = 0;
  for (let bin = 0; bin < histogram.length; bin++) total += histogram[bin];
  const wanted = share * total;
  let seen = 0;
  for (let bin = 0; bin < histogram.length; bin++) {
    seen += histogram[bin];
    if (seen > 0 && seen >= wanted) return lightnessOfBin(bin);
  }
  return 0;
}

type PictureKey = 'high' | 'low' | 'full';

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

/** The bands of a reading. `areas`: px after merging, by old number; `isIn` says which cells are looked at. */
export function listBands(
  kept: readonly KeptBand[],
  areas: ArrayLike<number>,
  tones: CellTones,
  range: ToneRange,
  isIn: (cell: number) => boolean = () => true,
): Band[] {
  const pixels = kept.reduce((sum, { was }) => sum + (areas[was] ?? 0), 0);
  return kept.map(({ was, band, from, to }): Band => {
    const mean = tones.meanOf((cell) => bandOfCell(cell) === was && isIn(cell));
    if (!mean) throw new RangeError(`Band ${was} came out of nothing`);
    return {
      band,
      from,
      to,
      share: (areas[was] ?? 0) / pixels,
      lightness: mean.lab[0],
      value: valueOfLightness(mean.lab[0]),
      plannedLightness: onTheSheet(range, mean.lab[0]),
    };
  });
}

/** A band that still has pixels after merging: the number it had and has, and its limits in L*. */
interface KeptBand {
  readonly was: number;
  readonly band: number;
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
      band: i + 1,
      from: darker === undefined ? 0 : between(was, darker),
      to: lighter === undefined ? 100 : between(lighter, was),
    };
  });
}
