import { seenDifference } from '../../colour/ciede2000.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { type FitState, type MeasuredPatch, modelOf, type PatchModel } from './patch-model.ts';

/** What is expected of a paint before it is measured. */
export interface PaintPrior {
  /** Expected natural logarithms of K, then of S: 72 numbers. */
  readonly centre: Float64Array;
  /** How far each lies from it, as one over the variance: 72 numbers. */
  readonly hold: Float64Array;
}

/**
 * From sample to sample ln K and ln S change by about this (in the shipped table: K 0.1..0.7, S
 * 0.05..0.4).
 */
const slopeOfK = 0.4;
const slopeOfS = 0.2;
/** Level of ln S at load 1 in the shipped table without the whites: mean, and twice the spread. */
const usualLogS = -3.9;
const spreadOfS = 1.3;
const spreadOfK = 4;
/** Neighbouring samples say nearly the same: all 36 count as this many independent ones. */
const independentSamples = 2;

/**
 * The usual paint: K near `logK` (36 natural logarithms, held loosely), S as pigments have it at
 * that load. `logLoad` is ln of the load of one unit of amount.
 */
export const usualPaint = (logK: Float64Array, logLoad: number): PaintPrior =>
  priorAround(logK, usualLogS + logLoad);

/**
 * A white: S about 1 a load, and a load is about one unit of amount, for its steps on paper can't
 * tell.
 */
export const whitePaint = (logK: Float64Array): PaintPrior => priorAround(logK, 0);

function priorAround(logK: Float64Array, logS: number): PaintPrior {
  const centre = new Float64Array(2 * spectrumSize);
  const hold = new Float64Array(2 * spectrumSize);
  const share = independentSamples / spectrumSize;
  for (let i = 0; i < spectrumSize; i++) {
    centre[i] = logK[i];
    hold[i] = share / spreadOfK ** 2;
    centre[spectrumSize + i] = logS;
    hold[spectrumSize + i] = share / spreadOfS ** 2;
  }
  return { centre, hold };
}

/**
 * Adds the prior's part to the normal equations of one paint (its 72 logarithms come first);
 * returns its cost.
 */
function addPrior(
  { centre, hold }: PaintPrior,
  logs: Float64Array,
  matrix: Float64Array,
  right: Float64Array,
  size: number,
): number {
  let cost = 0;
  const add = (row: number, column: number, value: number): void => {
    matrix[row * size + column] = matrix[row * size + column] + value;
  };
  for (let i = 0; i < 2 * spectrumSize; i++) {
    const weight = hold[i];
    const off = logs[i] - centre[i];
    add(i, i, weight);
    right[i] = right[i] - weight * off;
    cost += weight * off * off;
    if (i % spectrumSize === spectrumSize - 1) continue;
    const smooth = 1 / (i < spectrumSize ? slopeOfK : slopeOfS) ** 2;
    const step = logs[i + 1] - logs[i];
    add(i, i, smooth);
    add(i + 1, i + 1, smooth);
    add(i, i + 1, -smooth);
    add(i + 1, i, -smooth);
    right[i] = right[i] + smooth * step;
    right[i + 1] = right[i + 1] - smooth * step;
    cost += smooth * step * step;
  }
  return cost;
}

/** Patches further off than this, in the noise's own measure, pull no harder than this (Huber). */
export const fairMisfit = 2.5;

/** Normal equations of one paint and of the amounts that stand in doubt in its patches. */
export interface FitEquations {
  readonly size: number;
  /** Row by row; only its lower half is filled. */
  readonly matrix: Float64Array;
  /** Minus half the slope of the cost. */
  readonly right: Float64Array;
  readonly cost: number;
}

/** Places of the sought amounts: patch and share, in the order they follow the 72 logarithms. */
export interface Floating {
  readonly patch: number;
  readonly share: number;
}

/** The patches a paint is in, and its amounts there. */
export const floatingOf = (patches: readonly MeasuredPatch[], paint: number): Floating[] =>
  patches.flatMap(({ shares }, patch) =>
    shares.some((each) => each.paint === paint) ? shares.map((_, share) => ({ patch, share })) : [],
  );

