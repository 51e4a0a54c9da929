// The normal equations of one blurred step, the case met most: `StepFit`'s own sums, each added up in the same
// order, in one run over the values instead of fifteen.
import { normalTables } from './normal-curve.ts';

const { sums, densities, perUnit, reach } = normalTables;

/**
 * For values[from .. to - 1] and the unknowns [base, sigma, rise, place]: fills the lower half of the 4 x 4 `matrix`
 * and `right`, and answers the sum of the squares left over.
 */
export function oneStepEquations(
  values: Float64Array,
  from: number,
  to: number,
  unknowns: Float64Array,
  matrix: Float64Array,
  right: Float64Array,
): number {
  const base = unknowns[0] as number;
  const perSigma = 1 / (unknowns[1] as number);
  const rise = unknowns[2] as number;
  const fallPerDensity = -rise * perSigma;
  let z = (from - (unknowns[3] as number)) * perSigma;
  let [cost, right0, right1, right2, right3] = [0, 0, 0, 0, 0];
  let [m10, m11, m20, m21, m22] = [0, 0, 0, 0, 0];
  let [m30, m31, m32, m33] = [0, 0, 0, 0];
  for (let i = from; i < to; i++, z += perSigma) {
    let sum = z < 0 ? 0 : 1;
    let fall = 0;
    if (z > -reach && z < reach) {
      const place = (z + reach) * perUnit;
      const entry = place | 0;
      const part = place - entry;
      const low = sums[entry] as number;
      sum = low + part * ((sums[entry + 1] as number) - low);
      const density = densities[entry] as number;
      fall = fallPerDensity * (density + part * ((densities[entry + 1] as number) - density));
    }
    const spread = fall * z;
    const rest = (values[i] as number) - base - rise * sum;
    cost += rest * rest;
    right0 += rest;
    right1 += spread * rest;
    right2 += sum * rest;
    right3 += fall * rest;
    m10 += spread;
    m11 += spread * spread;
    m20 += sum;
    m21 += sum * spread;
    m22 += sum * sum;
    m30 += fall;
    m31 += fall * spread;
    m32 += fall * sum;
    m33 += fall * fall;
  }
  right[0] = right0;
  right[1] = right1;
  right[2] = right2;
  right[3] = right3;
  matrix[0] = Math.max(0, to - from);
  matrix[4] = m10;
  matrix[5] = m11;
  matrix[8] = m20;
  matrix[9] = m21;
  matrix[10] = m22;
  matrix[12] = m30;
  matrix[13] = m31;
  matrix[14] = m32;
  matrix[15] = m33;
  return cost;
}
