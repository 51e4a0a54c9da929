import { spectrumSize } from '../../colour/spectrum.ts';
import type { NormalEquations } from '../../numeric/levenberg-marquardt.ts';
import { solveLinear } from '../../numeric/solve.ts';
import {
  type JointPatch,
  lookAtPatch,
  type PatchLook,
  type PatchOptics,
  type PatchShare,
  type PatchTarget,
} from './joint-patch.ts';
import { paintSize } from './paint-prior.ts';

/**
 * Slopes of all misfits along the amounts, each times the root of how much it is heeded: 3 + 36 for each
 * share, 0 for an amount beyond doubt.
 */
function slopesOfAmounts(
  { shares }: JointPatch,
  { rows, sampleRow, weight, sampleWeight }: PatchLook,
): Float64Array[] {
  const columns = shares.length * paintSize;
  return shares.map(({ doubt }, n) => {
    const slopes = new Float64Array(3 + spectrumSize);
    if (doubt === 0) return slopes;
    const first = n * paintSize;
    for (let i = first; i < first + paintSize; i++) {
      for (let c = 0; c < 3; c++) slopes[c] += Math.sqrt(weight) * rows[c * columns + i];
    }
    for (let i = 0; sampleWeight > 0 && i < spectrumSize; i++) {
      const both = sampleRow[first + i] + sampleRow[first + spectrumSize + i];
      slopes[3 + i] = Math.sqrt(sampleWeight) * both;
    }
    return slopes;
  });
}

/** How firmly an amount is held to the one stated; one beyond doubt has no slopes, so every number would do and it is 1. */
const holdOfAmount = ({ doubt }: PatchShare): number => (doubt === 0 ? 1 : 1 / doubt ** 2);

function costOfDrift({ shares }: JointPatch, drift: Float64Array): number {
  let cost = 0;
  for (const [n, share] of shares.entries()) cost += holdOfAmount(share) * drift[n] ** 2;
  return cost;
}

/** Amounts are found to this share of themselves: the cost's own slope along them is then as good as 0. */
const settledStep = 1e-7;

/** Gauss and Newton's step of the amounts; null where they lie best. */
function stepOfAmounts({ patch }: PatchTarget, look: PatchLook): Float64Array | null {
  const { shares } = patch;
  const count = shares.length;
  const slopes = slopesOfAmounts(patch, look);
  const matrix = new Float64Array(count * count);
  const step = new Float64Array(count);
  for (const [n, share] of shares.entries()) {
    const own = slopes[n];
    const hold = holdOfAmount(share);
    step[n] = -hold * look.drift[n];
    for (let c = 0; c < 3; c++) step[n] -= Math.sqrt(look.weight) * own[c] * look.misfit[c];
    for (let i = 0; look.sampleWeight > 0 && i < spectrumSize; i++) {
      step[n] -= Math.sqrt(look.sampleWeight) * own[3 + i] * look.sampleMisfit[i];
    }
    for (let m = 0; m <= n; m++) {
      matrix[n * count + m] = own.reduce((sum, slope, i) => sum + slope * slopes[m][i], 0);
    }
    matrix[n * count + n] += hold;
  }
  const solved = solveLinear(matrix, step, count);
  return solved && step.some((change) => Math.abs(change) > settledStep) ? step : null;
}

/** A few are enough, but for a misfit at Huber's bend. */
const mostRounds = 60;
/** No step makes an amount more than e times as large or small. */
const longestStep = 1;

/**
 * Looks at a patch with the amounts that fit best in their doubts, and adds what they cost: so the look is
 * a function of the paints alone, and the slopes of its cost along the amounts are 0 (variable projection:
 * Golub, Pereyra (1973), SIAM J. Numer. Anal. 10, 413-432).
 */
export function settleAmounts(
  target: PatchTarget,
  paints: readonly Float64Array[],
  optics: PatchOptics,
  look: PatchLook,
): void {
  const { patch } = target;
  const { drift } = look;
  const count = patch.shares.length;
  const measureAll = (): number => {
    lookAtPatch(target, paints, optics, look);
    look.cost += costOfDrift(patch, drift);
    return look.cost;
  };
  drift.fill(0);
  let cost = measureAll();
  for (let round = 0; round < mostRounds; round++) {
    const step = stepOfAmounts(target, look);
    if (!step) return;
    let share = Math.min(1, longestStep / Math.max(...step.map(Math.abs)));
    const start = drift.slice(0, count);
    for (;;) {
      for (let n = 0; n < count; n++) drift[n] = start[n] + share * step[n];
      if (measureAll() <= cost) break;
      share /= 2;
      if (share > 1e-6) continue;
      drift.set(start);
      measureAll();
      return;
    }
    cost = look.cost;
  }
}

