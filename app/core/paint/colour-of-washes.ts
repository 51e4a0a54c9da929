import type { Lab } from '../colour/lab.ts';
import {
  bandCount,
  labOfReflectance,
  type Spectrum,
  type SurfaceState,
  surfaceFloor,
} from '../colour/spectrum.ts';
import optics from './data/pigment-optics.json';
import { layOver, mixSpectra, type PaintSpectra, paintLayer } from './layer.ts';
import type { Paint } from './paint.ts';

/**
 * White paper, 36 bands, without the surface floor: the table gives paper as it is measured, floor
 * included, and its predicted ladders hold only with the floor taken out again. Assumed paper (see
 * paperNote of the optics table).
 */
export const defaultPaper: Float64Array = Float64Array.from(
  optics.paper_R,
  (measured) => (measured - surfaceFloor.dry) / (1 - surfaceFloor.dry),
);

/** What that paper looks like, dry. */
export const defaultPaperLab: Lab = labOfReflectance(defaultPaper);

/** One wash: paints, their parts and the total load (1 = the pale wash of the optics table). */
export interface Wash {
  readonly paints: readonly Paint[];
  readonly parts: readonly number[];
  readonly load: number;
}

/** Reflectance, 36 bands, of washes laid one over the other (first one first), each dried. */
export function reflectanceOfWashes(
  washes: readonly Wash[],
  paper: Spectrum = defaultPaper,
): Float64Array {
  const sheet = Float64Array.from(paper);
  for (const { paints, parts, load } of washes) {
    const { K, S } = mixSpectra(paints, parts);
    layOver(paintLayer(K, S, load), sheet, sheet);
  }
  return sheet;
}

/** What washes laid one over the other look like, on the default paper, surface floor included. */
export function colourOfWashes(washes: readonly Wash[], surface: SurfaceState = 'dry'): Lab {
  return labOfReflectance(reflectanceOfWashes(washes), surfaceFloor[surface]);
}

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
