import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

export type ColourView = 'families' | 'photo';

/** What is not looked at: grey, and paled towards the surround so that the drawing still shows. */
const dimmed = ([lightness]: Lab): Lab => [62 + 0.3 * (lightness - 50), 0, 0];

/** The photo, and the picture in its colour families; of these only the ones chosen, if any is. */
export function colourLayers(
  { reading, slotMap }: Seen,
  reference: ImageBitmap,
  chosen: readonly number[],
): Record<ColourView, Layer> {
  const colours = reading.slots.map(({ family, lab }) =>
    chosen.length === 0 || chosen.includes(family) ? lab : dimmed(lab),
  );
  return { families: slotLayer(slotMap, colours), photo: bitmapLayer(reference) };
}
