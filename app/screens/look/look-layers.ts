import type { Pictures } from '../../../workers/analysis-api.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

/** The reference in colour and in grey: there before anything is read from it. */
export const pictureLayers = ({ reference, grey }: Pictures): Record<'colour' | 'grey', Layer> => ({
  colour: bitmapLayer(reference),
  grey: bitmapLayer(grey),
});

/** Shown for what is not looked at. */
const elsewhere: Lab = [62, 0, 0];
const shownBlack: Lab = [12, 0, 0];

const bandLayer = ({ reading, slotMap }: Seen, colour: (band: number) => Lab): Layer =>
  slotLayer(
    slotMap,
    reading.slots.map(({ band }) => colour(band)),
  );

/** The picture in its few values. */
export const valuesLayer = (seen: Seen): Layer =>
  bandLayer(seen, (band) => [seen.reading.bands[band - 1]?.lightness ?? 50, 0, 0]);

/** One band alone. */
export const onlyLayer = (seen: Seen, only: number): Layer =>
  bandLayer(seen, (band) => (band === only ? shownBlack : elsewhere));
