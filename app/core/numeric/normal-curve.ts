// The normal distribution by table: a step blurred by a Gaussian is its running sum.
const perUnit = 64;
const most = 5;
const entries = 2 * most * perUnit;

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

const densities = Float64Array.from({ length: entries + 2 }, (_, i) => density(i / perUnit - most));

/** Running sum by Simpson's rule between the entries; within 1e-8 of the true one. */
function sumDensities(): Float64Array {
  const sums = new Float64Array(entries + 2);
  for (let i = 1; i < sums.length; i++) {
    const z = (i - 1) / perUnit - most;
    const h = 1 / perUnit;
    const piece = (h / 6) * (density(z) + 4 * density(z + h / 2) + density(z + h));
    sums[i] = sums[i - 1] + piece;
  }
  return sums;
}

/**
 * For z from -reach to reach, entry (z + reach) * perUnit: the share of a unit normal distribution
 * below z, and its density there. Straight lines between entries are within 2e-5.
 */
export const normalTables = { sums: sumDensities(), densities, perUnit, reach: most } as const;

/** From 10 % to 90 % of a step blurred by a Gaussian, in its sigmas. */
export const widthOfSigma = 2.5631;
