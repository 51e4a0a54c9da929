import type { Lab } from '../colour/lab.ts';
import {
  labOfReflectance,
  removeSurface,
  type Spectrum,
  type SurfaceState,
  spectrumSize,
  surfaceFloor,
} from '../colour/spectrum.ts';
import { strongestLoad } from '../limits.ts';
import { bisect } from '../numeric/solve.ts';
import optics from './data/pigment-optics.json';
import { layOver, mixSpectra, type PaintSpectra, paintLayer } from './layer.ts';
import type { Paint } from './paint.ts';

/**
 * Reflectance of white paper, 36 samples, without the surface floor. The optics table gives paper
 * as it is measured, floor included; its predicted ladders hold only with the floor taken out. The
 * paper is an assumed one: see paperNote of the table.
 */
export const defaultPaper: Float64Array = Float64Array.from(optics.paper_R, (measured) =>
  removeSurface(measured, surfaceFloor.dry),
);

/** What that paper looks like, dry. */
export const defaultPaperLab: Lab = labOfReflectance(defaultPaper);

/** One wash: paints, their parts and the total load (1 = the pale wash of the optics table). */
export interface Wash {
  readonly paints: readonly Paint[];
  readonly parts: readonly number[];
  readonly load: number;
}

/**
 * Reflectance, 36 samples, of washes laid one over the other, each dried; the first lies lowest.
 */
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

/** Colour of washes laid one over the other on the default paper, surface floor included. */
export function colourOfWashes(washes: readonly Wash[], surface: SurfaceState = 'dry'): Lab {
  return labOfReflectance(reflectanceOfWashes(washes), surfaceFloor[surface]);
}

const leastLoad = 1 / 64;
/**
 * Loads are searched in half octaves: a scattering paint may turn lighter again at higher loads,
 * but a step that short does not miss that it was dark enough before.
 */
const step = Math.SQRT2;

/**
 * The least load at which a mix (K, S per unit load) dries to that L* over a ground (36 samples, no
 * floor), to 1 part in 10,000; null where the ground is no lighter, or not even the strongest load
 * is dark enough.
 */
export function loadForLightness(
  { K, S }: PaintSpectra,
  ground: Spectrum,
  lightness: number,
): number | null {
  const sheet = new Float64Array(spectrumSize);
  const lightnessAt = (load: number): number =>
    labOfReflectance(layOver(paintLayer(K, S, load), ground, sheet))[0];
  if (lightnessAt(0) <= lightness) return null;
  let low = 0;
  let high = leastLoad;
  while (lightnessAt(high) > lightness) {
    if (high >= strongestLoad) return null;
    low = high;
    high = Math.min(strongestLoad, high * step);
  }
  return bisect(
    (load) => lightnessAt(load) > lightness,
    low,
    high,
    (load) => 1e-4 * load,
  )[1];
}
