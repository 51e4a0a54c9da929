import type { Lab } from '../../colour/lab.ts';
import { bandCount, type Spectrum, surfaceFloor, writeLab } from '../../colour/spectrum.ts';
import { writeLayerBand } from '../../paint/layer.ts';

/** A dried sheet from its reflectance (36 bands, no floor); the array is kept, not copied. */
export function driedSheetOf(reflectance: Float64Array): DriedSheet {
  const lab = new Float64Array(3);
  writeLab(reflectance, surfaceFloor.dry, lab);
  return { reflectance, lab };
}

const pair = new Float64Array(2);

/** Reflectance of `load` of a mix (K, S per unit load) laid over a ground, written to `out`. */
export function writeWash(
  mix: { readonly K: Spectrum; readonly S: Spectrum },
  load: number,
  ground: Spectrum,
  out: Float64Array,
): void {
  for (let i = 0; i < bandCount; i++) {
    writeLayerBand(mix.K[i] * load, mix.S[i] * load, pair, 0);
    const r = pair[0];
    const t = pair[1];
    const under = ground[i];
    out[i] = r + (t * t * under) / Math.max(1 - r * under, 1e-12);
  }
}

/** The sheet after a wash has dried over it. */
export function layMix(
  mix: { readonly K: Spectrum; readonly S: Spectrum },
  load: number,
  ground: DriedSheet,
): DriedSheet {
  const out = new Float64Array(bandCount);
  writeWash(mix, load, ground.reflectance, out);
  return driedSheetOf(out);
}

/** A dried state of the sheet: 36 bands without the floor, and its Lab. */
export interface DriedSheet {
  readonly reflectance: Float64Array;
  readonly lab: Float64Array;
}

export const labOfSheet = ({ lab }: DriedSheet): Lab => [lab[0], lab[1], lab[2]];
