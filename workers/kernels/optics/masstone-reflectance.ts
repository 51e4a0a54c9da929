/**
 * Reflectance 0..1 of an endlessly thick layer from K/S. Kubelka and Munk (1931). The textbook
 * 1 + k - sqrt(k^2 + 2k) loses every digit for dark paints; its reciprocal form does not.
 */
export function masstoneReflectance(absorptionOverScattering: number): number {
  const k = Math.max(0, absorptionOverScattering);
  // sqrt(k) sqrt(k + 2): k^2 would overflow long before the answer does.
  return 1 / (1 + k + Math.sqrt(k) * Math.sqrt(k + 2));
}

/** Reflectances are taken to lie between this and 1: at 0 there is no K/S. */
export const leastReflectance = 1e-6;

/** K/S of a masstone reflectance, which is clamped to [leastReflectance, 1]. */
export function absorptionOverScattering(reflectance: number): number {
  const r = Math.min(1, Math.max(leastReflectance, reflectance));
  return (1 - r) ** 2 / (2 * r);
}
