import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import { shapesLayer } from '../../drawing/shapes-layer.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';
import type { FoundShapes } from './use-wash-shapes.ts';

export type ColourView = 'families' | 'shapes' | 'photo';

/** What is not looked at: grey, and paled towards the surround so that the drawing still shows. */
const dimmed = ([lightness]: Lab): Lab => [62 + 0.3 * (lightness - 50), 0, 0];

/** The picture in its colour families; of these only the ones chosen, if any is. */
export function familyLayer({ reading, slotMap }: Seen, chosen: readonly number[]): Layer {
  const colours = reading.slots.map(({ family, lab }) =>
    chosen.length === 0 || chosen.includes(family) ? lab : dimmed(lab),
  );
  return slotLayer(slotMap, colours);
}

/** The shapes of a wash over the picture; the picture alone until there are any of its size. */
export function washLayer(seen: Seen, found: FoundShapes | null): Layer {
  if (found?.of.slotMap.length !== seen.slotMap.length) return familyLayer(seen, []);
  const { reading, slotMap } = found.of;
  return shapesLayer(
    found.shapes,
    slotMap,
    reading.slots.map(({ lab }) => lab),
  );
}

export const photoLayer = (reference: ImageBitmap): Layer => bitmapLayer(reference);
