import { labOfReflectance } from './lab-of-reflectance.ts';
import type { PaintSpectra } from './mix-spectra.ts';
import { layOver, paintLayer } from './paint-layer.ts';
import { bandCount, type Spectrum } from './wavelengths.ts';

const leastLoad = 1 / 64;
const mostLoad = 32;
/** Half octaves: where a scattering paint turns lighter again it has been dark enough before. */
const step = Math.SQRT2;

/**
 * The least load at which a mix (K, S per unit load) dries to that L* over a ground (36 bands, no floor),
 * to 1 part in 10,000; null where the ground is no lighter, or no load up to 32 is dark enough.
 */
export function loadForLightness(
  { K, S }: PaintSpectra,
  ground: Spectrum,
  lightness: number,
): number | null {
  const sheet = new Float64Array(bandCount);
  const at = (load: number): number =>
    labOfReflectance(layOver(paintLayer(K, S, load), ground, sheet))[0];
  if (at(0) <= lightness) return null;
  let low = 0;
  let high = leastLoad;
  while (at(high) > lightness) {
    if (high >= mostLoad) return null;
    low = high;
    high = Math.min(mostLoad, high * step);
  }
  while (high - low > 1e-4 * high) {
    const middle = (low + high) / 2;
    if (at(middle) > lightness) low = middle;
    else high = middle;
  }
  return high;
}