/** Slopes of the three seen differences along what is sought in one patch: 3 x (72 + shares). */
function slopesOf(
  { shares, lab }: MeasuredPatch,
  { byK, byS }: PatchModel,
  state: FitState,
  drift: Float64Array,
  paint: number,
): Float64Array {
  const width = 2 * spectrumSize + shares.length;
  const plain = new Float64Array(3 * width);
  for (const [n, share] of shares.entries()) {
    const log = state.logs[share.paint];
    const load = share.amount * Math.exp(drift[n]);
    for (let i = 0; i < spectrumSize; i++) {
      const k = load * Math.exp(log[i]);
      const s = load * Math.exp(log[spectrumSize + i]);
      for (let c = 0; c < 3; c++) {
        const alongK = k * byK[c * spectrumSize + i];
        const alongS = s * byS[c * spectrumSize + i];
        if (share.paint === paint) {
          plain[c * width + i] = plain[c * width + i] + alongK;
          plain[c * width + spectrumSize + i] = plain[c * width + spectrumSize + i] + alongS;
        }
        const place = c * width + 2 * spectrumSize + n;
        plain[place] = plain[place] + alongK + alongS;
      }
    }
  }
  const seen = seenDifference(lab);
  const slopes = new Float64Array(3 * width);
  for (let c = 0; c < 3; c++) {
    for (let from = 0; from < 3; from++) {
      const weight = seen[c * 3 + from];
      if (weight === 0) continue;
      for (let i = 0; i < width; i++) {
        slopes[c * width + i] = slopes[c * width + i] + weight * plain[from * width + i];
      }
    }
  }
  return slopes;
}

/** The three seen differences of a patch as it is from as it should be, in units of the noise. */
export function misfitOf({ lab }: MeasuredPatch, model: Float64Array, noise: number): Float64Array {
  const seen = seenDifference(lab);
  const misfit = new Float64Array(3);
  for (let c = 0; c < 3; c++) {
    for (let from = 0; from < 3; from++) {
      const off = model[from] - lab[from];
      misfit[c] = misfit[c] + (seen[c * 3 + from] * off) / noise;
    }
  }
  return misfit;
}

/**
 * Cost of a misfit by Huber (1964), Ann. Math. Stat. 35, 73-101, and the weight it is heeded with.
 */
export function heed(misfit: Float64Array, fair: number): { cost: number; weight: number } {
  const length = Math.hypot(...misfit);
  if (length <= fair) return { cost: length * length, weight: 1 };
  return { cost: fair * (2 * length - fair), weight: fair / length };
}

/**
 * Least squares about the present state for one paint: seen differences over the noise (CIEDE2000
 * of a patch), the prior, and the doubts of the amounts.
 */
export function fitEquations(
  patches: readonly MeasuredPatch[],
  state: FitState,
  paint: number,
  floating: readonly Floating[],
  prior: PaintPrior,
  noise: number,
  fair: number,
): FitEquations {
  const size = 2 * spectrumSize + floating.length;
  const matrix = new Float64Array(size * size);
  const right = new Float64Array(size);
  const logs = state.logs[paint];
  let cost = addPrior(prior, logs, matrix, right, size);
  for (let first = 0; first < floating.length; ) {
    const patchIndex = floating[first].patch;
    const patch = patches[patchIndex];
    const drift = state.drifts[patchIndex];
    const model = modelOf(patch, state.logs, drift);
    const slopes = slopesOf(patch, model, state, drift, paint);
    const misfit = misfitOf(patch, model.lab, noise);
    const heeded = heed(misfit, fair);
    cost += heeded.cost;
    const width = 2 * spectrumSize + patch.shares.length;
    const placeOf = (i: number): number => (i < 2 * spectrumSize ? i : i + first);
    for (let i = 0; i < width; i++) {
      const row = placeOf(i);
      for (let c = 0; c < 3; c++) {
        const slope = (slopes[c * width + i] / noise) * heeded.weight;
        if (slope === 0) continue;
        right[row] = right[row] - slope * misfit[c];
        for (let j = 0; j <= i; j++) {
          const to = row * size + placeOf(j);
          matrix[to] = matrix[to] + (slope * slopes[c * width + j]) / noise;
        }
      }
    }
    for (const [n, { doubt }] of patch.shares.entries()) {
      const place = 2 * spectrumSize + first + n;
      const weight = 1 / doubt ** 2;
      const off = drift[n];
      matrix[place * size + place] = matrix[place * size + place] + weight;
      right[place] = right[place] - weight * off;
      cost += weight * off * off;
    }
    first += patch.shares.length;
  }
  return { size, matrix, right, cost };
}
