import { spectrumSize } from '../../colour/spectrum.ts';
import type { NormalEquations } from '../../numeric/levenberg-marquardt.ts';

/** K and S of a paint in one array: 36 samples each. */
export const paintSize = 2 * spectrumSize;

/** What is expected of a paint before it is measured. */
export interface PaintPrior {
  /** Expected natural logarithms of K, then of S: 72 numbers. */
  readonly centre: Float64Array;
  /** How far each lies from it, as one over the variance: 72 numbers. */
  readonly hold: Float64Array;
  /** Logarithms that count as smooth over wavelength: 0 for a paint of which nothing is known. */
  readonly shape: Float64Array;
}

/**
 * From sample to sample ln K and ln S change by about this (in the optics table: K 0.1..0.7, S
 * 0.05..0.4).
 */
const slopeOfK = 0.4;
const slopeOfS = 0.2;
/**
 * Level of ln S at load 1, 400..700 nm: mean of the 12 coloured paints of the optics table that were measured
 * as watercolours (-6.4 to -3.8), and twice their spread, as none of them is an opaque one.
 */
export const usualLogS = -4.5;
export const spreadOfS = 1.3;
const spreadOfK = 4;
/** Neighbouring samples say nearly the same: all 36 count as this many independent ones. */
const independentSamples = 2;

const holdOf = (spread: number): number => independentSamples / spectrumSize / spread ** 2;

/**
 * The usual paint: K near `logK` (36 natural logarithms, held loosely), S as watercolours have it at that
 * load. `logLoad` is ln of the load of one unit of amount.
 */
export const usualPaint = (logK: Float64Array, logLoad: number): PaintPrior =>
  priorAround(logK, usualLogS + logLoad);

/**
 * A white: S about 1 a load, and a load is about one unit of amount, for its steps on paper can't
 * tell.
 */
export const whitePaint = (logK: Float64Array): PaintPrior => priorAround(logK, 0);

function priorAround(logK: Float64Array, logS: number): PaintPrior {
  const centre = new Float64Array(paintSize).fill(logS);
  centre.set(logK);
  const hold = new Float64Array(paintSize).fill(holdOf(spreadOfS));
  hold.fill(holdOf(spreadOfK), 0, spectrumSize);
  return { centre, hold, shape: new Float64Array(paintSize) };
}

/** A paint like one that is known: K and S may be off, neighbouring samples together. */
export const paintLike = (logs: Float64Array, doubt: number): PaintPrior => ({
  centre: logs,
  hold: new Float64Array(paintSize).fill(holdOf(doubt)),
  shape: logs,
});

/**
 * Adds what is expected of a paint, whose 72 logarithms stand from `first` in `place`, to the normal equations
 * (null: only its cost is wanted); answers its cost.
 */
export function addPrior(
  { centre, hold, shape }: PaintPrior,
  place: Float64Array,
  first: number,
  equations: Omit<NormalEquations, 'cost'> | null,
): number {
  const size = equations?.right.length ?? 0;
  let cost = 0;
  for (let i = 0; i < paintSize; i++) {
    const row = first + i;
    const off = place[row] - centre[i];
    cost += hold[i] * off * off;
    const isLast = i % spectrumSize === spectrumSize - 1;
    const smooth = isLast ? 0 : 1 / (i < spectrumSize ? slopeOfK : slopeOfS) ** 2;
    const rise = isLast ? 0 : place[row + 1] - shape[i + 1] - (place[row] - shape[i]);
    cost += smooth * rise * rise;
    if (!equations) continue;
    const { matrix, right } = equations;
    matrix[row * size + row] += hold[i] + smooth;
    right[row] += smooth * rise - hold[i] * off;
    if (isLast) continue;
    matrix[(row + 1) * size + row + 1] += smooth;
    matrix[(row + 1) * size + row] -= smooth;
    right[row + 1] -= smooth * rise;
  }
  return cost;
}
