import type { Lab } from '../../colour/lab.ts';
import {
  bandCount,
  type Spectrum,
  surfaceFloor,
  weightX,
  weightY,
  weightZ,
} from '../../colour/spectrum.ts';
import { writeLayerBand } from '../layer.ts';

/** How much of one paint lies in a patch. */
export interface PatchShare {
  /** Place in the list of paints. */
  readonly paint: number;
  /** Load, in the unit the list's K and S are per. */
  readonly amount: number;
  /** How far the amount may be off: standard deviation of its natural logarithm (0.15: 15 %). */
  readonly doubt: number;
}

/** A painted patch: its colour dry (D65, surface floor included), what is in it, what it lies on. */
export interface MeasuredPatch {
  readonly lab: Lab;
  readonly shares: readonly PatchShare[];
  /** Reflectance of the ground, 36 bands, without the surface floor. */
  readonly ground: Spectrum;
}

const cut = 216 / 24389;
const f = (t: number): number => (t > cut ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
const slopeOfF = (t: number): number => (t > cut ? 1 / (3 * Math.cbrt(t) ** 2) : 24389 / 27 / 116);

const pair = new Float64Array(2);
function over(kx: number, sx: number, ground: number): number {
  writeLayerBand(kx, sx, pair, 0);
  const back = pair[0];
  const through = pair[1];
  return back + (through * through * ground) / Math.max(1 - back * ground, 1e-12);
}

/** A layer's colour and how it changes with what is in it. */
export interface PatchModel {
  /** L*, a*, b*, dry. */
  readonly lab: Float64Array;
  /** d Lab / d KX and d Lab / d SX by band: 3 x 36, L* first. */
  readonly byK: Float64Array;
  readonly byS: Float64Array;
}

/**
 * Colour of a layer of optical depths KX, SX (36 bands) over a ground, with its slopes by forward
 * differences of a relative 1e-5: good to 1e-4, which is enough to find the way.
 */
export function patchModel(kx: Spectrum, sx: Spectrum, ground: Spectrum): PatchModel {
  const floor = surfaceFloor.dry;
  const slopeK = new Float64Array(bandCount);
  const slopeS = new Float64Array(bandCount);
  let x = 0;
  let y = 0;
  let z = 0;
  for (let i = 0; i < bandCount; i++) {
    const k = kx[i];
    const s = sx[i];
    const under = ground[i];
    const r = over(k, s, under);
    const dk = k * 1e-5 + 1e-9;
    const ds = s * 1e-5 + 1e-9;
    slopeK[i] = (over(k + dk, s, under) - r) / dk;
    slopeS[i] = (over(k, s + ds, under) - r) / ds;
    x += r * weightX[i];
    y += r * weightY[i];
    z += r * weightZ[i];
  }
  x = floor + (1 - floor) * x;
  y = floor + (1 - floor) * y;
  z = floor + (1 - floor) * z;
  const lab = Float64Array.of(116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z)));
  const dx = slopeOfF(x) * (1 - floor);
  const dy = slopeOfF(y) * (1 - floor);
  const dz = slopeOfF(z) * (1 - floor);
  const byK = new Float64Array(3 * bandCount);
  const byS = new Float64Array(3 * bandCount);
  for (let i = 0; i < bandCount; i++) {
    const fx = dx * weightX[i];
    const fy = dy * weightY[i];
    const fz = dz * weightZ[i];
    const k = slopeK[i];
    const s = slopeS[i];
    byK[i] = 116 * fy * k;
    byS[i] = 116 * fy * s;
    byK[bandCount + i] = 500 * (fx - fy) * k;
    byS[bandCount + i] = 500 * (fx - fy) * s;
    byK[2 * bandCount + i] = 200 * (fy - fz) * k;
    byS[2 * bandCount + i] = 200 * (fy - fz) * s;
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
  const kx = new Float64Array(bandCount);
  const sx = new Float64Array(bandCount);
  for (const [n, { paint, amount }] of shares.entries()) {
    const log = logs[paint];
    const load = amount * Math.exp(drift[n]);
    for (let i = 0; i < bandCount; i++) {
      kx[i] = kx[i] + load * Math.exp(log[i]);
      sx[i] = sx[i] + load * Math.exp(log[bandCount + i]);
    }
  }
  return patchModel(kx, sx, ground);
}
