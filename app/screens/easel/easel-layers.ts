import { edgeLayer } from '../../drawing/edge-layer.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import type { Edge } from '../../model/edge.ts';
import type { Lab } from '../../model/lab.ts';
import type { Seen } from '../../state/seen.ts';

/** A band alone is black on the wall's grey, L*. */
const alone: Lab = [12, 0, 0];
const elsewhere: Lab = [62, 0, 0];

/** Some bands alone. */
export const bandsLayer = ({ reading, slotMap }: Seen, bands: ReadonlySet<number>): Layer =>
  slotLayer(
    slotMap,
    reading.slots.map(({ band }) => (bands.has(band) ? alone : elsewhere)),
  );

/** The same at every step: painted once. */
export function stillLayers(seen: Seen, edges: readonly Edge[]): Record<string, Layer> {
  const reference = bitmapLayer(seen.reference);
  const grey = bitmapLayer(seen.grey);
  return {
    reference,
    'reference-grey': grey,
    edges: edgeLayer(reference, edges),
    'edges-grey': edgeLayer(grey, edges),
  };
}
