import type { Lab } from '../../../app/model/lab.ts';
import type { Paint } from '../../../app/model/paint.ts';
import { defaultPaper } from './default-paper.ts';
import { labOfReflectance } from './lab-of-reflectance.ts';
import { mixSpectra } from './mix-spectra.ts';
import { layOver, paintLayer } from './paint-layer.ts';
import { type SurfaceState, surfaceFloor } from './surface.ts';
import type { Spectrum } from './wavelengths.ts';

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
