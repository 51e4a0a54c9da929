import type { Lab } from '../../../app/model/lab.ts';
import { solveSmall } from '../edges/solve-small.ts';
import type { PaintSpectra } from '../optics/mix-spectra.ts';
import { bandCount, type Spectrum } from '../optics/wavelengths.ts';
import type { FitEquations } from './fit-equations.ts';
import { patchModel } from './patch-model.ts';
import { seenDifference } from './seen-difference.ts';

/** A use the paint may be put to: so much of it, with or without another paint, over a ground. */
export interface Probe {
  readonly amount: number;
  readonly other: PaintSpectra | null;
  readonly otherLoad: number;
  readonly ground: Spectrum;
}

/**
 * By how much (about CIEDE2000, root mean square) the paint's colour in that use is open after a fit: the
 * fit's normal equations, turned round, are the covariance of what was found (Laplace's approximation).
 * `logs`: ln K, then ln S, 72 numbers.
 */
export function expectedError(equations: FitEquations, logs: Float64Array, probe: Probe): number {
  const { amount, other, otherLoad, ground } = probe;
  const own = logs.map((log) => amount * Math.exp(log));
  const depth = (from: number, spectrum: Spectrum | undefined): Float64Array =>
    Float64Array.from(
      { length: bandCount },
      (_, i) => (own[from + i] as number) + otherLoad * (spectrum?.[i] ?? 0),
    );
  const model = patchModel(depth(0, other?.K), depth(bandCount, other?.S), ground);
  const seen = seenDifference(model.lab as unknown as Lab);
  let sum = 0;
  for (let c = 0; c < 3; c++) {
    const slope = new Float64Array(equations.size);
    for (let from = 0; from < 3; from++) {
      const weight = seen[c * 3 + from] as number;
      for (let i = 0; i < 2 * bandCount; i++) {
        const by = i < bandCount ? model.byK : model.byS;
        const along = by[from * bandCount + (i % bandCount)] as number;
        slope[i] = (slope[i] as number) + weight * along * (own[i] as number);
      }
    }
    const solved = Float64Array.from(slope);
    if (!solveSmall(Float64Array.from(equations.matrix), solved, equations.size)) return Infinity;
    for (let i = 0; i < equations.size; i++) {
      sum += (slope[i] as number) * (solved[i] as number);
    }
  }
  return Math.sqrt(sum);
}
