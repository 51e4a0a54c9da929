import type { Pictures } from '../../../workers/api.ts';
import type { Lab } from '../../core/colour/lab.ts';
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

/** The picture in its few values. */
export const valuesLayer = (seen: OpenedReading): Layer =>
  bandLayer(seen, (band) => [seen.reading.bands[band - 1]?.lightness ?? 50, 0, 0]);

/** One band alone. */
export const singleBandLayer = (seen: OpenedReading, only: number): Layer =>
  bandLayer(seen, (band) => (band === only ? shownBlack : elsewhere));
