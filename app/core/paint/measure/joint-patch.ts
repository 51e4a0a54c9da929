import { seenDifference } from '../../colour/ciede2000.ts';
import { type Lab, writeLabOfXyz } from '../../colour/lab.ts';
import { cieCurve, slopeOfCieCurve } from '../../colour/lightness.ts';
import { type Spectrum, spectrumSize, weightX, weightY, weightZ } from '../../colour/spectrum.ts';
import { outside, type Surface, slopeOfOutside } from '../../colour/surface.ts';
import { writeLayerSlopes } from '../layer-slopes.ts';
import { paintSize } from './paint-prior.ts';

/** How much of one paint lies in a patch. */
export interface PatchShare {
  /** Place in the list of paints. */
  readonly paint: number;
  /** In the unit the list's K and S are per. */
  readonly amount: number;
  /** How far the amount may be off: standard deviation of its natural logarithm (0.15: 15 %). */
  readonly doubt: number;
}

/** A painted patch. */
export interface JointPatch {
  /** Its colour dry (D65, seen through the surface). */
  readonly lab: Lab;
  readonly shares: readonly PatchShare[];
  /** Reflectance of the ground, 36 samples, inside the surface. */
  readonly ground: Spectrum;
  /** Its own reflectance as measured, 36 samples, surface included, where more than its colour is known. */
  readonly reflectance?: Spectrum;
  /** CIEDE2000 it may be off, where that is not the noise of all. */
  readonly noise?: number;
}

/** How patches are seen, and how well. */
export interface PatchOptics {
  readonly surface: Surface;
  /** CIEDE2000 a patch may be off. */
  readonly noise: number;
  /** L* by which a sample of a measured reflectance, taken for a grey, may be off. */
  readonly sampleNoise: number;
}

/** Neighbouring samples of a reflectance say nearly the same: 36 count as so many. */
const ownSamples = 2;

/** Patches further off than this, in the noise's own measure, pull no harder than this. */
const fairMisfit = 2.5;

/**
 * Cost of a misfit by Huber (1964), Ann. Math. Stat. 35, 73-101, and the weight it is heeded with.
 */
function heed(misfit: Float64Array): { cost: number; weight: number } {
  const length = Math.hypot(...misfit);
  if (length <= fairMisfit) return { cost: length * length, weight: 1 };
  return { cost: fairMisfit * (2 * length - fairMisfit), weight: fairMisfit / length };
}

/** A patch ready to be compared. */
export interface PatchTarget {
  readonly patch: JointPatch;
  /** Seen difference by difference in L*, a*, b*, in units of the noise: 3 x 3. */
  readonly seen: Float64Array;
  /** f of CIE Lab of each sample of its reflectance; null where it was not measured. */
  readonly curve: Float64Array | null;
}

export const patchTarget = (patch: JointPatch, optics: PatchOptics): PatchTarget => ({
  patch,
  seen: seenDifference(patch.lab).map((value) => value / (patch.noise ?? optics.noise)),
  curve: patch.reflectance ? Float64Array.from(patch.reflectance, cieCurve) : null,
});

/**
 * A patch as the paints have it: written anew for each patch. Columns are the 72 logarithms of the paint
 * of each share, one after the other.
 */
export interface PatchLook {
  readonly lab: Float64Array;
  /** Squared misfit as far as it is heeded. */
  cost: number;
  /** ln of each amount over the one stated. */
  readonly drift: Float64Array;
  /** Misfit of the colour (lightness, chroma, hue) in units of the noise, and its slopes: 3 x columns. */
  readonly misfit: Float64Array;
  readonly rows: Float64Array;
  /** How much the colour is heeded, 0..1, and the reflectance (0 where there is none). */
  weight: number;
  sampleWeight: number;
  /** Misfit of each sample of the reflectance, and its slope along the columns of that sample. */
  readonly sampleMisfit: Float64Array;
  readonly sampleRow: Float64Array;
  /** Reflectance as seen, and its slopes along KX and SX: 36 samples. */
  readonly light: Float64Array;
  readonly alongK: Float64Array;
  readonly alongS: Float64Array;
  /** One sample of it: reflectance inside, slopes. */
  readonly sample: Float64Array;
}

export function emptyLook(mostShares: number): PatchLook {
  const columns = mostShares * paintSize;
  return {
    lab: new Float64Array(3),
    cost: 0,
    drift: new Float64Array(mostShares),
    misfit: new Float64Array(3),
    rows: new Float64Array(3 * columns),
    weight: 1,
    sampleWeight: 0,
    sampleMisfit: new Float64Array(spectrumSize),
    sampleRow: new Float64Array(columns),
    light: new Float64Array(spectrumSize),
    alongK: new Float64Array(spectrumSize),
    alongS: new Float64Array(spectrumSize),
    sample: new Float64Array(3),
  };
}

