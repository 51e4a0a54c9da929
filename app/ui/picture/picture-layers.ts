import type { Pictures } from '../../../workers/api.ts';
import type { Lab } from '../../core/colour/lab.ts';
import type { ToneRange } from '../../core/reading/reading.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';

/** The reference in colour and in grey: there before anything is read from it. */
export const pictureLayers = ({ reference, grey }: Pictures): Record<'colour' | 'grey', Layer> => ({
  colour: bitmapLayer(reference),
  grey: bitmapLayer(grey),
});

/** Shown for what is not looked at. */
const elsewhere: Lab = [62, 0, 0];
const shownBlack: Lab = [12, 0, 0];

const bandLayer = ({ reading, slotMap }: OpenedReading, colour: (band: number) => Lab): Layer =>
  slotLayer(
    slotMap,
    reading.slots.map(({ band }) => colour(band)),
  );

type Tone = Pick<ToneRange, 'dark' | 'darkest' | 'paper'>;

/**
 * Few values as a painter's notan has them: the lightest is the paper, the darkest the darkest paint, the others keep
 * their places between. Lightest first, as bands are; L*.
 */
export function asNotan(
  bands: readonly { readonly lightness: number }[],
  { dark, darkest = dark, paper }: Tone,
): { readonly lightness: number }[] {
  const [high = 0, low = 0] = [bands[0]?.lightness, bands.at(-1)?.lightness];
  if (high <= low) return [...bands];
  return bands.map(({ lightness }) => ({
    lightness: darkest + ((lightness - low) / (high - low)) * (paper - darkest),
  }));
}

/** The picture in its few values. */
export function valuesLayer(seen: OpenedReading): Layer {
  const shown = asNotan(seen.reading.bands, seen.reading.range);
  return bandLayer(seen, (band) => [shown[band - 1]?.lightness ?? 50, 0, 0]);
}

/** One band alone. */
export const singleBandLayer = (seen: OpenedReading, only: number): Layer =>
  bandLayer(seen, (band) => (band === only ? shownBlack : elsewhere));
