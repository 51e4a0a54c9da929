import type { Layer } from '../../drawing/layers.ts';
import { lightnessLayer } from '../../drawing/light-layers.ts';
import { bandsByLimits } from '../../model/bands-by-limits.ts';

/** The few values as limits being moved would make them, straight from the simplified lightness. */
export function liveValuesLayer(
  lightnessMap: Uint8Array,
  histogram: readonly number[],
  limits: readonly number[],
): Layer {
  const bands = bandsByLimits(histogram, limits);
  return lightnessLayer(lightnessMap, (lightness) => {
    const above = limits.filter((limit) => limit > lightness).length;
    return bands[above]?.lightness ?? lightness;
  });
}
