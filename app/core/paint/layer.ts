import { bandCount, type Spectrum } from '../colour/spectrum.ts';

/**
 * One band of a layer of paint by itself: what it throws back (R0, over black) and lets through (T).
 *
 * Kubelka (1948), J. Opt. Soc. Am. 38, 448-457: R0 = sinh(bSX) / (a sinh(bSX) + b cosh(bSX)) and
 * T = b / (the same). Written here with w = bSX = sqrt(KX (KX + 2 SX)) and only falling exponentials:
 * nothing overflows in a thick layer, and nothing is divided by S, K or the load, so their zeros need
 * no branch but w = 0 (where (1 - exp(-2w)) / w tends to 2).
 *
 * kx, sx: optical depths, at least 0. Writes R0 to out[at], T to out[at + 1], both 0..1.
 */
export function writeLayerBand(kx: number, sx: number, out: Float64Array, at: number): void {
  const w = Math.sqrt(kx * (kx + 2 * sx));
  const shrink = w > 1e-9 ? -Math.expm1(-2 * w) / w : 2;
  const divisor = (kx + sx) * shrink + 1 + Math.exp(-2 * w);
  out[at] = (sx * shrink) / divisor;
  out[at + 1] = (2 * Math.exp(-w)) / divisor;
}

/** A layer of paint, 36 bands: `back` is R0 (over black), `through` is T. */
interface PaintLayer {
  readonly back: Float64Array;
  readonly through: Float64Array;
}

/** The layer of a mix with absorption K and scattering S per unit load, at `load` (0 or more). */
export function paintLayer(K: Spectrum, S: Spectrum, load: number): PaintLayer {
  const back = new Float64Array(bandCount);
  const through = new Float64Array(bandCount);
  const pair = new Float64Array(2);
  for (let i = 0; i < bandCount; i++) {
    writeLayerBand(K[i] * load, S[i] * load, pair, 0);
    back[i] = pair[0];
    through[i] = pair[1];
  }
  return { back, through };
}

/**
 * Reflectance of a layer over a ground: R = R0 + T^2 Rg / (1 - R0 Rg). Kubelka (1948).
 * All arrays 36 bands; `out` may be `ground`.
 */
export function layOver(layer: PaintLayer, ground: Spectrum, out: Float64Array): Float64Array {
  for (let i = 0; i < bandCount; i++) {
    const back = layer.back[i];
    const through = layer.through[i];
    const under = ground[i];
    // A perfect mirror over a perfect mirror: nothing gets through, so the second term is 0, not 0/0.
    const between = Math.max(1 - back * under, 1e-12);
    out[i] = back + (through * through * under) / between;
  }
  return out;
}

/**
 * Two layers as one, `upper` on `lower`: R12 = R1 + T1^2 R2 / (1 - R1 R2), T12 = T1 T2 / (1 - R1 R2).
 * Both must be the same from either side. Kubelka (1954), J. Opt. Soc. Am. 44, 330-335.
 */
export function stackLayers(upper: PaintLayer, lower: PaintLayer): PaintLayer {
  const back = new Float64Array(bandCount);
  const through = new Float64Array(bandCount);
  for (let i = 0; i < bandCount; i++) {
    const r1 = upper.back[i];
    const t1 = upper.through[i];
    const r2 = lower.back[i];
    const between = Math.max(1 - r1 * r2, 1e-12);
    back[i] = r1 + (t1 * t1 * r2) / between;
    through[i] = (t1 * lower.through[i]) / between;
  }
  return { back, through };
}

/**
 * Reflectance 0..1 of an endlessly thick layer from K/S. Kubelka and Munk (1931). The textbook
 * 1 + k - sqrt(k^2 + 2k) loses every digit for dark paints; its reciprocal form does not.
 */
export function masstoneReflectance(absorptionOverScattering: number): number {
  const k = Math.max(0, absorptionOverScattering);
  // sqrt(k) sqrt(k + 2): k^2 would overflow long before the answer does.
  return 1 / (1 + k + Math.sqrt(k) * Math.sqrt(k + 2));
}

/** Reflectances are taken to lie between this and 1: at 0 there is no K/S. */
export const leastReflectance = 1e-6;

/** K/S of a masstone reflectance, which is clamped to [leastReflectance, 1]. */
export function absorptionOverScattering(reflectance: number): number {
  const r = Math.min(1, Math.max(leastReflectance, reflectance));
  return (1 - r) ** 2 / (2 * r);
}

/** Absorption and scattering per unit load, 36 bands each. */
export interface PaintSpectra {
  readonly K: Spectrum;
  readonly S: Spectrum;
}

/**
 * K and S per unit of total load of paints mixed by whole parts: each adds its share.
 * Duncan (1940), Proc. Phys. Soc. 52, 390-401.
 */
export function mixSpectra(paints: readonly PaintSpectra[], parts: readonly number[]) {
  const sum = parts.reduce((all, part) => all + part, 0);
  const K = new Float64Array(bandCount);
  const S = new Float64Array(bandCount);
  for (const [n, paint] of paints.entries()) {
    const share = (parts[n] ?? 0) / sum;
    if (!(share > 0)) continue;
    for (let i = 0; i < bandCount; i++) {
      K[i] = K[i] + share * paint.K[i];
      S[i] = S[i] + share * paint.S[i];
    }
  }
  return { K, S };
}
