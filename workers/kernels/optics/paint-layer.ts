import { writeLayerBand } from './layer.ts';
import { bandCount, type Spectrum } from './wavelengths.ts';

/** A layer of paint, 36 bands: `back` is R0 (over black), `through` is T. */
export interface PaintLayer {
  readonly back: Float64Array;
  readonly through: Float64Array;
}

/** The layer of a mix with absorption K and scattering S per unit load, at `load` (0 or more). */
export function paintLayer(K: Spectrum, S: Spectrum, load: number): PaintLayer {
  const back = new Float64Array(bandCount);
  const through = new Float64Array(bandCount);
  const pair = new Float64Array(2);
  for (let i = 0; i < bandCount; i++) {
    writeLayerBand((K[i] as number) * load, (S[i] as number) * load, pair, 0);
    back[i] = pair[0] as number;
    through[i] = pair[1] as number;
  }
  return { back, through };
}

/**
 * Reflectance of a layer over a ground: R = R0 + T^2 Rg / (1 - R0 Rg). Kubelka (1948).
 * All arrays 36 bands; `out` may be `ground`.
 */
export function layOver(layer: PaintLayer, ground: Spectrum, out: Float64Array): Float64Array {
  for (let i = 0; i < bandCount; i++) {
    const back = layer.back[i] as number;
    const through = layer.through[i] as number;
    const under = ground[i] as number;
    // A perfect mirror over a perfect mirror: nothing gets through, so the second term is 0, not 0/0.
    const between = Math.max(1 - back * under, 1e-12);
    out[i] = back + (through * through * under) / between;
  }
  return out;
}
