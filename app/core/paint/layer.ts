import { type Spectrum, spectrumSize } from '../colour/spectrum.ts';
import { coatOf, strengthOf, type TubePaint } from './paint.ts';

/**
 * A layer of paint by itself at one wavelength: what it throws back (R0, over black) and lets
 * through (T).
 *
 * Kubelka (1948), J. Opt. Soc. Am. 38, 448-457: R0 = sinh(bSX) / (a sinh(bSX) + b cosh(bSX)) and T
 * = b / (the same). Written here with w = bSX = sqrt(KX (KX + 2 SX)) and only falling exponentials:
 * nothing overflows in a thick layer, and nothing is divided by S, K or the load, so their zeros
 * need no branch but a very thin layer's, where (1 - exp(-2w)) / w is its series 2 - 2w + 4/3 w^2: the difference of
 * two like numbers would lose digits. One exponential a sample: this is the hottest line of all planning.
 *
 * kx, sx: optical depths, at least 0. Writes R0 to out[start], T to out[start + 1], both 0..1.
 */
export function writeLayerSample(kx: number, sx: number, out: Float64Array, start: number): void {
  const w = Math.sqrt(kx * (kx + 2 * sx));
  const once = Math.exp(-w);
  const twice = once * once;
  const shrink = w > 1e-4 ? (1 - twice) / w : 2 - 2 * w + (4 / 3) * w * w;
  const divisor = (kx + sx) * shrink + 1 + twice;
  out[start] = (sx * shrink) / divisor;
  out[start + 1] = (2 * once) / divisor;
}

/**
 * Light goes to and fro between a layer that throws `back` of it and what lies under it and throws
 * `under` of it: all those rounds together multiply it by one over this divisor, 1 - R0 Rg. A
 * perfect mirror over a perfect mirror lets nothing through: then it is not 0, so that 0 / 0 is 0.
 * Kubelka (1948).
 */
export const reflectionsBetween = (back: number, under: number): number =>
  Math.max(1 - back * under, 1e-12);

/**
 * Reflectance of a layer (R0 `back`, T `through`) over what reflects `under` (Rg), all 0..1:
 * R0 + T^2 Rg / (1 - R0 Rg). Kubelka (1948), J. Opt. Soc. Am. 38, 448-457.
 */
export const reflectanceOver = (back: number, through: number, under: number): number =>
  back + (through * through * under) / reflectionsBetween(back, under);

/**
 * The light that comes out of a layer over a ground: `escaping` of `reflectanceOver`, with one division instead of
 * two, for the hottest loops.
 */
export function escapingOver(back: number, through: number, under: number, k2: number): number {
  const rounds = reflectionsBetween(back, under);
  const light = back * rounds + through * through * under;
  return ((1 - k2) * light) / (rounds - k2 * light);
}

/** A layer of paint, 36 samples: `back` is R0 (over black), `through` is T. */
interface PaintLayer {
  readonly back: Float64Array;
  readonly through: Float64Array;
}

/** The layer of a mix with absorption K and scattering S per ml/m2, at `load` (0 or more, ml/m2). */
export function paintLayer(K: Spectrum, S: Spectrum, load: number): PaintLayer {
  const back = new Float64Array(spectrumSize);
  const through = new Float64Array(spectrumSize);
  const pair = new Float64Array(2);
  for (let i = 0; i < spectrumSize; i++) {
    writeLayerSample(K[i] * load, S[i] * load, pair, 0);
    back[i] = pair[0];
    through[i] = pair[1];
  }
  return { back, through };
}

/**
 * Reflectance of a layer over a ground, sample by sample. All arrays have 36; `out` may be
 * `ground`.
 */
export function layOver(layer: PaintLayer, ground: Spectrum, out: Float64Array): Float64Array {
  for (let i = 0; i < spectrumSize; i++) {
    out[i] = reflectanceOver(layer.back[i], layer.through[i], ground[i]);
  }
  return out;
}

/** Absorption and scattering of a mix, 36 samples each, per ml of tube paint on a square metre. */
export interface PaintSpectra {
  readonly K: Spectrum;
  readonly S: Spectrum;
}

/** Of a mix: also how much of it lies in a full coat, ml/m2. */
export interface MixSpectra extends PaintSpectra {
  readonly K: Float64Array;
  readonly S: Float64Array;
  readonly coat: number;
}

/**
 * K and S of paints mixed by whole parts of tube paint, per ml/m2 of the mix: each adds its share of the volume
 * times its strength. Duncan (1940), Proc. Phys. Soc. 52, 390-401. A full coat is the mean of theirs by volume.
 */
export function mixSpectra(paints: readonly TubePaint[], parts: readonly number[]): MixSpectra {
  const sum = parts.reduce((all, part) => all + part, 0);
  const K = new Float64Array(spectrumSize);
  const S = new Float64Array(spectrumSize);
  let coat = 0;
  for (const [n, paint] of paints.entries()) {
    const share = (parts[n] ?? 0) / sum;
    if (!(share > 0)) continue;
    const loads = share * strengthOf(paint);
    coat += share * coatOf(paint);
    for (let i = 0; i < spectrumSize; i++) {
      K[i] = K[i] + loads * paint.K[i];
      S[i] = S[i] + loads * paint.S[i];
    }
  }
  return { K, S, coat };
}
