import type { Pictures } from '../../../workers/analysis-api.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

/** The reference in colour and in grey: there before anything is read from it. */
export const pictureLayers = ({ reference, grey }: Pictures): Record<string, Layer> => ({
  colour: bitmapLayer(reference),
  grey: bitmapLayer(grey),
});

/** Shown for what is not looked at. */
const elsewhere: Lab = [62, 0, 0];
const shownBlack: Lab = [12, 0, 0];

/** The picture in its few values, and one of them alone where `only` names it. */
export function valueLayers(
  { reading, slotMap }: Seen,
  only: number | null,
): Record<string, Layer> {
  const layerOf = (colour: (band: number) => Lab): Layer =>
    slotLayer(
      slotMap,
      reading.slots.map(({ band }) => colour(band)),
    );
  const values = layerOf((band) => [reading.bands[band - 1]?.lightness ?? 50, 0, 0]);
  if (only === null) return { values };
  return { values, [`only-${only}`]: layerOf((band) => (band === only ? shownBlack : elsewhere)) };
}
