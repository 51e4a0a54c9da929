/** About so many pixels are looked at. */
const samples = 40_000;
const rounds = 10;
/** Farther from the level than this a pixel counts less, L* or the same of a*, b*. */
const near = 4;

/**
 * The level of a plane where `mask` is 0, by Huber's weights ('Robust Estimation of a Location
 * Parameter', 1964): a few leaves or lights in the ground pull it little. 0 without any ground.
 */
export function plainLevel(plane: Float32Array, mask: Uint8Array): number {
  // Coprime with the usual widths, so that the places looked at are spread over all columns.
  const step = Math.max(1, Math.floor(plane.length / samples) | 1);
  let level = 0;
  for (let round = 0; round < rounds; round++) {
    let sum = 0;
    let weights = 0;
    for (let i = step >> 1; i < plane.length; i += step) {
      if (mask[i] !== 0) continue;
      const value = plane[i] as number;
      const off = round === 0 ? 0 : Math.abs(value - level);
      const weight = off <= near ? 1 : near / off;
      sum += weight * value;
      weights += weight;
    }
    if (weights === 0) return level;
    level = sum / weights;
  }
  return level;
}
