import type { Pictures } from '../../../workers/api.ts';
import type { Lab } from '../../core/colour/lab.ts';
import { bandsWithin, type ToneRange } from '../../core/reading/reading.ts';
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

type Tone = Pick<ToneRange, 'dark' | 'darkest' | 'paper'>;

/**
 * Few values as a painter's notan has them: the lightest is the paper, the darkest the darkest paint, the others keep
 * their places between. L*.
 */
export function asNotan(
  bands: readonly { readonly lightness: number }[],
  { dark, darkest = dark, paper }: Tone,
): { readonly lightness: number }[] {
  const high = Math.max(...bands.map(({ lightness }) => lightness));
  const low = Math.min(...bands.map(({ lightness }) => lightness));
  if (high <= low) return [...bands];
  return bands.map(({ lightness }) => ({
    lightness: darkest + ((lightness - low) / (high - low)) * (paper - darkest),
  }));
}

/** The picture in its few values. */
export function valuesLayer({ reading, slotMap }: OpenedReading): Layer {
  const values = reading.slots.map(
    ({ passage, band, lab }) => bandsWithin(reading, passage)[band - 1] ?? { lightness: lab[0] },
  );
  const shown = asNotan(values, reading.range);
  return slotLayer(
    slotMap,
    shown.map(({ lightness }) => [lightness, 0, 0]),
  );
}

/** One band alone. */
export const singleBandLayer = ({ reading, slotMap }: OpenedReading, only: number): Layer =>
  slotLayer(
    slotMap,
    reading.slots.map(({ band }) => (band === only ? shownBlack : elsewhere)),
  );
