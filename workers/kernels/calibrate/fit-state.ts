import { bandCount } from '../optics/wavelengths.ts';
import type { MeasuredPatch } from './measured-patch.ts';
import { type PatchModel, patchModel } from './patch-model.ts';

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
    const log = logs[paint] as Float64Array;
    const load = amount * Math.exp(drift[n] as number);
    for (let i = 0; i < bandCount; i++) {
      kx[i] = (kx[i] as number) + load * Math.exp(log[i] as number);
      sx[i] = (sx[i] as number) + load * Math.exp(log[bandCount + i] as number);
    }
  }
  return patchModel(kx, sx, ground);
}
