import { type Lab, writeLabOfXyz } from '../../colour/lab.ts';
import { slopeOfCieCurve } from '../../colour/lightness.ts';
import { type Spectrum, spectrumSize, weightX, weightY, weightZ } from '../../colour/spectrum.ts';
import { drySurface, outside, slopeOfOutside } from '../../colour/surface.ts';
import { reflectanceOver, writeLayerSample } from '../layer.ts';

/** How much of one paint lies in a patch. */
export interface PatchShare {
  /** Place in the list of paints. */
  readonly paint: number;
  /** Load, in the unit the list's K and S are per. */
  readonly amount: number;
  /** How far the amount may be off: standard deviation of its natural logarithm (0.15: 15 %). */
  readonly doubt: number;
}

/**
 * A painted patch: its colour dry (D65, seen through the surface), what is in it, what it lies on.
 */
export interface MeasuredPatch {
  readonly lab: Lab;
  readonly shares: readonly PatchShare[];
  /** Reflectance of the ground, 36 samples, inside the surface. */
  readonly ground: Spectrum;
}

/** Reflectance of one sample of a layer over a ground; `pair` is work space. */
function reflectanceOfDepths(kx: number, sx: number, ground: number, pair: Float64Array): number {
  writeLayerSample(kx, sx, pair, 0);
  return reflectanceOver(pair[0], pair[1], ground);
}

/** A layer's colour and how it changes with what is in it. */
export interface PatchModel {
  /** L*, a*, b*, dry. */
  readonly lab: Float64Array;
  /** d Lab / d KX and d Lab / d SX by wavelength: 3 x 36, L* first. */
  readonly byK: Float64Array;
  readonly byS: Float64Array;
}

/**
 * Colour of a layer of optical depths KX, SX (36 samples) over a ground, with its slopes by forward
 * differences of a relative 1e-5: good to 1e-4, which is enough to find the way.
 */
export function patchModel(kx: Spectrum, sx: Spectrum, ground: Spectrum): PatchModel {
  const slopeK = new Float64Array(spectrumSize);
  const slopeS = new Float64Array(spectrumSize);
  const pair = new Float64Array(2);
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < spectrumSize; i++) {
    const k = kx[i];
    const s = sx[i];
    const under = ground[i];
    const r = reflectanceOfDepths(k, s, under, pair);
    const dk = k * 1e-5 + 1e-9;
    const ds = s * 1e-5 + 1e-9;
    const seen = outside(r, drySurface);
    const slope = slopeOfOutside(r, drySurface);
    slopeK[i] = (slope * (reflectanceOfDepths(k + dk, s, under, pair) - r)) / dk;
    slopeS[i] = (slope * (reflectanceOfDepths(k, s + ds, under, pair) - r)) / ds;
    x += seen * weightX[i];
    y += seen * weightY[i];
    z += seen * weightZ[i];
  }
  const lab = new Float64Array(3);
  writeLabOfXyz(x, y, z, lab, 0);
  const dx = slopeOfCieCurve(x);
  const dy = slopeOfCieCurve(y);
  const dz = slopeOfCieCurve(z);
  const byK = new Float64Array(3 * spectrumSize);
  const byS = new Float64Array(3 * spectrumSize);
  for (let i = 0; i < spectrumSize; i++) {
    const fx = dx * weightX[i];
    const fy = dy * weightY[i];
    const fz = dz * weightZ[i];
    const k = slopeK[i];
    const s = slopeS[i];
    byK[i] = 116 * fy * k;
    byS[i] = 116 * fy * s;
    byK[spectrumSize + i] = 500 * (fx - fy) * k;
    byS[spectrumSize + i] = 500 * (fx - fy) * s;
    byK[2 * spectrumSize + i] = 200 * (fy - fz) * k;
    byS[2 * spectrumSize + i] = 200 * (fy - fz) * s;
  }
  return { lab, byK, byS };
}

/** Everything that is sought. */
export interface FitState {
  /** For each paint ln K, then ln S per unit of amount: 72 numbers. */
  readonly logs: Float64Array[];
  /** For each patch and share: ln of the true amount over the stated one. */
  readonly drifts: Float64Array[];
}

/** The colour a patch should have as things stand, and its slopes. */
export function modelOf(
  { shares, ground }: MeasuredPatch,
  logs: readonly Float64Array[],
  drift: Float64Array,
): PatchModel {
  const kx = new Float64Array(spectrumSize);
  const sx = new Float64Array(spectrumSize);
  for (const [n, { paint, amount }] of shares.entries()) {
    const log = logs[paint];
    const load = amount * Math.exp(drift[n]);
    for (let i = 0; i < spectrumSize; i++) {
      kx[i] = kx[i] + load * Math.exp(log[i]);
      sx[i] = sx[i] + load * Math.exp(log[spectrumSize + i]);
    }
  }
  return patchModel(kx, sx, ground);
}
