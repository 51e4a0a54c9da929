import type { Lab } from '../colour/lab.ts';
import { labOfReflectance, type Spectrum, spectrumSize } from '../colour/spectrum.ts';
import { drySurface, inside, type Surface } from '../colour/surface.ts';
import { bisect } from '../numeric/solve.ts';
import optics from './data/pigment-optics.json';
import { layOver, type MixSpectra, mixSpectra, paintLayer } from './layer.ts';
import type { Paint } from './paint.ts';

/**
 * Reflectance of white paper inside the surface, 36 samples. The optics table gives paper as it is measured, from
 * outside. The paper is an assumed one: see paperNote of the table.
 */
export const paperInside = (surface: Surface): Float64Array =>
  Float64Array.from(optics.paper_R, (measured) => inside(measured, surface));

/** That paper under the surface plans are made for. */
export const defaultPaper: Float64Array = paperInside(drySurface);

/** What it looks like, dry. */
export const defaultPaperLab: Lab = labOfReflectance(defaultPaper);

/** One wash: paints, their parts of volume and how much of the mix is laid, ml/m2. */
export interface Wash {
  readonly paints: readonly Paint[];
  readonly parts: readonly number[];
  readonly load: number;
}

/**
 * Reflectance inside the surface, 36 samples, of washes laid one over the other, each dried; the first lies lowest.
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

/** Dry colour of washes laid one over the other on the default paper, seen through a surface. */
export const colourOfWashes = (washes: readonly Wash[], surface: Surface = drySurface): Lab =>
  labOfReflectance(reflectanceOfWashes(washes, paperInside(surface)), surface);

const leastLoad = 1 / 64;
/**
 * Loads are searched in half octaves: a scattering paint may turn lighter again at higher loads,
 * but a step that short does not miss that it was dark enough before.
 */
const step = Math.SQRT2;

/**
 * The least load, ml/m2, at which a mix dries to that L* over a ground (36 samples, inside the surface), to 1 part in
 * 10,000; null where the ground is no lighter, or not even its full coat is dark enough.
 */
export function loadForLightness(
  { K, S, coat }: MixSpectra,
  ground: Spectrum,
  lightness: number,
  surface: Surface = drySurface,
): number | null {
  const sheet = new Float64Array(spectrumSize);
  const lightnessAt = (load: number): number =>
    labOfReflectance(layOver(paintLayer(K, S, load), ground, sheet), surface)[0];
  if (lightnessAt(0) <= lightness) return null;
  let low = 0;
  let high = leastLoad;
  while (lightnessAt(high) > lightness) {
    if (high >= coat) return null;
    low = high;
    high = Math.min(coat, high * step);
  }
  return bisect(
    (load) => lightnessAt(load) > lightness,
    low,
    high,
    (load) => 1e-4 * load,
  )[1];
}