/** Writes reflectance as seen, and its slopes along KX and SX to where KX and SX stood. */
function mixAndReflect(
  { shares, ground }: JointPatch,
  paints: readonly Float64Array[],
  { surface }: PatchOptics,
  { drift, light, alongK, alongS, sample }: PatchLook,
): void {
  alongK.fill(0);
  alongS.fill(0);
  for (const [n, { paint, amount }] of shares.entries()) {
    const load = amount * Math.exp(drift[n]);
    const spectra = paints[paint];
    for (let i = 0; i < spectrumSize; i++) {
      alongK[i] = alongK[i] + load * spectra[i];
      alongS[i] = alongS[i] + load * spectra[spectrumSize + i];
    }
  }
  for (let i = 0; i < spectrumSize; i++) {
    writeLayerSlopes(alongK[i], alongS[i], ground[i], sample, 0);
    const slope = slopeOfOutside(sample[0], surface);
    light[i] = outside(sample[0], surface);
    alongK[i] = slope * sample[1];
    alongS[i] = slope * sample[2];
  }
}

/**
 * Writes a patch as the paints have it at the drift that stands in `look`, without what the drift costs.
 * `paints`: K, then S, per unit of amount, 72 each.
 */
export function lookAtPatch(
  target: PatchTarget,
  paints: readonly Float64Array[],
  optics: PatchOptics,
  look: PatchLook,
): void {
  const { patch, seen, curve } = target;
  const { lab, misfit, rows, sampleMisfit, sampleRow, light, alongK, alongS } = look;
  mixAndReflect(patch, paints, optics, look);
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < spectrumSize; i++) {
    x += light[i] * weightX[i];
    y += light[i] * weightY[i];
    z += light[i] * weightZ[i];
  }
  writeLabOfXyz(x, y, z, lab, 0);

  // Slopes along KX and SX stand in the first share's columns until they are spread over all.
  const columns = patch.shares.length * paintSize;
  for (let c = 0; c < 3; c++) {
    const [byL, byA, byB] = [seen[3 * c], seen[3 * c + 1], seen[3 * c + 2]];
    misfit[c] =
      byL * (lab[0] - patch.lab[0]) + byA * (lab[1] - patch.lab[1]) + byB * (lab[2] - patch.lab[2]);
    const byX = 500 * byA * slopeOfCieCurve(x);
    const byY = (116 * byL - 500 * byA + 200 * byB) * slopeOfCieCurve(y);
    const byZ = -200 * byB * slopeOfCieCurve(z);
    for (let i = 0; i < spectrumSize; i++) {
      const slope = byX * weightX[i] + byY * weightY[i] + byZ * weightZ[i];
      rows[c * columns + i] = slope * alongK[i];
      rows[c * columns + spectrumSize + i] = slope * alongS[i];
    }
  }
  const heeded = heed(misfit);
  look.weight = heeded.weight;
  look.cost = heeded.cost;
  look.sampleWeight = 0;
  if (curve) {
    const scale = (116 / optics.sampleNoise) * Math.sqrt(ownSamples / spectrumSize);
    for (let i = 0; i < spectrumSize; i++) {
      const slope = scale * slopeOfCieCurve(light[i]);
      sampleMisfit[i] = scale * (cieCurve(light[i]) - curve[i]);
      sampleRow[i] = slope * alongK[i];
      sampleRow[spectrumSize + i] = slope * alongS[i];
    }
    const samples = heed(sampleMisfit);
    look.sampleWeight = samples.weight;
    look.cost += samples.cost;
  }
  spreadOverShares(patch, paints, look);
}

/** From slopes along KX and SX to slopes along the logarithms: each share's part of KX and SX. */
function spreadOverShares(
  { shares }: JointPatch,
  paints: readonly Float64Array[],
  { rows, sampleRow, sampleWeight, drift }: PatchLook,
): void {
  const columns = shares.length * paintSize;
  for (let n = shares.length - 1; n >= 0; n--) {
    const { paint, amount } = shares[n];
    const spectra = paints[paint];
    const load = amount * Math.exp(drift[n]);
    const first = n * paintSize;
    for (let i = 0; i < paintSize; i++) {
      const depth = load * spectra[i];
      for (let start = 0; start < 3 * columns; start += columns) {
        rows[start + first + i] = depth * rows[start + i];
      }
      if (sampleWeight > 0) sampleRow[first + i] = depth * sampleRow[i];
    }
  }
}