/** Adds `weight` x row x row to the lower half of the matrix, for the columns of a patch. */
function addRows(
  matrix: Float64Array,
  size: number,
  firsts: readonly number[],
  rows: readonly Float64Array[],
  weights: readonly number[],
): void {
  for (const [n, below] of firsts.entries()) {
    for (const [m, beside] of firsts.entries()) {
      if (below < 0 || beside < 0 || beside > below) continue;
      for (let i = 0; i < paintSize; i++) {
        const line = (below + i) * size + beside;
        const last = n === m ? i + 1 : paintSize;
        for (const [r, row] of rows.entries()) {
          const slope = weights[r] * row[n * paintSize + i];
          if (slope === 0) continue;
          const start = m * paintSize;
          for (let j = 0; j < last; j++) matrix[line + j] += slope * row[start + j];
        }
      }
    }
  }
}

/** Rows of slopes along the columns of a patch that its free amounts take up: one for each share. */
function rowsTakenUp({ patch }: PatchTarget, look: PatchLook): Float64Array[] {
  const { shares } = patch;
  const { rows, sampleRow, weight, sampleWeight } = look;
  const columns = shares.length * paintSize;
  const slopes = slopesOfAmounts(patch, look);
  const taken = slopes.map((own) => {
    const row = new Float64Array(columns);
    for (let i = 0; i < columns; i++) {
      for (let c = 0; c < 3; c++) row[i] += Math.sqrt(weight) * own[c] * rows[c * columns + i];
      if (sampleWeight > 0) {
        row[i] += Math.sqrt(sampleWeight) * own[3 + (i % spectrumSize)] * sampleRow[i];
      }
    }
    return row;
  });
  // Cholesky's method on the amounts' own equations, and on the rows with them.
  const root = shares.map(() => new Float64Array(shares.length));
  for (const [n, share] of shares.entries()) {
    for (let m = 0; m <= n; m++) {
      let sum = slopes[n].reduce((all, slope, i) => all + slope * slopes[m][i], 0);
      if (n === m) sum += holdOfAmount(share);
      for (let k = 0; k < m; k++) sum -= root[n][k] * root[m][k];
      root[n][m] = n === m ? Math.sqrt(sum) : sum / root[m][m];
    }
    for (let i = 0; i < columns; i++) {
      for (let k = 0; k < n; k++) taken[n][i] -= root[n][k] * taken[k][i];
      taken[n][i] = taken[n][i] / root[n][n];
    }
  }
  return taken;
}

/** Adds the part of the measured reflectance, whose samples stand each for itself. */
function addSamples(
  { matrix, right }: Omit<NormalEquations, 'cost'>,
  firsts: readonly number[],
  { sampleRow, sampleMisfit, sampleWeight }: PatchLook,
): void {
  const size = right.length;
  for (const [n, below] of firsts.entries()) {
    if (below < 0) continue;
    for (let i = 0; i < paintSize; i++) {
      const sample = i % spectrumSize;
      const slope = sampleWeight * sampleRow[n * paintSize + i];
      right[below + i] -= slope * sampleMisfit[sample];
      for (const [m, beside] of firsts.entries()) {
        if (beside < 0) continue;
        for (const j of [sample, spectrumSize + sample]) {
          if (beside + j > below + i) continue;
          matrix[(below + i) * size + beside + j] += slope * sampleRow[m * paintSize + j];
        }
      }
    }
  }
}

/**
 * Adds a patch, after `settleAmounts`, to the normal equations. `firsts`: for each of its shares the place
 * of the first of its paint's 72 unknowns; under 0 for a known paint.
 */
export function addPatch(
  { matrix, right }: Omit<NormalEquations, 'cost'>,
  target: PatchTarget,
  firsts: readonly number[],
  look: PatchLook,
): void {
  const columns = firsts.length * paintSize;
  const own = [0, 1, 2].map((c) => look.rows.subarray(c * columns, (c + 1) * columns));
  const taken = rowsTakenUp(target, look);
  const weights = [...own.map(() => look.weight), ...taken.map(() => -1)];
  addRows(matrix, right.length, firsts, [...own, ...taken], weights);
  for (const [n, first] of firsts.entries()) {
    for (let i = 0; first >= 0 && i < paintSize; i++) {
      for (let c = 0; c < 3; c++) {
        right[first + i] -= look.weight * own[c][n * paintSize + i] * look.misfit[c];
      }
    }
  }
  if (look.sampleWeight > 0) addSamples({ matrix, right }, firsts, look);
}
