import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

/** Shown for what is not looked at: the middle grey of the surround. */
const elsewhere: Lab = [62, 0, 0];

/** The layers of the value study; `only` adds one band alone, in its own grey. */
export function lookLayers(seen: Seen, only: number | null): Record<string, Layer> {
  const { reading, slotMap } = seen;
  const greyOf = (band: number): Lab => [reading.bands[band - 1]?.lightness ?? 50, 0, 0];
  const layers: Record<string, Layer> = {
    colour: bitmapLayer(seen.reference),
    grey: bitmapLayer(seen.grey),
    values: slotLayer(
      slotMap,
      reading.slots.map((slot) => greyOf(slot.band)),
    ),
  };
  if (only !== null)
    layers[`only-${only}`] = slotLayer(
      slotMap,
      reading.slots.map((slot) => (slot.band === only ? [12, 0, 0] : elsewhere)),
    );
  return layers;
}
