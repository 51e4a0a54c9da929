import type { Lab } from '../../colour/lab.ts';
import { type Spectrum, spectrumSize, writeLab } from '../../colour/spectrum.ts';
import { drySurface } from '../../colour/surface.ts';
import { reflectanceOver, writeLayerSample } from '../../paint/layer.ts';

/** A dried sheet from its reflectance (36 samples, inside the surface); the array is kept, not copied. */
export function driedSheetOf(reflectance: Float64Array): DriedSheet {
  const lab = new Float64Array(3);
  writeLab(reflectance, drySurface, lab);
  return { reflectance, lab };
}

/** Reflectance of `load` of a mix (K, S per ml/m2) laid over a dried sheet, written to `out`. */
export function writeWash(
  mix: { readonly K: Spectrum; readonly S: Spectrum },
  load: number,
  under: Spectrum,
  out: Float64Array,
): void {
  const pair = new Float64Array(2);
  for (let i = 0; i < spectrumSize; i++) {
    writeLayerSample(mix.K[i] * load, mix.S[i] * load, pair, 0);
    out[i] = reflectanceOver(pair[0], pair[1], under[i]);
  }
}

/** The sheet after a wash has dried over it. */
export function layMix(
  mix: { readonly K: Spectrum; readonly S: Spectrum },
  load: number,
  dried: DriedSheet,
): DriedSheet {
  const out = new Float64Array(spectrumSize);
  writeWash(mix, load, dried.reflectance, out);
  return driedSheetOf(out);
}

/** A dried state of the sheet: 36 samples inside the surface, and its Lab. */
export interface DriedSheet {
  readonly reflectance: Float64Array;
  readonly lab: Float64Array;
}

export const labOfSheet = ({ lab }: DriedSheet): Lab => [lab[0], lab[1], lab[2]];
